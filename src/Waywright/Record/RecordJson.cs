using System;
using System.Buffers;
using System.Collections.Generic;
using System.Globalization;
using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;

namespace Waywright;

/// <summary>Writes records as JSON, member by member in ordinal order of the names, so that equal records give equal bytes.</summary>
internal static class RecordJson
{
    public static string Write(BuildRecord record) => Document(indented: true, writer =>
    {
        writer.WriteStartObject();
        writer.WriteString("date", record.Date.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture));
        WriteList(writer, "decisions", record.Decisions, WriteDecision);
        WriteList(writer, "figures", record.Figures, WriteFigure);
        writer.WriteString("format", BuildRecord.Format);
        WriteList(writer, "inputs", record.Inputs, WriteInput);
        writer.WriteString("licence", record.Licence);
        WriteList(writer, "notebooks", record.Notebooks, WriteNotebook);
        WriteList(writer, "parameters", record.Parameters, WriteParameter);
        WriteNumber(writer, "seed", record.Seed);
        WriteList(writer, "software", record.Software, WriteSoftware);
        writer.WriteString("title", record.Title);
        writer.WriteEndObject();
    }) + "\n";

    public static string Write(InputFile input) => Document(indented: false, writer => WriteInput(writer, input));

    public static string Write(KeptResult kept) => Document(indented: false, writer =>
    {
        writer.WriteStartObject();
        WriteList(writer, "figures", kept.Figures, WriteFigure);
        writer.WriteString("id", kept.Id);
        writer.WriteString("text", kept.Text);
        writer.WriteString("verdict", kept.Verdict);
        writer.WriteEndObject();
    });

    private static void WriteFigure(Utf8JsonWriter writer, Figure figure)
    {
        writer.WriteStartObject();
        writer.WriteNumber("absoluteTolerance", figure.AbsoluteTolerance);
        WriteNumber(writer, "coverageFactor", figure.CoverageFactor);
        WriteNumber(writer, "degreesOfFreedom", figure.DegreesOfFreedom);
        WriteNumber(writer, "high", figure.High);
        writer.WriteString("id", figure.Id);
        WriteNumber(writer, "low", figure.Low);
        writer.WriteString("method", figure.Method);
        writer.WriteString("name", figure.Name);
        writer.WriteNumber("relativeTolerance", figure.RelativeTolerance);
        WriteNumber(writer, "standardUncertainty", figure.StandardUncertainty);
        if (figure.Text is { } text)
            writer.WriteString("text", text);
        writer.WriteString("unit", figure.Unit);
        WriteNumber(writer, "value", figure.Value);
        writer.WriteEndObject();
    }

    private static void WriteInput(Utf8JsonWriter writer, InputFile input)
    {
        writer.WriteStartObject();
        writer.WriteNumber("bytes", input.Bytes);
        writer.WriteString("path", input.Path);
        writer.WriteString("sha256", input.Sha256);
        writer.WriteEndObject();
    }

    private static void WriteDecision(Utf8JsonWriter writer, Decision decision)
    {
        writer.WriteStartObject();
        writer.WriteString("id", decision.Id);
        writer.WriteString("notebook", decision.Notebook);
        writer.WriteString("verdict", decision.Verdict);
        writer.WriteEndObject();
    }

    private static void WriteNotebook(Utf8JsonWriter writer, RecordedNotebook notebook)
    {
        writer.WriteStartObject();
        writer.WriteString("path", notebook.Path);
        writer.WriteString("sourceSha256", notebook.SourceSha256);
        writer.WriteEndObject();
    }

    private static void WriteParameter(Utf8JsonWriter writer, NotebookParameter parameter)
    {
        writer.WriteStartObject();
        writer.WriteString("name", parameter.Name);
        writer.WriteString("notebook", parameter.Notebook);
        writer.WriteBoolean("set", parameter.IsSet);
        writer.WriteString("type", parameter.Type);
        writer.WriteString("value", parameter.Value);
        writer.WriteEndObject();
    }

    private static void WriteSoftware(Utf8JsonWriter writer, SoftwareVersion software)
    {
        writer.WriteStartObject();
        writer.WriteString("name", software.Name);
        writer.WriteString("version", software.Version);
        writer.WriteEndObject();
    }

    private static void WriteList<T>(Utf8JsonWriter writer, string name, IReadOnlyList<T> items, Action<Utf8JsonWriter, T> write)
    {
        writer.WriteStartArray(name);
        foreach (var item in items)
            write(writer, item);
        writer.WriteEndArray();
    }

    // A member without a value is left out: null is no figure.
    private static void WriteNumber(Utf8JsonWriter writer, string name, double? value)
    {
        if (value is { } number)
            writer.WriteNumber(name, number);
    }

    private static string Document(bool indented, Action<Utf8JsonWriter> write)
    {
        var bytes = new ArrayBufferWriter<byte>();
        using (var writer = new Utf8JsonWriter(bytes, new JsonWriterOptions { Indented = indented, NewLine = "\n", Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping }))
            write(writer);
        return Encoding.UTF8.GetString(bytes.WrittenSpan);
    }
}
