using System.Text;
using static Waywright.Notebooks.SvgText;

namespace Waywright.Notebooks;

/// <summary>Collects paths by their style, so that all marks of one look become one element, and words, which lie on top.</summary>
internal sealed class SvgPen
{
    private readonly List<(string Style, StringBuilder Path)> _paths = [];
    private readonly StringBuilder _words = new();

    /// <summary>A role's colour; ink is the page's own.</summary>
    public static string Paint(Role role) => role.Colour() is Roles.InkColour ? "currentColor" : role.Colour();

    public void Stroke(string path, Role role, double width, Dash dash = Dash.Solid)
        => Add(path, $"fill=\"none\" stroke=\"{Paint(role)}\" stroke-width=\"{Px(width)}\"{Faded("stroke", role.Opacity())}{(dash == Dash.Solid ? "" : $" stroke-dasharray=\"{dash.Lengths()}\"")}");

    public void Fill(string path, Role role, double opacity)
        => Add(path, $"fill=\"{Paint(role)}\"{Faded("fill", opacity)}");

    /// <summary>A shape of a role's colour with an outline of ink.</summary>
    public void Outlined(string path, Role role) => Add(path, $"fill=\"{Paint(role)}\" stroke=\"currentColor\"");

    /// <summary>A dot: a stroke of no length with round ends.</summary>
    public void Dot(double x, double y, Role role, double diameter)
        => Add($"M{Px(x)} {Px(y)}h0", $"stroke-linecap=\"round\" stroke-width=\"{Px(diameter)}\" stroke=\"{Paint(role)}\"{Faded("stroke", role.Opacity())}");

    /// <summary>Lines that only guide the eye.</summary>
    public void Guide(string path) => Add(path, $"stroke=\"{Role.Context.Colour()}\" stroke-opacity=\".25\"");

    public void Words(double x, double y, string words, string anchor = "", double size = PictureLayout.FontSize)
    {
        _words.Append("<text x=\"").Append(Px(x)).Append("\" y=\"").Append(Px(y)).Append('"');
        if (anchor.Length > 0)
            _words.Append(" text-anchor=\"").Append(anchor).Append('"');
        if (size != PictureLayout.FontSize)
            _words.Append(" font-size=\"").Append(Px(size)).Append('"');
        _words.Append('>').Append(Encode(words)).Append("</text>");
    }

    /// <summary>Markup that stands among the words as it is.</summary>
    public void Markup(string markup) => _words.Append(markup);

    public override string ToString()
    {
        var all = new StringBuilder();
        foreach (var (style, path) in _paths)
            all.Append("<path d=\"").Append(path).Append("\" ").Append(style).Append("/>");
        return all.Append(_words).ToString();
    }

    private void Add(string path, string style)
    {
        if (path.Length == 0)
            return;
        var at = _paths.FindIndex(p => p.Style == style);
        if (at < 0)
        {
            at = _paths.Count;
            _paths.Add((style, new StringBuilder()));
        }

        _paths[at].Path.Append(path);
    }

    private static string Faded(string what, double opacity) => opacity < 1 ? $" {what}-opacity=\"{Share(opacity)}\"" : "";
}
