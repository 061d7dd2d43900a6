namespace Waywright.EndToEnd.Pages;

[Collection(DemoPageReaders.Name)]
public sealed class ChartTests(DemoPage demo)
{
    [Theory]
    [InlineData(1280, false)]
    [InlineData(390, true)]
    public async Task Every_figure_is_drawn_by_the_script_that_the_page_carries_without_a_message_and_without_asking_for_anything_else(int width, bool dark)
    {
        await using var page = await demo.OpenAsync(new Reader(width, dark));
        Assert.NotEqual(0, await page.DrawAllAsync());
        Assert.Empty(page.Messages);
        var itself = new Uri(demo.File).AbsoluteUri;
        Assert.Contains(itself, page.Requests);
        Assert.All(page.Requests, address => Assert.True(address == itself || address.StartsWith("blob:", StringComparison.Ordinal) || address.StartsWith("data:", StringComparison.Ordinal), address));
    }

    [Fact]
    public async Task Every_figure_has_a_caption_and_its_chart_a_name_for_who_does_not_see_it()
    {
        await using var page = await demo.OpenAsync(new Reader());
        var figures = await page.DrawAllAsync();
        Assert.NotEqual(0, figures);
        var captions = await page.AskAsync<string[]>("() => [...document.querySelectorAll('.ww-figure > figcaption')].map(caption => caption.innerText.trim())");
        Assert.Equal(figures, captions.Length);
        Assert.DoesNotContain("", captions);

        // As the browser tells it to a screen reader, not as an attribute says it.
        var titles = await page.AskAsync<string[]>("() => [...document.querySelectorAll('.ww-figure > .still > title')].map(title => title.textContent)");
        Assert.Equal(figures, titles.Length);
        var charts = await page.Page.QuerySelectorAllAsync(".ww-figure .live");
        foreach (var (title, chart) in titles.Zip(charts))
        {
            var told = await page.Page.Accessibility.SnapshotAsync(new PuppeteerSharp.PageAccessibility.AccessibilitySnapshotOptions { Root = chart });
            Assert.Contains(told.Role, (string[])["image", "img"]);
            Assert.StartsWith(title, told.Name);
            Assert.True(title.Length > 0 && told.Name.Length > title.Length, $"no more than a title: {told.Name}");
        }
    }

    [Fact]
    public async Task No_word_of_a_chart_leaves_it_on_a_phone()
    {
        await using var page = await demo.OpenAsync(new Reader(390));
        Assert.NotEqual(0, await page.DrawAllAsync());
        Assert.Empty(await page.AskAsync<string[]>("""
            () => [...document.querySelectorAll(".ww-figure .live")].flatMap(live => {
              const frame = live.getBoundingClientRect();
              return frame.width === 0 ? [] : [...live.querySelectorAll("text")].filter(text => {
                const box = text.getBoundingClientRect();
                return box.width > 0 && (box.right > frame.right + 1 || box.left < frame.left - 1);
              }).map(text => text.textContent);
            })
            """));
    }

    [Fact]
    public async Task Charts_follow_the_reader_who_turns_to_a_dark_page()
    {
        await using var page = await demo.OpenAsync(new Reader());
        await page.DrawAllAsync();
        Assert.True(await page.AskAsync<bool>(TextIs, "rgb(0, 0, 0)"), "ink on a light page");
        await page.Page.EmulateMediaFeaturesAsync([new() { MediaFeature = PuppeteerSharp.MediaFeature.PrefersColorScheme, Value = "dark" }]);
        await page.WaitAsync(TextIs, "rgb(230, 230, 230)");
        Assert.Empty(page.Messages);
    }

    // A native range input: keyboards and screen readers know it. Its value outlives a redrawing for a dark page.
    [Theory]
    [InlineData(1280)]
    [InlineData(390)]
    public async Task A_slider_changes_its_chart_by_keyboard_and_keeps_its_value(int width)
    {
        await using var page = await demo.OpenAsync(new Reader(width));
        await page.DrawAllAsync();
        var sliders = await page.Page.QuerySelectorAllAsync(".ww-slider input[type=range]");
        Assert.Equal(3, sliders.Length);
        foreach (var slider in sliders)
        {
            await slider.EvaluateFunctionAsync("input => input.scrollIntoView({ block: 'center' })");
            var before = await slider.EvaluateFunctionAsync<string>(Drawn);
            var told = await slider.EvaluateFunctionAsync<string>("input => input.getAttribute('aria-valuetext')");
            await slider.FocusAsync();
            await page.Page.Keyboard.PressAsync("ArrowRight");
            await page.WaitAsync("before => { const input = document.activeElement; return (" + Drawn + ")(input) !== before; }", before);
            Assert.NotEqual(told, await slider.EvaluateFunctionAsync<string>("input => input.getAttribute('aria-valuetext')"));
        }

        var changed = await sliders[0].EvaluateFunctionAsync<string>(Drawn);
        await page.Page.EmulateMediaFeaturesAsync([new() { MediaFeature = PuppeteerSharp.MediaFeature.PrefersColorScheme, Value = "dark" }]);
        await page.WaitAsync(TextIs, "rgb(230, 230, 230)");
        Assert.Equal(changed, await sliders[0].EvaluateFunctionAsync<string>(Drawn));
        Assert.Empty(page.Messages);
    }

    private const string Drawn = "input => [...input.closest('.ww-figure').querySelectorAll('.live .scatterlayer path')].map(path => path.getAttribute('d')).join(' ')";

    [Fact]
    public async Task A_reader_on_a_phone_can_move_the_page_with_a_finger_on_a_chart()
    {
        await using var page = await demo.OpenAsync(new Reader(390));
        await page.DrawAllAsync();
        var pane = await page.AskAsync<Place>("() => { const pane = document.querySelector('.ww-figure .live .nsewdrag'); pane.scrollIntoView({ block: 'center' }); const box = pane.getBoundingClientRect(); return { x: box.x + box.width / 2, y: box.y + box.height / 2, scrolled: scrollY }; }");
        var finger = await page.Page.Touchscreen.TouchStartAsync(pane.X, pane.Y);
        for (var up = 15; up <= 150; up += 15)
            await finger.MoveAsync(pane.X, pane.Y - up);
        await finger.EndAsync();
        await page.WaitAsync("before => scrollY > before + 100", pane.Scrolled);
    }

    [Fact]
    public void The_page_is_at_most_4_MB()
    {
        Required.OfChromium(); // published only then
        Assert.InRange(new FileInfo(demo.File).Length, 1, 4_000_000);
    }

    private sealed record Place(decimal X, decimal Y, double Scrolled);

    private const string TextIs = "colour => [...document.querySelectorAll('.ww-figure')].every(figure => [...figure.querySelectorAll('.live .xtick text')].some(text => getComputedStyle(text).fill === colour))";
}
