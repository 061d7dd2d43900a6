using System.Globalization;
using System.Text;
using System.Text.Json.Nodes;

namespace Waywright.Publishing;

/// <summary>One notebook on the page: its words, its code folded, its outputs.</summary>
internal sealed class NotebookSection(PageMap map, PageMarkdown markdown, NotebookRun run)
{
    private readonly StringBuilder _html = new();
    private readonly List<(int Number, string Source)> _folded = [];
    private string? _heading;
    private int _codeCells;

    public string ToHtml()
    {
        foreach (var cell in run.Document.Cells)
            Write(cell);
        WriteFolded();
        if (!run.Started)
            _html.Append("<p class=\"ww-note\">Not run: an earlier notebook did not come to its end.</p>\n");
        if (run.Failure is { CellNumber: 0 } failure)
            _html.Append(CultureInfo.InvariantCulture, $"<div class=\"failed\"><p><strong>This notebook did not run.</strong> {Html.Encode(failure.Why)}</p></div>\n");

        var section = map.Notebook(run.Path);
        var heading = _heading is null ? $"<h2 id=\"{section}-title\">{Html.Encode(map.Title(run.Path))}</h2>\n" : "";
        return $"<section class=\"notebook\" id=\"{section}\" aria-labelledby=\"{_heading ?? section + "-title"}\">\n{heading}{_html}</section>\n";
    }

    private void Write(NotebookCell cell)
    {
        if (!cell.IsCode)
            WriteFolded();
        if (cell.IsMarkdown)
        {
            _html.Append("<div class=\"prose\">").Append(markdown.ToHtml(cell.Source, Pictures(cell), out var heading)).Append("</div>\n");
            _heading ??= heading;
        }
        else if (!cell.IsCode)
        {
            _html.Append(Html.Pre("Raw text", "stream", cell.Source));
        }
        else if (!string.IsNullOrWhiteSpace(cell.Source))
        {
            WriteCode(cell, ++_codeCells);
        }
    }

    private void WriteCode(NotebookCell cell, int number)
    {
        _folded.Add((number, cell.Source.Trim()));
        var shown = cell.Outputs.Select(output => Shown(output, number)).Where(html => html.Length > 0).ToList();
        if (shown.Count > 0)
            WriteFolded();
        _html.AppendJoin("", shown);
        if (run.Started && run.Failure?.CellNumber == number)
            _html.Append("<p class=\"ww-note\">The notebook was stopped here: the code below did not run.</p>\n");
    }

    // Cells that show nothing are folded together with the next that does: one quiet line, not five.
    private void WriteFolded()
    {
        if (_folded.Count == 0)
            return;
        var lines = _folded.Sum(code => code.Source.AsSpan().Count('\n') + 1);
        _html.Append(CultureInfo.InvariantCulture, $"<details class=\"code\"><summary>Code<span class=\"quiet\">, {lines} {(lines == 1 ? "line" : "lines")}</span></summary>\n");
        foreach (var (number, source) in _folded)
            _html.Append(Html.Pre(FormattableString.Invariant($"Code cell {number}"), "source", source));
        _html.Append("</details>\n");
        _folded.Clear();
    }

    private string Shown(JsonObject output, int number)
    {
        var html = CellOutputs.ToHtml(output, number);
        return KeptId(output) is { } id ? $"<div class=\"result\" id=\"{map.Result(id)}\">{html}</div>\n" : html;
    }

    private string? KeptId(JsonObject output)
    {
        try
        {
            return run.Failure is null ? Findings.ResultIn(output)?.Id : null;
        }
        catch (InputException)
        {
            return null; // what can't be read as a result failed its cell, and is shown there
        }
    }

    private static Dictionary<string, string> Pictures(NotebookCell cell)
    {
        var pictures = new Dictionary<string, string>(StringComparer.Ordinal);
        foreach (var (name, forms) in cell.Json["attachments"] as JsonObject ?? [])
        {
            if ((forms as JsonObject)?.FirstOrDefault(form => form.Key.StartsWith("image/", StringComparison.Ordinal)) is { Value: { } bytes } picture
                && CellOutputs.PictureUrl(picture.Key, NotebookText.Joined(bytes).ReplaceLineEndings("")) is { } url)
                pictures[name] = url;
        }

        return pictures;
    }
}
