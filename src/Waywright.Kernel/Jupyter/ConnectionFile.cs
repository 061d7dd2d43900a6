using System.Net;
using System.Net.Sockets;
using System.Text.Json;
using System.Text.Json.Nodes;

namespace Waywright.Kernel;

/// <summary>Where a front end wants to reach its kernel, and the key that both sign with: the JSON file that it hands over at the start.</summary>
internal sealed record ConnectionFile(string Address, int Shell, int Control, int Publish, int Input, int Heartbeat, string Key)
{
    private const string Scheme = "hmac-sha256";

    /// <summary>Reads the file.</summary>
    /// <exception cref="InputException">Not there, not JSON, a field missing or of the wrong kind, another transport or scheme than ours, an address that others can reach, or no key.</exception>
    public static ConnectionFile Read(string path)
    {
        var problems = new List<InputProblem>();
        var file = new Fields(path, Parse(path), problems);
        file.Exactly("transport", "tcp");
        file.Exactly("signature_scheme", Scheme);
        var address = file.Text("ip", text => text is "localhost" || (IPAddress.TryParse(text, out var ip) && ip.AddressFamily == AddressFamily.InterNetwork && IPAddress.IsLoopback(ip)), "127.0.0.1 or localhost: nobody but this machine may send code");
        var read = new ConnectionFile(
            address == "localhost" ? "127.0.0.1" : address,
            file.Port("shell_port"),
            file.Port("control_port"),
            file.Port("iopub_port"),
            file.Port("stdin_port"),
            file.Port("hb_port"),
            file.Text("key", text => text.Length > 0, "a key: without one, any program of this machine could send code"));
        return problems.Count == 0 ? read : throw new InputException(problems);
    }

    private static JsonObject Parse(string path)
    {
        try
        {
            return JsonNode.Parse(File.ReadAllBytes(path)) as JsonObject
                ?? throw new InputException(new InputProblem(path, null, null, "JSON that is no object", "a Jupyter connection file"));
        }
        catch (JsonException broken)
        {
            throw new InputException(new InputProblem(path, (int?)broken.LineNumber + 1, (int?)broken.BytePositionInLine + 1, "text that is not JSON", "a Jupyter connection file"));
        }
        catch (Exception e) when (e is FileNotFoundException or DirectoryNotFoundException)
        {
            throw new InputException(new InputProblem(path, null, null, "no such file", "a Jupyter connection file"));
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            throw new InputException(new InputProblem(path, null, null, "a file that can't be read", "a Jupyter connection file"));
        }
    }

    private sealed class Fields(string path, JsonObject file, List<InputProblem> problems)
    {
        public void Exactly(string name, string value) => Text(name, text => text == value, $"\"{value}\"");

        public string Text(string name, Func<string, bool> accepts, string expected)
        {
            if (file[name] is JsonValue value && value.TryGetValue(out string? text) && accepts(text))
                return text;
            Refuse(name, expected);
            return "";
        }

        public int Port(string name)
        {
            if (file[name] is JsonValue value && value.TryGetValue(out int port) && port is > 0 and < 65_536)
                return port;
            Refuse(name, "a port, 1 to 65535");
            return 0;
        }

        private void Refuse(string name, string expected)
        {
            var found = file[name] is { } node ? $"{name}: {node.ToJsonString()}" : $"no {name}";
            problems.Add(new InputProblem(path, null, null, found, expected));
        }
    }
}
