using System.Globalization;
using System.Runtime.InteropServices;
using System.Security.Cryptography;
using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;

namespace Waywright.Publishing;

/// <summary>Writes run.json: what differs from run to run (machine, durations), and the hash of every other file of the folder.</summary>
internal static class RunLog
{
    public static void Write(string folder, PublishStatus status, PublishFailure? failure, IReadOnlyList<NotebookRun> runs, DateTimeOffset started, TimeSpan duration)
    {
        using var stream = new MemoryStream();
        using (var json = new Utf8JsonWriter(stream, new JsonWriterOptions { Indented = true, NewLine = "\n", Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping }))
        {
            json.WriteStartObject();
            json.WriteString("architecture", RuntimeInformation.ProcessArchitecture.ToString());
            if (failure is not null)
                json.WriteString("failure", failure.ToString());
            WriteFiles(json, folder);
            json.WriteString("format", Ownership.RunFormat);
            json.WriteStartArray("notebooks");
            foreach (var run in runs.Where(run => run.Started))
            {
                json.WriteStartObject();
                json.WriteString("path", run.Path);
                WriteSeconds(json, run.Duration);
                json.WriteEndObject();
            }

            json.WriteEndArray();
            json.WriteString("operatingSystem", RuntimeInformation.OSDescription);
            json.WriteNumber("processors", Environment.ProcessorCount);
            WriteSeconds(json, duration);
            json.WriteStartObject("software");
            foreach (var software in Software.List.OrderBy(s => s.Name, StringComparer.Ordinal))
                json.WriteString(software.Name, software.Version);
            json.WriteEndObject();
            json.WriteString("started", started.UtcDateTime.ToString("yyyy-MM-ddTHH:mm:ssZ", CultureInfo.InvariantCulture));
            json.WriteString("status", status switch { PublishStatus.Published => "published", PublishStatus.Failed => "failed", _ => "stopped" });
            json.WriteEndObject();
        }

        File.WriteAllText(Path.Combine(folder, Ownership.RunFile), Encoding.UTF8.GetString(stream.ToArray()) + "\n");
    }

    private static void WriteFiles(Utf8JsonWriter json, string folder)
    {
        json.WriteStartObject("files");
        foreach (var file in Directory.EnumerateFiles(folder, "*", SearchOption.AllDirectories)
            .Select(file => (Path: Path.GetRelativePath(folder, file).Replace('\\', '/'), File: file))
            .OrderBy(file => file.Path, StringComparer.Ordinal))
        {
            using var bytes = File.OpenRead(file.File);
            json.WriteString(file.Path, Convert.ToHexStringLower(SHA256.HashData(bytes)));
        }

        json.WriteEndObject();
    }

    private static void WriteSeconds(Utf8JsonWriter json, TimeSpan duration) => json.WriteNumber("seconds", Math.Round(duration.TotalSeconds, 3));
}
