namespace Waywright.EndToEnd.Pages;

public sealed class HostileTextTests(HostileBuild build) : IClassFixture<HostileBuild>
{
    [Fact]
    public async Task Names_notes_and_file_names_that_try_to_be_tags_scripts_or_links_are_shown_as_the_text_that_they_are()
    {
        await using var page = await build.OpenAsync(build.DataPage);
        Assert.NotEqual(0, await page.DrawAllAsync());

        // A name in a sentence may break its line, and stands there with other blanks; in a table and in a text output it stands as it is.
        var text = await page.AskAsync<string>("() => [...document.querySelectorAll('td, th, pre')].map(part => part.textContent).join('\\n')");
        Assert.All(HostileBuild.Names, name => Assert.Contains(name, text));
        Assert.Empty(await page.AskAsync<string[]>("""
            () => [...document.querySelectorAll("*")]
              .filter(e => ["img", "iframe", "object", "embed", "form", "base", "meta[http-equiv=refresh]"].some(tag => e.matches(tag)) || [...e.attributes].some(a => a.name.startsWith("on")))
              .map(e => e.outerHTML.slice(0, 200))
            """));
        Assert.Empty(await page.AskAsync<string[]>("() => [...document.querySelectorAll('a')].map(a => a.getAttribute('href') ?? a.getAttribute('xlink:href')).filter(to => !/^(#|inputs\\/data\\/)/.test(to))"));
        Assert.Equal(1, await page.AskAsync<int>("() => [...document.scripts].filter(s => !s.type && !s.src.startsWith('blob:')).length"));
        Assert.Empty(page.Dialogs);
        Assert.Empty(page.Messages);
        Assert.Equal([new Uri(build.DataPage).AbsoluteUri], page.Requests.Where(address => !address.StartsWith("blob:", StringComparison.Ordinal) && !address.StartsWith("data:", StringComparison.Ordinal)));
    }

    [Fact]
    public async Task A_link_to_an_input_with_a_hostile_name_leads_to_its_copy()
    {
        await using var page = await build.OpenAsync(build.DataPage);
        var links = await page.AskAsync<string[]>("() => [...document.querySelectorAll('a[href^=\"inputs/\"]')].map(a => a.href)");
        Assert.Equal(5, links.Length);
        Assert.All(links, link => Assert.True(File.Exists(new Uri(link).LocalPath), link));
    }

    [Theory]
    [InlineData("script-src-elem inline")]
    [InlineData("script-src-elem https://example.invalid/a.js")]
    [InlineData("script-src-attr inline")]
    [InlineData("img-src https://example.invalid/a.png")]
    [InlineData("style-src-elem https://example.invalid/a.css")]
    [InlineData("frame-src https://example.invalid")]
    [InlineData("object-src https://example.invalid")]
    public async Task The_page_refuses_what_a_cell_shows_that_would_run_or_fetch(string refused)
    {
        await using var page = await build.OpenAsync(build.CellPage, Watch);
        await page.WaitAsync("refused => window.refused.includes(refused)", refused);
        Assert.Empty(page.Dialogs);
        Assert.NotEqual(0, await page.DrawAllAsync());
    }

    [Theory]
    [InlineData("link", "script-src-elem inline")]
    [InlineData("send", "form-action https://example.invalid/?")]
    public async Task The_page_refuses_what_a_click_would_run_or_send(string clicked, string refused)
    {
        await using var page = await build.OpenAsync(build.CellPage, Watch);
        await page.WaitAsync("() => window.refused.includes('frame-src https://example.invalid')");
        await page.AskAsync<object>("() => { window.refused.length = 0; }");
        await page.AskAsync<object>("id => document.getElementById(id).click()", clicked);
        await page.WaitAsync("refused => window.refused.includes(refused)", refused);
        Assert.Empty(page.Dialogs);
        Assert.Equal(new Uri(build.CellPage).AbsoluteUri, page.Page.Url);
    }

    private const string Watch = "window.refused = []; document.addEventListener('securitypolicyviolation', e => e.disposition === 'enforce' && window.refused.push(`${e.effectiveDirective} ${e.blockedURI}`));";
}
