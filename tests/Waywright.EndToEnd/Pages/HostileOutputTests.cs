using Deque.AxeCore.Commons;

namespace Waywright.EndToEnd.Pages;

public sealed class HostileOutputTests(HostileOutputs build) : IClassFixture<HostileOutputs>
{
    [Theory]
    [InlineData(320)]
    [InlineData(1280)]
    public async Task Hostile_text_in_any_place_runs_nothing_asks_for_nothing_and_leaves_the_page_whole(int width)
    {
        await using var page = await build.OpenAsync(width);
        await page.AskAsync<object>("() => document.querySelectorAll('details').forEach(fold => fold.open = true)");
        Assert.Empty(page.Dialogs);
        Assert.Empty(page.Messages);
        Assert.Equal([new Uri(build.Page).AbsoluteUri], page.Requests.Where(address => !address.StartsWith("data:", StringComparison.Ordinal)));

        // Whole: all that the page's own frame has is there, once, and in its order.
        Assert.Equal(["HEADER", "MAIN", "FOOTER"], await page.AskAsync<string[]>("() => [...document.body.children].map(e => e.tagName).filter(tag => tag !== 'A')"));
        Assert.Equal(["decided", "contents", "", "measured"], await page.AskAsync<string[]>("() => [...document.querySelector('main').children].map(e => e.className === 'notebook' ? '' : e.id)"));
        Assert.Empty(await page.AskAsync<string[]>("""
            () => [...document.querySelectorAll("*")]
              .filter(e => ["script", "iframe", "object", "embed", "form", "base", "meta[http-equiv=refresh]", "body svg"].some(tag => e.matches(tag)) || [...e.attributes].some(a => a.name.startsWith("on")))
              .map(e => e.outerHTML.slice(0, 200))
            """));
        Assert.Empty(await page.AskAsync<string[]>("() => [...document.querySelectorAll('a')].map(a => a.getAttribute('href')).filter(to => !/^(#|inputs\\/data\\/|https?:|mailto:)/.test(to))"));
        Assert.Empty(await page.AskAsync<string[]>("() => [...document.querySelectorAll('a[href^=http]')].filter(a => !a.closest('.prose')).map(a => a.outerHTML)"));
        Assert.Empty(await page.AskAsync<string[]>("() => [...document.querySelectorAll('img')].map(i => i.getAttribute('src')).filter(from => !from.startsWith('data:image/'))"));
        Assert.Equal(0, await page.AskAsync<int>("() => Math.max(0, document.documentElement.scrollWidth - innerWidth)"));
    }

    [Fact]
    public async Task Each_text_is_seen_where_it_was_put_and_no_hidden_sign_is_in_the_file()
    {
        await using var page = await build.OpenAsync(1280);
        var shown = await page.AskAsync<string>("() => [...document.querySelectorAll('pre.stream')].map(part => part.textContent).join('\\n')");
        Assert.All(HostileTexts.Names, name => Assert.Contains(name, shown));
        Assert.DoesNotContain(await File.ReadAllTextAsync(build.Page, TestContext.Current.CancellationToken), HostileTexts.IsHidden);
    }

    [Fact]
    public async Task Axe_finds_nothing()
    {
        await using var page = await build.OpenAsync(1280);
        await page.Page.EvaluateExpressionAsync(new BundledAxeScriptProvider().GetScript());
        Assert.Empty(await page.AskAsync<string[]>("""
            async () => (await axe.run(document, { resultTypes: ["violations"] })).violations.flatMap(rule => rule.nodes.map(node => `${rule.id}: ${node.target} ${node.html.slice(0, 200)}`))
            """));
    }
}
