using Waywright.EndToEnd.Commands;

namespace Waywright.EndToEnd.Pages;

/// <summary>The demo, published once, and one browser for all tests that read it.</summary>
public sealed class DemoPage : IAsyncLifetime
{
    private readonly TemporaryFolder _folder = new();
    private Browser? _browser;

    internal string File => Path.Combine(_folder.Path, "page", "index.html");

    public async ValueTask InitializeAsync()
    {
        if (!Required.HasChromium)
            return;
        var run = await Command.RunAsync("publish", "--out", Path.GetDirectoryName(File)!, "--date", "2026-03-01");
        Assert.True(run.ExitCode == 0, run.Error);
        _browser = await Browser.StartAsync();
    }

    internal Task<OpenPage> OpenAsync(Reader reader)
    {
        Required.OfChromium();
        return _browser!.OpenAsync(File, reader);
    }

    public async ValueTask DisposeAsync()
    {
        if (_browser is not null)
            await _browser.DisposeAsync();
        _folder.Dispose();
    }
}

/// <summary>The classes that share the demo's page; they run one after another.</summary>
[CollectionDefinition(Name)]
public sealed class DemoPageReaders : ICollectionFixture<DemoPage>
{
    public const string Name = "readers of the demo's page";
}
