#:package PuppeteerSharp
#:property PublishAot=false
#:property RestorePackagesWithLockFile=false
#:property GenerateDocumentationFile=true
// Pictures of a published page, in every way that it is read: dotnet run docs/pictures/make.cs -- PAGE OUTFOLDER (Debian's Chromium is needed; pdftoppm for the print).
using System.Diagnostics;
using PuppeteerSharp;
using PuppeteerSharp.Media;

const string chromium = "/usr/bin/chromium";
const int desk = 1280, phone = 390;
var (page, folder) = (Path.GetFullPath(args[0]), args[1]);
await using var browser = await Puppeteer.LaunchAsync(new LaunchOptions
{
    ExecutablePath = chromium,
    Args = ["--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run", "--disable-background-networking", "--disable-component-update", "--disable-sync", "--hide-scrollbars"],
});

foreach (var (name, width, height) in new[] { ("page", desk, 900), ("page-phone", phone, 844) })
{
    await PageAsync(name + ".png", width, height, dark: false);
    await PageAsync(name + "-dark.png", width, height, dark: true);
}

await FiguresAsync();
await PrintAsync();
foreach (var (suffix, width, dark) in new[] { ("", desk, false), ("-dark", desk, true), ("-phone", phone, false), ("-phone-dark", phone, true) })
    await ChartsAsync(suffix, width, dark);

async Task PageAsync(string name, int width, int height, bool dark)
{
    await using var tab = await OpenAsync(width, height, dark);
    await tab.ScreenshotAsync(Path.Combine(folder, name));
}

async Task FiguresAsync()
{
    await using var tab = await OpenAsync(1000, 900, dark: false);
    foreach (var (name, words) in new[] { ("batch.png", "Each rail by what decided"), ("rail.png", "R04 side lies within"), ("belt.png", "Belt left at") })
    {
        var figure = await tab.EvaluateFunctionHandleAsync("words => [...document.querySelectorAll('figure.ww-figure')].find(f => f.querySelector('figcaption')?.textContent.startsWith(words))", words) as IElementHandle
            ?? throw new InvalidOperationException($"No figure whose caption starts with '{words}'.");
        await DrawAsync(tab, figure);
        await figure.ScreenshotAsync(Path.Combine(folder, name), new ElementScreenshotOptions());
    }
}

// The charts and drawings of each notebook, one below the other, without the text between them.
async Task ChartsAsync(string suffix, int width, bool dark)
{
    await using var tab = await OpenAsync(width, 900, dark);
    await tab.EvaluateExpressionAsync("document.querySelectorAll('details').forEach(d => d.open = d.querySelector('figure.ww-figure') !== null)");
    await tab.AddStyleTagAsync(new AddTagOptions { Content = "section.notebook *:not(:has(figure.ww-figure)):not(figure.ww-figure):not(figure.ww-figure *) { display: none !important }" });
    foreach (var section in await tab.QuerySelectorAllAsync("section.notebook:has(figure.ww-figure)"))
    {
        foreach (var figure in await section.QuerySelectorAllAsync("figure.ww-figure"))
            await DrawAsync(tab, figure);
        var name = await section.EvaluateFunctionAsync<string>("s => s.id.replace('notebook-', '')");
        await section.ScreenshotAsync(Path.Combine(folder, $"{name}{suffix}.png"), new ElementScreenshotOptions());
    }
}

async Task PrintAsync()
{
    await using var tab = await OpenAsync(desk, 900, dark: false);
    var pdf = Path.Combine(Path.GetTempPath(), Path.GetRandomFileName() + ".pdf");
    await tab.PdfAsync(pdf, new PdfOptions { Format = PaperFormat.A4, PrintBackground = true, MarginOptions = new MarginOptions { Top = "12mm", Right = "12mm", Bottom = "12mm", Left = "12mm" } });
    using (var convert = Process.Start("pdftoppm", ["-png", "-r", "80", "-l", "4", pdf, Path.Combine(folder, "print")]))
        await convert.WaitForExitAsync();
    File.Delete(pdf);
}

// A drawing is there from the start; a chart once it was looked at.
static async Task DrawAsync(IPage tab, IElementHandle figure)
{
    await figure.EvaluateFunctionAsync("f => f.scrollIntoView({ block: 'center' })");
    await tab.WaitForFunctionAsync("f => f.classList.contains('drawn') || !f.querySelector('script[type=\"application/json\"]')", new WaitForFunctionOptions(), figure);
}

async Task<IPage> OpenAsync(int width, int height, bool dark)
{
    var tab = await browser.NewPageAsync();
    await tab.SetViewportAsync(new ViewPortOptions { Width = width, Height = height });
    await tab.EmulateMediaFeaturesAsync([new MediaFeatureValue { MediaFeature = MediaFeature.PrefersColorScheme, Value = dark ? "dark" : "light" }]);
    await tab.GoToAsync(new Uri(page).AbsoluteUri);
    return tab;
}
