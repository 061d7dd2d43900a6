using System.Globalization;
using System.Security.Cryptography;
using System.Text;

namespace Waywright.Publishing;

/// <summary>Writes the page of a run: one file that needs no network, no server and no other file.</summary>
internal static class PageWriter
{
    public static string Write(PageContent content)
    {
        var map = new PageMap(content);
        var sections = new StringBuilder();
        var cautions = new List<(string Anchor, string Notebook)>();
        foreach (var run in content.Runs)
        {
            var markdown = new PageMarkdown(map.Anchors, url => map.Place(run.Path, url));
            sections.Append(new NotebookSection(map, markdown, run).ToHtml());
            cautions.AddRange(markdown.Cautions.Select(anchor => (anchor, run.Path)));
        }

        var body = new StringBuilder()
            .Append(Header(content))
            .Append("<main>\n")
            .Append(Decided(content, map))
            .Append(Contents(content, map, cautions))
            .Append(sections)
            .Append(new MeasuredSection(map, content).ToHtml())
            .Append("</main>\n");
        var drawn = body.ToString().Contains("ww-plot", StringComparison.Ordinal);
        return Frame(content, body.Append(PageFooter.ToHtml(content, drawn)).ToString(), drawn);
    }

    // A page without charts runs nothing at all; with charts it runs our loader, and what the loader unpacks.
    private static string Frame(PageContent content, string body, bool drawn)
    {
        var loader = PageAssets.Script;
        var scripts = drawn ? $" script-src 'sha256-{Convert.ToBase64String(SHA256.HashData(Encoding.UTF8.GetBytes(loader)))}' blob:;" : "";
        var embedded = drawn ? $"<script type=\"application/octet-stream\" id=\"ww-plotly\">{PlotlyScript.Packed}</script>\n<script>{loader}</script>\n" : "";
        return $"""
            <!DOCTYPE html>
            <html lang="en">
            <head>
            <meta charset="utf-8">
            <meta http-equiv="Content-Security-Policy" content="default-src 'none';{scripts} style-src 'unsafe-inline'; img-src data: blob:; base-uri 'none'; form-action 'none'">
            <meta name="viewport" content="width=device-width, initial-scale=1">
            <meta name="color-scheme" content="light dark">
            <meta name="referrer" content="no-referrer">
            <title>{Html.Encode(content.Title)}</title>
            <link rel="icon" href="data:,">
            <style>
            {PageAssets.Style}</style>
            </head>
            <body>
            <a class="skip" href="#decided">Skip to what was decided</a>
            {body}{embedded}</body>
            </html>

            """;
    }

    private static string Header(PageContent content)
    {
        var results = content.Findings.Kept.Count;
        var inputs = content.Findings.Inputs.Count;
        var counts = content.Failure is null ? $"{Counted(results, "result")} from {Counted(content.Runs.Count, "notebook")} and {Counted(inputs, "data file")}." : "";
        return $"""
            <header>
            <p class="kicker">Build analysis<span aria-hidden="true"> · </span><time datetime="{content.Date.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture)}">{content.Date.ToString("d MMMM yyyy", CultureInfo.InvariantCulture)}</time></p>
            <h1>{Html.Encode(content.Title)}</h1>
            <p class="lede">{counts}</p>
            {Banner(content)}</header>

            """;
    }

    private static string Banner(PageContent content)
        => content.Failure is not { } failure
            ? ""
            : $"<div class=\"failed\"><p><strong>{(content.Stopped ? "This run was stopped." : "This run failed.")}</strong> Nothing below is a result; the earlier build, if there was one, stands as it was.</p><pre class=\"reason\">{Html.Encode(failure.ToString())}</pre></div>\n";

    private static string Decided(PageContent content, PageMap map)
    {
        var kept = content.Findings.Kept;
        var items = string.Concat(kept.Select(k =>
            $"<li><a class=\"verdict\" href=\"#{map.Result(k.Result.Id)}\">{Html.Sentence(k.Result.Verdict)}</a> <span class=\"from\">{Html.Encode(map.Title(k.Notebook))}</span></li>\n"));
        var list = content.Failure is not null
            ? "<p class=\"ww-note\">Nothing: the run did not come to its end.</p>\n"
            : kept.Count == 0 ? "<p class=\"ww-note\">No cell kept a result.</p>\n" : $"<ol class=\"verdicts\">\n{items}</ol>\n";
        return $"<section id=\"decided\" aria-labelledby=\"decided-title\">\n<h2 id=\"decided-title\">What was decided</h2>\n{list}</section>\n";
    }

    private static string Contents(PageContent content, PageMap map, List<(string Anchor, string Notebook)> cautions)
    {
        var items = string.Concat(content.Runs.Select(run => $"<li><a href=\"#{map.Notebook(run.Path)}\">{Html.Encode(map.Title(run.Path))}</a>{Marks(run)}</li>\n"));
        return $"<nav id=\"contents\" aria-label=\"Contents\"><ul>\n{items}<li><a href=\"#measured\">How it was measured</a></li>\n</ul></nav>\n";

        // Who goes straight to a part must see first that it has something to be careful of.
        string Marks(NotebookRun run)
            => string.Concat(cautions.Where(c => c.Notebook == run.Path).Select((c, i) => $" <a class=\"caution-mark\" href=\"#{c.Anchor}\">Caution{(i == 0 ? "" : FormattableString.Invariant($" {i + 1}"))}</a>"));
    }

    private static string Counted(int count, string noun) => FormattableString.Invariant($"{count} {noun}{(count == 1 ? "" : "s")}");
}
