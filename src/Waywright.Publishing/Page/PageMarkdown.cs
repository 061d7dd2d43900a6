using Markdig;
using Markdig.Extensions.EmphasisExtras;
using Markdig.Extensions.Tables;
using Markdig.Renderers;
using Markdig.Renderers.Html;
using Markdig.Syntax;
using Markdig.Syntax.Inlines;
using Waywright.Notebooks;

namespace Waywright.Publishing;

/// <summary>Markdown cells as HTML: raw HTML is text, links go only where they may, headings have anchors, cautions a box.</summary>
/// <param name="anchors">The page's names.</param>
/// <param name="place">Where a relative link of a notebook leads on the page; null: nowhere.</param>
internal sealed class PageMarkdown(Anchors anchors, Func<string, string?> place)
{
    private static readonly MarkdownPipeline Pipeline = new MarkdownPipelineBuilder()
        .UsePipeTables()
        .UseEmphasisExtras(EmphasisExtraOptions.Subscript | EmphasisExtraOptions.Superscript | EmphasisExtraOptions.Strikethrough)
        .DisableHtml()
        .Build();

    private readonly List<string> _cautions = [];

    /// <summary>Anchors of the cautions so far.</summary>
    public IReadOnlyList<string> Cautions => _cautions;

    /// <summary>The notebook's first heading of level 1 as plain text; null without one.</summary>
    public static string? TitleOf(NotebookDocument notebook)
        => notebook.Cells.Where(cell => cell.IsMarkdown)
            .SelectMany(cell => Markdown.Parse(Shown(cell.Source), Pipeline).OfType<HeadingBlock>())
            .Where(heading => heading.Level == 1)
            .Select(PlainText)
            .FirstOrDefault(title => title.Length > 0);

    /// <summary>One cell.</summary>
    /// <param name="markdown">Its text.</param>
    /// <param name="pictures">Its attached pictures by name, as data URLs.</param>
    /// <param name="firstHeading">The anchor of its first heading of level 1, or null.</param>
    public string ToHtml(string markdown, IReadOnlyDictionary<string, string> pictures, out string? firstHeading)
    {
        var document = Markdown.Parse(Shown(markdown), Pipeline);
        firstHeading = null;
        foreach (var heading in document.Descendants<HeadingBlock>())
        {
            var anchor = anchors.Take("", PlainText(heading));
            firstHeading ??= heading.Level == 1 ? anchor : null;
            heading.GetAttributes().Id = anchor;
            heading.Level = Math.Min(6, heading.Level + 1); // the page's own title is the one h1
        }

        foreach (var quote in document.Descendants<QuoteBlock>().Where(IsCaution))
            MarkCaution(quote);
        foreach (var code in document.Descendants<CodeBlock>())
            MarkScrolling(code.GetAttributes());
        foreach (var link in document.Descendants<LinkInline>().ToList())
            Settle(link, pictures);
        foreach (var link in document.Descendants<AutolinkInline>().Where(link => !link.IsEmail && Target(link.Url) is null).ToList())
            link.ReplaceBy(new LiteralInline(link.Url));

        using var writer = new StringWriter(System.Globalization.CultureInfo.InvariantCulture) { NewLine = "\n" };
        var renderer = new HtmlRenderer(writer);
        Pipeline.Setup(renderer);
        renderer.ObjectRenderers.FindExact<CodeBlockRenderer>()!.OutputAttributesOnPre = true;
        renderer.ObjectRenderers.Replace<HeadingRenderer>(new AnchoredHeading());
        renderer.ObjectRenderers.Replace<HtmlTableRenderer>(new ScrollingTable());
        renderer.Render(document);
        return writer.ToString();
    }

    private static string Shown(string markdown) => Markup.Seen(markdown.Replace("\r", "", StringComparison.Ordinal));

    private static bool IsCaution(QuoteBlock quote)
        => quote is [ParagraphBlock { Inline.FirstChild: EmphasisInline { DelimiterCount: 2 } strong }, ..] && PlainText(strong).TrimEnd(':', '.', ' ') == "Caution";

    private void MarkCaution(QuoteBlock quote)
    {
        var words = PlainText(((ParagraphBlock)quote[0]).Inline!).Split(' ', StringSplitOptions.RemoveEmptyEntries);
        var anchor = anchors.Take("caution", string.Join(' ', words.Skip(1).Take(4)));
        var attributes = quote.GetAttributes();
        attributes.Id = anchor;
        attributes.AddClass("ww-caution");
        attributes.AddProperty("role", "note");
        attributes.AddProperty("aria-label", "Caution");
        _cautions.Add(anchor);
    }

    // A long line scrolls in its own box, which the keyboard must reach.
    private static void MarkScrolling(HtmlAttributes box)
    {
        box.AddProperty("role", "group");
        box.AddProperty("tabindex", "0");
        box.AddProperty("aria-label", "Text as it is typed");
    }

    private void Settle(LinkInline link, IReadOnlyDictionary<string, string> pictures)
    {
        const string attachment = "attachment:";
        if (!link.IsImage)
        {
            if (Target(link.Url ?? "") is { } target)
                link.Url = target;
            else
                link.ReplaceBy(new ContainerInline(), copyChildren: true);
            return;
        }

        // Pictures are part of the page or not on it: nothing is fetched.
        var name = link.Url ?? "";
        if (name.StartsWith(attachment, StringComparison.Ordinal) && pictures.TryGetValue(Uri.UnescapeDataString(name[attachment.Length..]), out var picture))
            link.Url = picture;
        else
            link.ReplaceBy(new LiteralInline($"[picture not on this page: {PlainText(link)}]"));
    }

    private string? Target(string url) => url switch
    {
        ['#', ..] => url,
        _ when url.StartsWith("https://", StringComparison.OrdinalIgnoreCase) || url.StartsWith("http://", StringComparison.OrdinalIgnoreCase) => url,
        _ when url.StartsWith("mailto:", StringComparison.OrdinalIgnoreCase) => url,
        _ => place(url),
    };

    private static string PlainText(HeadingBlock heading) => heading.Inline is { } inline ? PlainText(inline) : "";

    private static string PlainText(ContainerInline inline) => string.Concat(inline.Descendants().Select(part => part switch
    {
        LiteralInline literal => literal.Content.ToString(),
        CodeInline code => code.Content,
        LineBreakInline => " ",
        _ => "",
    })).Trim();

    private sealed class AnchoredHeading : HtmlObjectRenderer<HeadingBlock>
    {
        protected override void Write(HtmlRenderer renderer, HeadingBlock heading)
        {
            var tag = FormattableString.Invariant($"h{heading.Level}");
            renderer.Write($"<{tag}").WriteAttributes(heading).Write('>');
            renderer.WriteLeafInline(heading);
            renderer.Write($" <a class=\"anchor\" href=\"#{heading.GetAttributes().Id}\" aria-label=\"Link to this heading\">#</a></{tag}>").WriteLine();
        }
    }

    private sealed class ScrollingTable : HtmlTableRenderer
    {
        protected override void Write(HtmlRenderer renderer, Table table)
        {
            renderer.Write("<div class=\"ww-scroll\" role=\"group\" tabindex=\"0\" aria-label=\"Table\">");
            table.GetAttributes().AddClass("ww-table");
            base.Write(renderer, table);
            renderer.WriteLine("</div>");
        }
    }
}
