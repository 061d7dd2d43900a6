using System.Net;
using System.Net.Sockets;
using System.Text.Json.Nodes;
using Waywright.EndToEnd.Commands;

namespace Waywright.EndToEnd.Jupyter;

public sealed class ConnectionFileTests
{
    [Theory]
    [InlineData("transport", "\"ipc\"", "found transport: \"ipc\", expected \"tcp\"")]
    [InlineData("signature_scheme", "\"hmac-md5\"", "found signature_scheme: \"hmac-md5\", expected \"hmac-sha256\"")]
    [InlineData("ip", "\"0.0.0.0\"", "found ip: \"0.0.0.0\", expected 127.0.0.1 or localhost")]
    [InlineData("ip", "\"::1\"", "found ip: \"::1\", expected 127.0.0.1 or localhost")]
    [InlineData("ip", "\"127.0.0.1.example.org\"", "found ip: \"127.0.0.1.example.org\", expected 127.0.0.1 or localhost")]
    [InlineData("key", "\"\"", "found key: \"\", expected a key")]
    [InlineData("shell_port", "0", "found shell_port: 0, expected a port, 1 to 65535")]
    [InlineData("hb_port", "\"80\"", "found hb_port: \"80\", expected a port, 1 to 65535")]
    [InlineData("iopub_port", "65536", "found iopub_port: 65536, expected a port, 1 to 65535")]
    [InlineData("stdin_port", null, "found no stdin_port, expected a port, 1 to 65535")]
    public async Task A_field_that_can_not_be_served_is_named(string field, string? json, string said)
    {
        var connection = Good();
        connection.Remove(field);
        if (json is not null) connection[field] = JsonNode.Parse(json);
        var refused = await RunAsync(connection.ToJsonString());
        refused.IsRefused("connection.json: " + said);
        Assert.Single(refused.Error.Trim().Split('\n'));
    }

    [Theory]
    [InlineData("{\n  \"ip\": ,", "connection.json:2:9: found text that is not JSON")]
    [InlineData("", "connection.json:1:1: found text that is not JSON")]
    [InlineData("[1]", "connection.json: found JSON that is no object")]
    public async Task What_is_no_connection_file_is_one_message(string text, string said)
    {
        var refused = await RunAsync(text);
        refused.IsRefused(said);
        Assert.Single(refused.Error.Trim().Split('\n'));
    }

    [Fact]
    public async Task A_file_that_is_not_there_is_one_message() =>
        (await Command.RunAsync("kernel", "run", "nowhere/connection.json")).IsRefused("nowhere/connection.json: found no such file");

    [Fact]
    public async Task A_port_that_another_program_holds_is_named()
    {
        using var holder = new TcpListener(IPAddress.Loopback, 0);
        holder.Start();
        var taken = ((IPEndPoint)holder.LocalEndpoint).Port;
        var connection = Good();
        connection["stdin_port"] = taken;
        var refused = await RunAsync(connection.ToJsonString());
        refused.IsRefused($"connection.json: found stdin_port: {taken}, which another program holds");
        Assert.Single(refused.Error.Trim().Split('\n'));
    }

    private static JsonObject Good()
    {
        var ports = Enumerable.Range(0, 5).Select(_ => new TcpListener(IPAddress.Loopback, 0)).ToArray();
        foreach (var port in ports) port.Start();
        var free = ports.Select(port => ((IPEndPoint)port.LocalEndpoint).Port).ToArray();
        foreach (var port in ports) port.Dispose();
        return new JsonObject
        {
            ["transport"] = "tcp",
            ["ip"] = "127.0.0.1",
            ["signature_scheme"] = "hmac-sha256",
            ["key"] = "a key",
            ["shell_port"] = free[0],
            ["control_port"] = free[1],
            ["iopub_port"] = free[2],
            ["stdin_port"] = free[3],
            ["hb_port"] = free[4],
        };
    }

    private static async Task<Command> RunAsync(string text)
    {
        using var folder = new TemporaryFolder();
        folder.Write("connection.json", text);
        return await Command.RunInAsync(folder.Path, "kernel", "run", "connection.json");
    }
}
