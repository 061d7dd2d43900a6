using System.Globalization;
using System.Text;

namespace Waywright.Publishing;

/// <summary>Gives each place of the page a name of its own, made of its text and equal from run to run.</summary>
internal sealed class Anchors
{
    private readonly HashSet<string> _taken = new(StringComparer.Ordinal);

    public string Take(string prefix, string text)
    {
        var wanted = Slug(prefix.Length == 0 ? text : $"{prefix} {text}");
        var name = wanted;
        for (var i = 2; !_taken.Add(name); i++)
            name = string.Create(CultureInfo.InvariantCulture, $"{wanted}-{i}");
        return name;
    }

    private static string Slug(string text)
    {
        var slug = new StringBuilder();
        foreach (var c in text.Normalize(NormalizationForm.FormC))
        {
            if (char.IsLetterOrDigit(c))
                slug.Append(char.ToLowerInvariant(c));
            else if (slug.Length > 0 && slug[^1] != '-')
                slug.Append('-');
        }

        return slug.ToString().Trim('-') is { Length: > 0 } name ? name : "part";
    }
}
