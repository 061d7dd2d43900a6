using PuppeteerSharp;
using Waywright.EndToEnd.Commands;

namespace Waywright.EndToEnd.Pages;

/// <summary>How a reader looks at a page.</summary>
/// <param name="Width">Of the window, in CSS pixels; below 600 it is a phone with a touch screen.</param>
/// <param name="Dark">Whether the reader prefers dark pages.</param>
/// <param name="Scripts">Whether scripts run.</param>
internal sealed record Reader(int Width = 1280, bool Dark = false, bool Scripts = true)
{
    public ViewPortOptions Window => new() { Width = Width, Height = 800, IsMobile = Width < 600, HasTouch = Width < 600 };
}

/// <summary>Chromium without a window, with a profile of its own.</summary>
internal sealed class Browser : IAsyncDisposable
{
    private static readonly string[] Flags =
    [
        "--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run", "--disable-background-networking", "--disable-component-update", "--disable-sync",
    ];

    private readonly TemporaryFolder _profile;
    private readonly IBrowser _browser;

    private Browser(TemporaryFolder profile, IBrowser browser) => (_profile, _browser) = (profile, browser);

    public static async Task<Browser> StartAsync()
    {
        var profile = new TemporaryFolder();
        try
        {
            return new Browser(profile, await Puppeteer.LaunchAsync(new LaunchOptions { ExecutablePath = Required.Chromium, Headless = true, UserDataDir = profile.Path, Args = Flags }));
        }
        catch
        {
            profile.Dispose();
            throw;
        }
    }

    /// <summary>Opens a file from disk and waits until it is loaded.</summary>
    /// <param name="file">Its full path.</param>
    /// <param name="reader">Who looks at it.</param>
    /// <param name="before">A script that runs before the page's own.</param>
    public async Task<OpenPage> OpenAsync(string file, Reader reader, string before = "")
    {
        var page = await _browser.NewPageAsync();
        await page.SetViewportAsync(reader.Window);
        await page.SetJavaScriptEnabledAsync(reader.Scripts);
        await page.EmulateMediaFeaturesAsync([new MediaFeatureValue { MediaFeature = MediaFeature.PrefersColorScheme, Value = reader.Dark ? "dark" : "light" }]);
        if (before.Length > 0)
            await page.EvaluateExpressionOnNewDocumentAsync(before);
        var open = new OpenPage(page);
        await page.GoToAsync(new Uri(file).AbsoluteUri, WaitUntilNavigation.Load);
        return open;
    }

    public async ValueTask DisposeAsync()
    {
        await _browser.CloseAsync();
        _profile.Dispose();
    }
}
