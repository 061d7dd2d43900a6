using System.Text.Json;
using System.Text.Json.Nodes;
using Microsoft.CodeAnalysis;
using Microsoft.DotNet.Interactive;
using Microsoft.DotNet.Interactive.Events;
using Microsoft.DotNet.Interactive.Formatting;

namespace Waywright.Kernel;

/// <summary>Reads the engine's events; what is of no use to a reader of the notebook gives null.</summary>
internal static class EngineEvents
{
    // Deeper JSON than this stays text.
    private static readonly JsonDocumentOptions Depth = new() { MaxDepth = 200 };

    public static CellEvent? Read(KernelEvent said) => said switch
    {
        // The progress of a restore differs from run to run.
        DisplayEvent { Value: InstallPackagesMessage } => null,
        // A cell that ends in x.Display() has shown x already.
        ReturnValueProduced { Value: DisplayedValue } => null,
        ReturnValueProduced returned => new ValueReturned(Bundle(returned)),
        DisplayedValueUpdated updated => new DisplayUpdated(updated.ValueId, Bundle(updated)),
        DisplayedValueProduced displayed => new ValueDisplayed(displayed.ValueId, Bundle(displayed)),
        StandardOutputValueProduced written => new StreamWritten("stdout", PlainText(written)),
        StandardErrorValueProduced written => new StreamWritten("stderr", PlainText(written)),
        DiagnosticsProduced found when Warnings(found) is { Length: > 0 } text => new StreamWritten("stderr", text),
        _ => null,
    };

    /// <summary>A MIME bundle, keys in ordinal order, JSON types as JSON.</summary>
    public static JsonObject Bundle(IEnumerable<FormattedValue> values)
    {
        var bundle = new JsonObject();
        foreach (var value in values.Where(value => !value.SuppressDisplay).OrderBy(value => value.MimeType, StringComparer.Ordinal))
            bundle[value.MimeType] = Data(value.MimeType, value.Value ?? "");
        return bundle;
    }

    private static JsonObject Bundle(DisplayEvent shown) => Bundle(shown.FormattedValues);

    private static JsonNode? Data(string mimeType, string value)
    {
        if (!mimeType.EndsWith("json", StringComparison.Ordinal)) return value.Replace("\r\n", "\n", StringComparison.Ordinal);
        try
        {
            return JsonNode.Parse(value, documentOptions: Depth);
        }
        catch (JsonException)
        {
            return value;
        }
    }

    private static string PlainText(DisplayEvent written) => written.FormattedValues.FirstOrDefault()?.Value ?? "";

    // Diagnostics without a place in the cell (CS1701 and its like) are the engine's own; errors come with the failure.
    private static string Warnings(DiagnosticsProduced found) => string.Concat(found.Diagnostics
        .Where(one => one.Severity == DiagnosticSeverity.Warning && one.LinePositionSpan.End is not { Line: 0, Character: 0 })
        .Select(one => $"line {one.LinePositionSpan.Start.Line + 1}, column {one.LinePositionSpan.Start.Character + 1}: warning {one.Code}: {one.Message}\n"));
}
