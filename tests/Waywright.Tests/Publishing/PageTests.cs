using System.Security.Cryptography;
using System.Text;
using System.Text.Json.Nodes;
using System.Text.RegularExpressions;
using Waywright.Kernel;
using Waywright.Publishing;

namespace Waywright.Tests.Publishing;

public sealed class PageTests : IDisposable
{
    private const string Chart = """<figure class="ww-figure"><svg role="img" aria-label="Profile"></svg><script type="application/json" class="ww-plot">{"data":[{"name":"\u003c/script>\u003cimg src=x onerror=alert(1)>"}]}</script><figcaption>Bow.</figcaption></figure>""";

    private readonly BuildFolder _build = new();

    public void Dispose() => _build.Dispose();

    [Theory]
    [InlineData("straight to 24.7 um (23.2 to 26.2 um at 95 %)", "straight to 24.7\u202F\u00B5m (23.2 to 26.2\u202F\u00B5m at 95\u202F%)")]
    [InlineData("lifts it 14.0 (10.6 to 17.5) um there", "lifts it 14.0 (10.6 to 17.5) \u00B5m there")]
    [InlineData("rail um9, 3 umbrellas", "rail um9, 3 umbrellas")]
    public void A_sentence_of_the_page_has_signs_for_units_and_keeps_a_number_beside_its_own(string said, string shown)
        => Assert.Equal(shown, Html.Sentence(said));

    [Fact]
    public async Task The_page_is_one_file_that_names_no_other_host()
    {
        var page = await Page(_ => Output.Done(Output.Html(Chart)), "# One", "chart");
        var outside = Regex.Replace(page, "<script type=\"application/octet-stream\".*?</script>|<pre class=\"licence\".*?</pre>", "", RegexOptions.Singleline);
        Assert.DoesNotMatch("https?://", outside);
        Assert.DoesNotMatch("<(link|script)[^>]*(src|href)=\"(?!data:,)", outside);
        Assert.DoesNotContain("new Function", outside, StringComparison.Ordinal);
        Assert.DoesNotContain("eval(", outside, StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_policy_names_the_hash_of_the_one_script_that_runs()
    {
        var page = await Page(_ => Output.Done(Output.Html(Chart)), "# One", "chart");
        var scripts = Regex.Matches(page, "<script>(.*?)</script>", RegexOptions.Singleline);
        var script = Assert.Single(scripts).Groups[1].Value;
        var hash = Convert.ToBase64String(SHA256.HashData(Encoding.UTF8.GetBytes(script)));
        Assert.Contains($"default-src 'none'; script-src 'sha256-{hash}' blob:; style-src 'unsafe-inline'; img-src data: blob:; base-uri 'none'; form-action 'none'", page, StringComparison.Ordinal);
        Assert.Single(Regex.Matches(page, "id=\"ww-plotly\""));
    }

    [Fact]
    public async Task A_page_without_a_chart_carries_no_script_and_allows_none()
    {
        var page = await Page(_ => Output.Done(Output.Html("<p>no chart</p>")), "# One", "text");
        Assert.DoesNotContain("<script", page, StringComparison.Ordinal);
        Assert.Contains("default-src 'none'; style-src", page, StringComparison.Ordinal);
        Assert.True(page.Length < 40_000);
    }

    [Fact]
    public async Task The_packed_script_is_the_one_that_the_chart_library_carries()
    {
        var page = await Page(_ => Output.Done(Output.Html(Chart)), "# One", "chart");
        var packed = Regex.Match(page, "id=\"ww-plotly\">([^<]*)<").Groups[1].Value;
        await using var unpacked = new System.IO.Compression.GZipStream(new MemoryStream(Convert.FromBase64String(packed)), System.IO.Compression.CompressionMode.Decompress);
        await using var original = typeof(Plotly.NET.GenericChart).Assembly.GetManifestResourceStream("Plotly.NET.plotly-2.28.0.min.js")!;
        Assert.Equal(await SHA256.HashDataAsync(original, TestContext.Current.CancellationToken), await SHA256.HashDataAsync(unpacked, TestContext.Current.CancellationToken));
    }

    [Fact]
    public async Task Figure_data_passes_through_as_it_is_and_cannot_end_its_script()
    {
        var page = await Page(_ => Output.Done(Output.Html(Chart)), "# One", "chart");
        Assert.Contains(Chart, page, StringComparison.Ordinal);
    }

    [Fact]
    public async Task What_only_a_notebook_front_end_needs_is_left_out()
    {
        var page = await Page(_ => Output.Done(Output.Html("<p>a</p><!--ww:live--><script>alert(1)</script><!--/ww:live--><p>b</p><!--ww:live--><script>alert(2)")), "# One", "chart");
        Assert.Contains("<p>a</p><p>b</p></div>", page, StringComparison.Ordinal);
        Assert.DoesNotContain("alert", page, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("Text <script>alert(1)</script> <img src=x onerror=alert(1)>")]
    [InlineData("<script>alert(1)</script>")]
    [InlineData("[link](javascript:alert(1)) [link](JAVA\tSCRIPT:alert(1)) [link](data:text/html,x) [link](vbscript:x)")]
    [InlineData("<javascript:alert(1)>")]
    [InlineData("[link](&#106;avascript:alert(1))")]
    [InlineData("![picture](http://tracker.invalid/x.png) ![picture](javascript:alert(1)) ![p](attachment:none.png)")]
    [InlineData("[a]: javascript:alert(1)\n\n[a]")]
    public async Task Markdown_cannot_bring_tags_scripts_or_pictures_from_elsewhere(string markdown)
    {
        var page = await Page(_ => Output.Done(), "# One\n\n" + markdown, "code");
        Assert.DoesNotContain("<script", page, StringComparison.Ordinal);
        Assert.DoesNotContain("<img", page, StringComparison.Ordinal);
        Assert.DoesNotMatch("(href|src)=\"\\s*(?i:javascript|vbscript|data:text|http)", page);
    }

    [Fact]
    public async Task Text_from_cells_is_text()
    {
        const string hostile = "</pre><script>alert(1)</script> &lt; \" ' \u0001";
        var page = await Page(
            code => code == "throw" ? Output.Raised(hostile, hostile, hostile) : Output.Done(Output.Text(hostile), Output.Data(new JsonObject { ["text/plain"] = hostile })),
            expect: PublishStatus.Failed,
            "# One", "print // " + hostile, "throw");
        Assert.DoesNotContain("<script", page, StringComparison.Ordinal);
        Assert.Contains("&lt;/pre&gt;&lt;script&gt;alert(1)&lt;/script&gt; &amp;lt; &quot; &#39; \uFFFD", page, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Verdicts_titles_names_and_ids_are_text()
    {
        const string hostile = "<b>`x`</b>\"onclick=alert(1)";
        var kept = new KeptResult("<i>id</i>", hostile, hostile, [new Figure("<i>id</i>", hostile, null, hostile, "1", method: hostile)]);
        var page = await Page(_ => Output.Done(Output.Kept(kept, "<p>view</p>")), "# " + hostile, "code");
        Assert.DoesNotMatch("<[bi]>|\"onclick", page);
        Assert.Contains("&lt;b&gt;<code>x</code>&lt;/b&gt;&quot;onclick=alert(1)</a>", page, StringComparison.Ordinal);
    }

    [Fact]
    public async Task What_was_decided_comes_first_and_leads_to_the_result()
    {
        var kept = new KeptResult("rails/grades", "Use `R03`.", "Use R03.", [new Figure("rails/R03/side", "R03 side", 14.21, null, "um", 1.3, coverageFactor: 2)]);
        var page = await Page(_ => Output.Done(Output.Kept(kept, "<p>view</p>")), "# Rails", "code");
        Assert.Contains("<a class=\"verdict\" href=\"#result-rails-grades\">Use <code>R03</code>.</a> <span class=\"from\">Rails</span>", page, StringComparison.Ordinal);
        Assert.Contains("<div class=\"result\" id=\"result-rails-grades\"><div class=\"output\"><p>view</p>", page, StringComparison.Ordinal);
        Assert.True(page.IndexOf("id=\"decided\"", StringComparison.Ordinal) < page.IndexOf("id=\"notebook-1\"", StringComparison.Ordinal));
        Assert.Contains("<tr id=\"figure-rails-r03-side\">", page, StringComparison.Ordinal);
    }

    [Fact]
    public async Task No_two_places_of_the_page_have_the_same_name()
    {
        var kept = new KeptResult("decided", "Use it.", "", [new Figure("a/b", "x", 1, null, "1"), new Figure("a-b", "x", 1, null, "1")]);
        var page = await Page(_ => Output.Done(Output.Kept(kept, "<p>view</p>")), "# Decided\n\n## Same\n\n## Same\n\n## Figures\n\n## Figure a b", "code");
        var ids = Regex.Matches(page, " id=\"([^\"]*)\"").Select(match => match.Groups[1].Value).ToList();
        Assert.Equal(ids.Distinct(), ids);
        var targets = Regex.Matches(page, "href=\"#([^\"]*)\"").Select(match => match.Groups[1].Value);
        Assert.All(targets, target => Assert.Contains(target, ids));
    }

    [Fact]
    public async Task A_caution_is_a_box_that_says_so_and_is_announced_in_the_contents()
    {
        var page = await Page(_ => Output.Done(), "# One\n\n> **Caution** Belts pinch.\n\n> An ordinary quotation.", "code");
        Assert.Contains("<blockquote id=\"caution-belts-pinch\" class=\"ww-caution\" role=\"note\" aria-label=\"Caution\">", page, StringComparison.Ordinal);
        Assert.Contains("<a class=\"caution-mark\" href=\"#caution-belts-pinch\">Caution</a>", page, StringComparison.Ordinal);
        Assert.Single(Regex.Matches(page, "class=\"ww-caution\""));
    }

    [Fact]
    public async Task Links_lead_to_sections_and_inputs_or_become_text()
    {
        _build.Write("rails/sweeps.csv", "abc");
        _build.Notebook("2", "# Two");
        var page = await Page(
            _ => Output.Done(Output.Input(_build.Input("rails/sweeps.csv"))),
            "# One\n\n[two](2.ipynb) [data](../rails/sweeps.csv) [gone](../gone.csv) [out](../../../x) [web](https://example.invalid/)", "code");
        Assert.Contains("<a href=\"#notebook-2\">two</a> <a href=\"inputs/rails/sweeps.csv\">data</a> gone out <a href=\"https://example.invalid/\">web</a>", page, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_picture_attached_to_a_cell_is_part_of_the_page()
    {
        var notebook = BuildFolder.Notebook("# One\n\n![The dial](attachment:dial%201.png)");
        notebook["cells"]![0]!["attachments"] = new JsonObject { ["dial 1.png"] = new JsonObject { ["image/png"] = "aGFsbG8=" } };
        _build.Write("notebooks/1.ipynb", notebook.ToJsonString());
        Assert.Contains("<img src=\"data:image/png;base64,aGFsbG8=\" alt=\"The dial\" />", await Page(_ => Output.Done()), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Cells_that_show_nothing_are_folded_with_the_next_that_does()
    {
        var page = await Page(code => code == "show" ? Output.Done(Output.Text("x")) : Output.Done(), "# One", "a", "b\nc", "show", "d");
        Assert.Equal([4, 1], Regex.Matches(page, @"<summary>Code<span class=""quiet"">, (\d) line").Select(match => int.Parse(match.Groups[1].Value, System.Globalization.CultureInfo.InvariantCulture)));
    }

    [Fact]
    public async Task The_page_of_a_failed_run_says_that_nothing_on_it_is_a_result()
    {
        var kept = new KeptResult("k", "Use it.", "", []);
        var page = await Page(code => code == "keep" ? Output.Done(Output.Kept(kept, "")) : Output.Raised("E", "no"), PublishStatus.Failed, "# One", "keep", "throw", "never");
        Assert.Contains("<strong>This run failed.</strong> Nothing below is a result", page, StringComparison.Ordinal);
        Assert.DoesNotContain("class=\"verdict\"", page, StringComparison.Ordinal);
        Assert.Contains("the code below did not run", page, StringComparison.Ordinal);
    }

    private Task<string> Page(Func<string, CellRun> cell, params string[] cells) => Page(cell, PublishStatus.Published, cells);

    private async Task<string> Page(Func<string, CellRun> cell, PublishStatus expect, params string[] cells)
    {
        if (cells.Length > 0)
            _build.Notebook("1", cells);
        var result = await new Publisher(new ScriptedSessions((_, code, _) => cell(code)).StartAsync, TimeProvider.System)
            .PublishAsync(_build.Request(), null, TestContext.Current.CancellationToken);
        Assert.Equal(expect, result.Status);
        return await File.ReadAllTextAsync(result.Page, TestContext.Current.CancellationToken);
    }
}
