using System.Globalization;
using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;

namespace Waywright.Publishing;

/// <summary>
/// Writes ro-crate-metadata.json: what the folder holds, for archives and catalogues (RO-Crate Metadata Specification 1.1, https://w3id.org/ro/crate/1.1). Nothing in it
/// differs from run to run.
/// </summary>
internal static class RoCrate
{
    public const string File = "ro-crate-metadata.json";

    private const string Specification = "https://w3id.org/ro/crate/1.1";
    private const string Invitation = "A build analysis made with Waywright: notebooks as they ran, the data that they read, and every figure they found. 'waywright verify' reruns it.";

    public static void Write(string folder, BuildRecord record)
    {
        var files = Directory.EnumerateFiles(folder, "*", SearchOption.AllDirectories)
            .Select(file => Path.GetRelativePath(folder, file).Replace('\\', '/'))
            .Where(file => file is not (File or Ownership.RunFile))
            .Order(StringComparer.Ordinal)
            .ToList();
        using var stream = new MemoryStream();
        using (var json = new Utf8JsonWriter(stream, new JsonWriterOptions { Indented = true, NewLine = "\n", Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping }))
        {
            json.WriteStartObject();
            json.WriteString("@context", Specification + "/context");
            json.WriteStartArray("@graph");
            Descriptor(json);
            Root(json, record, files);
            foreach (var file in files)
                DataFile(json, folder, file);
            Run(json, record);
            foreach (var software in record.Software)
                Program(json, software);
            json.WriteEndArray();
            json.WriteEndObject();
        }

        System.IO.File.WriteAllText(Path.Combine(folder, File), Encoding.UTF8.GetString(stream.ToArray()) + "\n");
    }

    private static void Descriptor(Utf8JsonWriter json)
    {
        json.WriteStartObject();
        json.WriteString("@id", File);
        json.WriteString("@type", "CreativeWork");
        Link(json, "conformsTo", Specification);
        Link(json, "about", "./");
        json.WriteEndObject();
    }

    private static void Root(Utf8JsonWriter json, BuildRecord record, IEnumerable<string> files)
    {
        json.WriteStartObject();
        json.WriteString("@id", "./");
        json.WriteString("@type", "Dataset");
        json.WriteString("name", record.Title);
        json.WriteString("description", Invitation);
        json.WriteString("datePublished", record.Date.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture));
        json.WriteString("license", record.Licence.Length > 0 ? record.Licence : "No licence is stated: ask the authors before you reuse it.");
        Links(json, "hasPart", files.Select(Id));
        Link(json, "mentions", "#run");
        json.WriteEndObject();
    }

    private static void DataFile(Utf8JsonWriter json, string folder, string file)
    {
        json.WriteStartObject();
        json.WriteString("@id", Id(file));
        json.WriteString("@type", "File");
        json.WriteString("name", file);
        json.WriteString("encodingFormat", FormatOf(file));
        json.WriteString("contentSize", new FileInfo(Path.Combine(folder, file)).Length.ToString(CultureInfo.InvariantCulture));
        json.WriteEndObject();
    }

    private static void Run(Utf8JsonWriter json, BuildRecord record)
    {
        json.WriteStartObject();
        json.WriteString("@id", "#run");
        json.WriteString("@type", "CreateAction");
        json.WriteString("name", "Running the notebooks");
        Links(json, "instrument", record.Software.Select(SoftwareId));
        Links(json, "object", record.Inputs.Select(i => Id("inputs/" + i.Path)));
        Links(json, "result", [Id(Build.PageFile), Id(Ownership.RecordFile), .. record.Notebooks.Select(n => Id(n.Path))]);
        json.WriteEndObject();
    }

    private static void Program(Utf8JsonWriter json, SoftwareVersion software)
    {
        json.WriteStartObject();
        json.WriteString("@id", SoftwareId(software));
        json.WriteString("@type", "SoftwareApplication");
        json.WriteString("name", software.Name);
        json.WriteString("version", software.Version);
        json.WriteEndObject();
    }

    private static string SoftwareId(SoftwareVersion software) => "#software-" + Uri.EscapeDataString(software.Name);

    // An @id is a URI reference: every part of the path is escaped, the slashes stay.
    private static string Id(string file) => string.Join('/', file.Split('/').Select(Uri.EscapeDataString));

    private static string FormatOf(string file) => Path.GetExtension(file).ToLowerInvariant() switch
    {
        ".html" => "text/html",
        ".json" => "application/json",
        ".ipynb" => "application/x-ipynb+json",
        ".csv" => "text/csv",
        ".wav" => "audio/wav",
        ".tsv" => "text/tab-separated-values",
        ".txt" or ".md" => "text/plain",
        _ => "application/octet-stream",
    };

    private static void Link(Utf8JsonWriter json, string name, string id)
    {
        json.WriteStartObject(name);
        json.WriteString("@id", id);
        json.WriteEndObject();
    }

    private static void Links(Utf8JsonWriter json, string name, IEnumerable<string> ids)
    {
        json.WriteStartArray(name);
        foreach (var id in ids)
        {
            json.WriteStartObject();
            json.WriteString("@id", id);
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }
}
