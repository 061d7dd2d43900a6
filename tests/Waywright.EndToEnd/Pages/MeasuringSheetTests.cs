using System.Globalization;
using System.Text;
using System.Text.RegularExpressions;
using Deque.AxeCore.Commons;
using PuppeteerSharp;
using PuppeteerSharp.Media;
using Waywright.EndToEnd.Commands;

namespace Waywright.EndToEnd.Pages;

/// <summary>A new build's sheets, made once, and one browser.</summary>
public sealed class PrintedSheets : IAsyncLifetime
{
    public const int Rails = 3;

    private readonly TemporaryFolder _folder = new();
    private Browser? _browser;

    public async ValueTask InitializeAsync()
    {
        if (!Required.HasChromium)
            return;
        var made = await Command.RunAsync("new", Path.Combine(_folder.Path, "build"), "--rails", $"{Rails}");
        Assert.True(made.ExitCode == 0, made.Error);
        var longer = await Command.RunAsync("new", Path.Combine(_folder.Path, "long"), "--rails", "1", "--rail-length", "700 mm");
        Assert.True(longer.ExitCode == 0, longer.Error);
        _browser = await Browser.StartAsync();
    }

    internal async Task<OpenPage> OpenAsync(string sheet, Reader reader, string build = "build")
    {
        Required.OfChromium();
        return await _browser!.OpenAsync(Path.Combine(_folder.Path, build, "sheets", sheet), reader);
    }

    public async ValueTask DisposeAsync()
    {
        if (_browser is not null)
            await _browser.DisposeAsync();
        _folder.Dispose();
    }
}

public sealed partial class MeasuringSheetTests(PrintedSheets sheets) : IClassFixture<PrintedSheets>
{
    public static TheoryData<string, int> Sheets => new(
        from paper in (string[])["a4", "letter"]
        from sheet in (string[])["rail-sweeps.html", "drag.html", "belts.html"]
        from width in (int[])[1280, 390]
        select ($"{paper}/{sheet}", width));

    [Theory]
    [MemberData(nameof(Sheets))]
    public async Task On_a_screen_a_sheet_asks_for_nothing_says_nothing_does_not_scroll_sideways_and_axe_finds_nothing(string sheet, int width)
    {
        await using var page = await sheets.OpenAsync(sheet, new Reader(width));
        Assert.Empty(page.Messages);
        Assert.Single(page.Requests, address => !address.StartsWith("data:", StringComparison.Ordinal));
        Assert.Equal(width, await page.AskAsync<int>("() => Math.max(document.documentElement.scrollWidth, document.body.scrollWidth, document.documentElement.clientWidth)"));
        await page.Page.EvaluateExpressionAsync(new BundledAxeScriptProvider().GetScript());
        var found = await page.AskAsync<string[]>("async () => (await axe.run(document, { resultTypes: ['violations'] })).violations.flatMap(rule => rule.nodes.map(node => `${rule.id}: ${node.target} ${node.failureSummary}`))");
        Assert.True(found.Length == 0, string.Join('\n', found));
    }

    // ISO 216 A4 and ANSI/ASME Y14.1 A in points of 1/72 inch; what is printed stays within the margins.
    [Theory]
    [InlineData("a4", 595, 842, 186, 279)]
    [InlineData("letter", 612, 792, 191.9, 261.4)]
    public async Task On_paper_a_rail_has_one_page_a_sheet_belts_have_two_and_nothing_leaves_the_paper(string paper, int width, int height, double columnMm, double roomMm)
    {
        foreach (var (sheet, pages) in new[] { ("rail-sweeps.html", PrintedSheets.Rails), ("drag.html", PrintedSheets.Rails), ("belts.html", 2) })
        {
            await using var page = await sheets.OpenAsync($"{paper}/{sheet}", new Reader());
            var printed = Encoding.Latin1.GetString(await page.Page.PdfDataAsync(new PdfOptions { PreferCSSPageSize = true, PrintBackground = false }));
            Assert.Equal(pages, OnePage().Count(printed));
            var box = Box().Match(printed);
            Assert.Equal(width, double.Parse(box.Groups[1].Value, CultureInfo.InvariantCulture), 1.0);
            Assert.Equal(height, double.Parse(box.Groups[2].Value, CultureInfo.InvariantCulture), 1.0);

            await page.Page.EmulateMediaTypeAsync(MediaType.Print);
            await page.Page.SetViewportAsync(new ViewPortOptions { Width = (int)Math.Floor(columnMm * 96 / 25.4), Height = 1000 });
            var sizes = await page.AskAsync<double[][]>("""
                () => [...document.querySelectorAll(".sheet")].map(sheet => {
                  const box = sheet.getBoundingClientRect();
                  const right = Math.max(...[...sheet.querySelectorAll("*")].map(e => e.getBoundingClientRect().right));
                  return [right - box.right, box.height * 25.4 / 96];
                })
                """);
            Assert.All(sizes, size =>
            {
                Assert.True(size[0] <= 0.5, $"{sheet}: {size[0]} px beyond the column");
                Assert.InRange(size[1], 100, roomMm);
            });
        }
    }

    [Fact]
    public async Task A_long_rail_goes_on_over_a_second_page_with_its_headings_and_no_row_is_cut()
    {
        await using var page = await sheets.OpenAsync("a4/rail-sweeps.html", new Reader(), "long");
        var printed = Encoding.Latin1.GetString(await page.Page.PdfDataAsync(new PdfOptions { PreferCSSPageSize = true }));
        Assert.Equal(2, OnePage().Count(printed));
        Assert.Equal("table-header-group avoid", await page.AskAsync<string>("() => `${getComputedStyle(document.querySelector('thead')).display} ${getComputedStyle(document.querySelector('tbody tr')).breakInside}`"));
    }

    [Fact]
    public async Task A_box_has_room_for_a_figure_written_with_a_pencil_and_only_black_and_white_are_used()
    {
        foreach (var sheet in new[] { "rail-sweeps.html", "drag.html", "belts.html" })
        {
            await using var page = await sheets.OpenAsync($"letter/{sheet}", new Reader());
            // 6 mm is the usual ruling of handwriting, common practice, no source.
            var least = await page.AskAsync<double[]>("() => { const boxes = [...document.querySelectorAll('tbody td')].map(td => td.getBoundingClientRect()); return [Math.min(...boxes.map(b => b.height)), Math.min(...boxes.map(b => b.width))].map(px => px * 25.4 / 96); }");
            Assert.True(least[0] >= 6 && least[1] >= 15, $"{sheet}: {least[0]:0.0} by {least[1]:0.0} mm");
            Assert.Empty(await page.AskAsync<string[]>("""
                () => [...document.querySelectorAll("*")].flatMap(e => { const s = getComputedStyle(e); return [s.color, s.backgroundColor, s.borderTopColor, s.fill, s.stroke]; })
                  .filter(c => !["rgb(0, 0, 0)", "rgb(255, 255, 255)", "rgba(0, 0, 0, 0)", "none"].includes(c) && !c.startsWith("url(") && !c.startsWith("url (")).filter((c, i, all) => all.indexOf(c) === i)
                """));
        }
    }

    [GeneratedRegex("/Type */Page[^s]")]
    private static partial Regex OnePage();

    [GeneratedRegex(@"/MediaBox *\[ *0 +0 +([0-9.]+) +([0-9.]+) *\]")]
    private static partial Regex Box();
}
