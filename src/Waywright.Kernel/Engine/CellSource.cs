using System.Text.RegularExpressions;

namespace Waywright.Kernel;

/// <summary>
/// A cell's source in two submissions: package directives, then the code with those lines blanked.
/// The engine would do the split itself, but number the lines of an error from the first line after the directives.
/// </summary>
/// <param name="Directives">The <c>#r "nuget:..."</c> and <c>#i "nuget:..."</c> lines; empty if none.</param>
/// <param name="Code">The rest, every line with its own number.</param>
internal sealed partial record CellSource(string Directives, string Code)
{
    public static CellSource Of(string code)
    {
        var directives = new List<string>();
        var rest = Directive().Replace(code, line =>
        {
            directives.Add(line.Value.Trim());
            return "";
        });
        return new CellSource(string.Join("\n", directives), rest);
    }

    [GeneratedRegex("""^[ \t]*#[ri][ \t]+"nuget:[^\r\n]*""", RegexOptions.IgnoreCase | RegexOptions.Multiline)]
    private static partial Regex Directive();
}
