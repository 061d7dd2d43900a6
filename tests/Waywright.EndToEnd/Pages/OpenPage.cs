using System.Collections.Concurrent;
using PuppeteerSharp;

namespace Waywright.EndToEnd.Pages;

/// <summary>A page as it stands in the browser, and everything that it said and asked for since it was opened.</summary>
internal sealed class OpenPage : IAsyncDisposable
{
    private static readonly WaitForFunctionOptions Patient = new() { Timeout = 60_000 };

    private readonly ConcurrentQueue<string> _messages = [];
    private readonly ConcurrentQueue<string> _requests = [];
    private readonly ConcurrentQueue<string> _dialogs = [];

    public OpenPage(IPage page)
    {
        Page = page;
        page.Console += (_, e) => _messages.Enqueue($"{e.Message.Type}: {e.Message.Text}");
        page.PageError += (_, e) => _messages.Enqueue($"error: {e.Message}");
        page.Request += (_, e) => _requests.Enqueue(e.Request.Url);
        page.Dialog += async (_, e) =>
        {
            _dialogs.Enqueue(e.Dialog.Message);
            await e.Dialog.Dismiss();
        };
    }

    public IPage Page { get; }

    /// <summary>What stands in the console, uncaught errors too.</summary>
    public IReadOnlyCollection<string> Messages => _messages;

    /// <summary>The address of everything that was asked for.</summary>
    public IReadOnlyCollection<string> Requests => _requests;

    public IReadOnlyCollection<string> Dialogs => _dialogs;

    public Task<T> AskAsync<T>(string function, params object[] arguments) => Page.EvaluateFunctionAsync<T>(function, arguments);

    public Task WaitAsync(string function, params object[] arguments) => Page.WaitForFunctionAsync(function, Patient, arguments);

    /// <summary>Opens every fold, then comes near every figure until its chart is drawn.</summary>
    /// <returns>The number of figures.</returns>
    public async Task<int> DrawAllAsync()
    {
        var figures = await AskAsync<int>("""
            () => {
              document.querySelectorAll("details").forEach(fold => fold.open = true);
              return document.querySelectorAll(".ww-figure").length;
            }
            """);
        for (var i = 0; i < figures; i++)
        {
            await Page.EvaluateFunctionAsync("i => document.querySelectorAll('.ww-figure')[i].scrollIntoView({ block: 'center' })", i);
            await WaitAsync("""
                i => {
                  const chart = document.querySelectorAll(".ww-figure")[i];
                  const box = chart.querySelector(".live svg.main-svg")?.getBoundingClientRect();
                  return chart.classList.contains("drawn") && box && box.width > 0 && box.height > 0;
                }
                """, i);
        }

        return figures;
    }

    public async ValueTask DisposeAsync() => await Page.CloseAsync();
}
