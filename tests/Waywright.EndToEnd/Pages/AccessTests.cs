using Deque.AxeCore.Commons;

namespace Waywright.EndToEnd.Pages;

[Collection(DemoPageReaders.Name)]
public sealed class AccessTests(DemoPage demo)
{
    // WCAG 2.2 levels A and AA, and axe's own rules of good practice.
    private const string RunAxe = """
        async () => {
          const found = await axe.run(document, { resultTypes: ["violations"] });
          return found.violations.flatMap(rule => rule.nodes.map(node => `${rule.id}: ${node.target} ${node.failureSummary}`));
        }
        """;

    [Theory]
    [InlineData(1280, false)]
    [InlineData(1280, true)]
    [InlineData(390, false)]
    [InlineData(390, true)]
    public async Task Axe_finds_nothing(int width, bool dark)
    {
        await using var page = await demo.OpenAsync(new Reader(width, dark));
        await page.Page.EvaluateExpressionAsync(new BundledAxeScriptProvider().GetScript());
        FindsNothing(await page.AskAsync<string[]>(RunAxe));
        await page.DrawAllAsync();
        FindsNothing(await page.AskAsync<string[]>(RunAxe));
    }

    [Fact]
    public async Task Axe_would_find_a_picture_without_a_name_and_text_too_pale_to_read()
    {
        await using var page = await demo.OpenAsync(new Reader());
        await page.Page.EvaluateExpressionAsync(new BundledAxeScriptProvider().GetScript());
        await page.Page.EvaluateExpressionAsync("""
            document.querySelector("main").insertAdjacentHTML("beforeend", "<img src='data:,'><p style='color:#ddd'>pale</p>");
            """);
        var found = await page.AskAsync<string[]>(RunAxe);
        Assert.Contains(found, one => one.StartsWith("image-alt:", StringComparison.Ordinal));
        Assert.Contains(found, one => one.StartsWith("color-contrast:", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData(320)]
    [InlineData(390)]
    [InlineData(1280)]
    public async Task The_page_never_scrolls_sideways(int width)
    {
        await using var page = await demo.OpenAsync(new Reader(width));
        Assert.Equal(width, await page.AskAsync<int>(WidthOfPage));
        await page.DrawAllAsync();
        Assert.Equal(width, await page.AskAsync<int>(WidthOfPage));
    }

    [Fact]
    public async Task The_first_tab_offers_to_skip_to_what_was_decided()
    {
        await using var page = await demo.OpenAsync(new Reader());
        await page.Page.Keyboard.PressAsync("Tab");
        Assert.Equal("Skip to what was decided", await page.AskAsync<string>("() => document.activeElement.textContent"));
        Assert.True(await page.AskAsync<bool>("() => document.activeElement.getBoundingClientRect().left >= 0"), "seen while it has the focus");
        await page.Page.Keyboard.PressAsync("Enter");
        await page.WaitAsync("() => location.hash === '#decided' && Math.abs(document.getElementById('decided').getBoundingClientRect().top) < innerHeight");
        await page.Page.Keyboard.PressAsync("Tab");
        Assert.True(await page.AskAsync<bool>("() => document.getElementById('decided').contains(document.activeElement)"), "the next stop is the first verdict");
    }

    [Fact]
    public async Task The_tab_key_reaches_every_fold_and_every_box_that_scrolls_and_enter_opens_every_fold()
    {
        await using var page = await demo.OpenAsync(new Reader());
        var folds = await page.AskAsync<int>("() => document.querySelectorAll('summary').length");
        Assert.NotEqual(0, folds);
        for (var stops = 0; ; stops++)
        {
            Assert.InRange(stops, 0, 2000);
            await page.Page.Keyboard.PressAsync("Tab");
            var stop = await page.AskAsync<Stop>(NameStop);
            if (stop.Tag == "BODY")
                break;
            Assert.True(stop.Outlined, $"nothing shows that {stop.Tag} '{stop.Name}' has the focus");
            if (stop.Tag != "SUMMARY")
                continue;
            await page.Page.Keyboard.PressAsync("Enter");
            await page.WaitAsync("() => document.activeElement.parentElement.open");
        }

        Assert.Equal(0, await page.AskAsync<int>("() => document.querySelectorAll('details:not([open])').length"));
        Assert.Equal(0, await page.AskAsync<int>("() => [...document.querySelectorAll('body *')].filter(e => e.scrollWidth > e.clientWidth && ['auto', 'scroll'].includes(getComputedStyle(e).overflowX) && !e.dataset.reached && !e.querySelector('[data-reached]')).length"));
    }

    private static void FindsNothing(string[] found) => Assert.True(found.Length == 0, string.Join('\n', found));

    private const string WidthOfPage = "() => Math.max(document.documentElement.scrollWidth, document.body.scrollWidth, document.documentElement.clientWidth)";

    private const string NameStop = """
        () => {
          const stop = document.activeElement;
          stop.dataset.reached = "yes";
          const style = getComputedStyle(stop);
          return { tag: stop.tagName, name: (stop.getAttribute("aria-label") ?? stop.textContent).trim().slice(0, 60), outlined: style.outlineStyle !== "none" && parseFloat(style.outlineWidth) >= 2 };
        }
        """;

    private sealed record Stop(string Tag, string Name, bool Outlined);
}
