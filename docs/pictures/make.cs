#:package PuppeteerSharp
#:property PublishAot=false
#:property RestorePackagesWithLockFile=false
#:property GenerateDocumentationFile=true
// Pictures of a published page for the README: dotnet run docs/pictures/make.cs -- PAGE OUTFOLDER (Debian's Chromium is needed).
using PuppeteerSharp;

var (page, folder) = (Path.GetFullPath(args[0]), args[1]);
const string chromium = "/usr/bin/chromium";
await using var browser = await Puppeteer.LaunchAsync(new LaunchOptions
{
    ExecutablePath = chromium,
    Args = ["--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run", "--disable-background-networking", "--disable-component-update", "--disable-sync", "--hide-scrollbars"],
});

await PageAsync("page.png", 1280, 900, dark: false);
await PageAsync("page-dark.png", 1280, 900, dark: true);
await PageAsync("page-phone.png", 390, 844, dark: false);
await FiguresAsync();

async Task PageAsync(string name, int width, int height, bool dark)
{
    await using var tab = await OpenAsync(width, height, dark);
    await tab.ScreenshotAsync(Path.Combine(folder, name));
}

async Task FiguresAsync()
{
    await using var tab = await OpenAsync(1000, 900, dark: false);
    foreach (var (name, words) in new[] { ("batch.png", "Each rail by the face"), ("rail.png", "R04 side lies within"), ("belt.png", "Belt left at") })
    {
        var figure = await tab.EvaluateFunctionHandleAsync("words => [...document.querySelectorAll('figure.ww-figure')].find(f => f.querySelector('figcaption')?.textContent.startsWith(words))", words) as IElementHandle
            ?? throw new InvalidOperationException($"No figure whose caption starts with '{words}'.");
        await figure.EvaluateFunctionAsync("f => f.scrollIntoView({ block: 'center' })");
        await tab.WaitForFunctionAsync("f => f.classList.contains('drawn')", new WaitForFunctionOptions(), figure);
        await figure.ScreenshotAsync(Path.Combine(folder, name), new ElementScreenshotOptions());
    }
}

async Task<IPage> OpenAsync(int width, int height, bool dark)
{
    var tab = await browser.NewPageAsync();
    await tab.SetViewportAsync(new ViewPortOptions { Width = width, Height = height });
    await tab.EmulateMediaFeaturesAsync([new MediaFeatureValue { MediaFeature = MediaFeature.PrefersColorScheme, Value = dark ? "dark" : "light" }]);
    await tab.GoToAsync(new Uri(page).AbsoluteUri);
    return tab;
}
