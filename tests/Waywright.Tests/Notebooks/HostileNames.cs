using System.Text;

namespace Waywright.Tests.Notebooks;

/// <summary>Names that a data file may hold and that must stay names.</summary>
internal static class HostileNames
{
    public static readonly string[] All =
    [
        "<a href=\"https://example.org\">R04</a>",
        "R<b>4</b> & co. &lt;i&gt;",
        "</script><script>alert(1)</script>",
        "-->]]><!--ww:live-->",
        "%{x} %{customdata[0]}",
        "$\\frac{1}{2}$",
        "\"#000000\"",
        "R\u000004\u001b[31m\u0085\ufffe",
        "\ud83d\udee4 \ud800 rail", // a pair of surrogates, then half of one
    ];

    /// <summary>As a reader of the XML sees it: what XML can't hold is U+FFFD.</summary>
    public static string AsXml(string name) => string.Concat(name.EnumerateRunes().Select(r => r.Value is (< 0x20 or (>= 0x7f and < 0xa0) or 0xfffe) ? Rune.ReplacementChar : r));
}
