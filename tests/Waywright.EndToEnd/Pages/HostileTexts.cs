namespace Waywright.EndToEnd.Pages;

/// <summary>Texts that try to be something else than text, each in its own way.</summary>
internal static class HostileTexts
{
    /// <summary>What a name in a data file may be: one line of signs that are seen.</summary>
    public static readonly string[] Names =
    [
        "<img src=x onerror=alert(1)>",
        "</script><script>alert(2)</script>",
        "<a href=\"javascript:alert(3)\">rail</a>",
        "<a href='https://example.invalid/'>rail</a>",
        "\"><svg onload=alert(4)>",
        "<!--ww:live--><b>bold</b>",
        "[rail](javascript:alert(5))",
        "R&amp;D &lt;i&gt;",
        "x\" onmouseover=\"alert(7)\" y='",
        "<!-- ]]> --> <?php ?>",
        "{{constructor.constructor('alert(8)')()}}",
        "$\\frac{1}{2}$ \\(x\\) %{x}",
        "![x](https://example.invalid/a.png)",
        "<https://example.invalid/b> <javascript:alert(9)>",
        "../../../etc/passwd",
        "=HYPERLINK(\"https://example.invalid\")",
        "+1+cmd|' /C calc'!A0",
        "-2+3",
        "@SUM(1+1)",
        "\U0001F6E4\uFE0F rail \U0001F468\U0001F3FD\U0001F527",
        "WWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWW",
    ];

    /// <summary>What may come from a cell besides: controls of terminals and of the direction of writing, NUL, half a pair, a word longer than a page.</summary>
    public static readonly string[] Wild =
    [
        "R\u001b[31mred\u001b[0m \u001b]0;title\u0007 \u009b2J",
        "NUL \0 BS \b DEL \u007f NEL \u0085",
        "bidi \u202egnp.exe\u202c \u2066x\u2069 \u200f",
        "zero\u200bwidth\u200djoined\ufeff",
        "half \ud800 pair",
        "\t=1+1",
        "\r\n=2+2",
        "line \u2028 paragraph \u2029",
        new string('W', 5000),
    ];

    public static IEnumerable<string> All => Names.Concat(Wild);

    /// <summary>Controls but line feed and tab, and the explicit bidirectional controls (Unicode Standard Annex 9): never raw on a page or a terminal.</summary>
    public static bool IsHidden(char c) => c is (< ' ' and not '\n' and not '\t') or (>= '\x7f' and <= '\x9f') or (>= '\u202a' and <= '\u202e') or (>= '\u2066' and <= '\u2069');
}
