using PuppeteerSharp.Media;

namespace Waywright.EndToEnd.Pages;

/// <summary>Where no script draws, the still pictures tell the same.</summary>
[Collection(DemoPageReaders.Name)]
public sealed class StillTests(DemoPage demo)
{
    [Theory]
    [InlineData(1280)]
    [InlineData(390)]
    public async Task Without_scripts_every_figure_shows_its_still_picture_and_the_text_can_be_read(int width)
    {
        await using var page = await demo.OpenAsync(new Reader(width, Scripts: false));
        var seen = await page.AskAsync<Seen>(Look);
        Assert.NotEqual(0, seen.Figures);
        Assert.Equal((seen.Figures, 0), (seen.Stills, seen.Live));
        var text = await page.AskAsync<string>("() => document.body.innerText");
        Assert.All(["What was decided", "Send back R07", "Tighten right", "How it was measured"], part => Assert.Contains(part, text));
        Assert.DoesNotContain("undefined", text);
        Assert.Empty(page.Messages);
    }

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public async Task Paper_gets_the_still_pictures_whether_or_not_the_charts_were_drawn(bool drawn)
    {
        await using var page = await demo.OpenAsync(new Reader(Dark: true));
        if (drawn)
            await page.DrawAllAsync();
        await page.Page.EmulateMediaTypeAsync(MediaType.Print);
        var seen = await page.AskAsync<Seen>(Look);
        Assert.NotEqual(0, seen.Figures);
        Assert.Equal((seen.Figures, 0), (seen.Stills, seen.Live));
        Assert.Equal("rgb(0, 0, 0)", await page.AskAsync<string>("() => getComputedStyle(document.body).color"));
        Assert.Equal("none", await page.AskAsync<string>("() => getComputedStyle(document.getElementById('contents')).display"));
    }

    private const string Look = """
        () => {
          const isSeen = e => e.checkVisibility() && e.getBoundingClientRect().width > 100 && e.getBoundingClientRect().height > 50;
          const figures = [...document.querySelectorAll(".ww-figure")];
          return {
            figures: figures.length,
            stills: figures.filter(f => [...f.querySelectorAll("svg:not(.main-svg)")].some(isSeen)).length,
            live: figures.filter(f => [...f.querySelectorAll(".live")].some(isSeen)).length
          };
        }
        """;

    private sealed record Seen(int Figures, int Stills, int Live);
}
