using System.Text.Json.Nodes;

namespace Waywright.Publishing;

/// <summary>What the cells of all notebooks handed out beside their pictures: inputs that they read, results that they keep.</summary>
internal sealed class Findings(InputStore inputs)
{
    public const string InputType = "application/vnd.waywright.input+json";
    public const string FiguresType = "application/vnd.waywright.figures+json";

    private readonly List<(string Notebook, KeptResult Result)> _kept = [];
    private readonly Dictionary<string, string> _keptIn = new(StringComparer.Ordinal);
    private readonly Dictionary<string, string> _figureIn = new(StringComparer.Ordinal);

    public IReadOnlyList<(string Notebook, KeptResult Result)> Kept => _kept;

    public IReadOnlyList<InputFile> Inputs => inputs.Files;

    /// <summary>Inputs that are not any more what a cell read.</summary>
    public IReadOnlyList<string> FindChangedInputs() => inputs.FindChanged();

    /// <summary>Takes over what a cell's outputs hand out.</summary>
    /// <returns>Null, or the sentence that says why the run can't go on.</returns>
    public string? Take(string notebook, NotebookCell cell)
    {
        try
        {
            return cell.Outputs.Select(output => TakeInput(output) ?? TakeKept(notebook, output)).FirstOrDefault(why => why is not null);
        }
        catch (InputException e)
        {
            return e.Message;
        }
    }

    /// <summary>The result that an output carries, if it does.</summary>
    /// <exception cref="InputException">It carries something else under that type.</exception>
    public static KeptResult? ResultIn(JsonObject output) => Payload(output, FiguresType) is { } json ? KeptResult.Parse(json, "a kept result") : null;

    private string? TakeInput(JsonObject output)
        => Payload(output, InputType) is { } json ? inputs.Take(InputFile.Parse(json, "an input")) : null;

    private string? TakeKept(string notebook, JsonObject output)
    {
        if (ResultIn(output) is not { } result)
            return null;
        if (!_keptIn.TryAdd(result.Id, notebook))
            return $"'{result.Id}' is kept twice: {_keptIn[result.Id]} kept a result under that id before";
        if (result.Figures.FirstOrDefault(figure => !_figureIn.TryAdd(figure.Id, result.Id)) is { } twice)
            return $"the figure '{twice.Id}' is kept twice: '{_figureIn[twice.Id]}' has one of that id";
        _kept.Add((notebook, result));
        return null;
    }

    // Some hosts send JSON types as text.
    private static string? Payload(JsonObject output, string type) => (output["data"] as JsonObject)?[type] switch
    {
        null => null,
        JsonObject value => value.ToJsonString(),
        var text => NotebookText.Joined(text),
    };
}
