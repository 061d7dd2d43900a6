using System.Reflection;
using System.Text.RegularExpressions;

namespace Waywright.Kernel;

/// <summary>
/// The packages that a cell has without asking: a notebook's first line names one of them for hosts that have to fetch it.
/// Here the line is blanked, so that nothing is restored, and its version compared.
/// </summary>
internal static partial class CarriedPackages
{
    /// <summary>Assemblies that every cell may use.</summary>
    public static IReadOnlyList<string> Assemblies { get; } =
        ["Waywright", "Waywright.Placement", "Waywright.Notebooks", "Plotly.NET", "Plotly.NET.CSharp", "Deedle", "MathNet.Numerics", "UnitsNet", "FSharp.Core", "DynamicObj"];

    /// <summary>The version of Waywright that is carried, without the commit.</summary>
    public static string Version { get; } = typeof(CarriedPackages).Assembly
        .GetCustomAttribute<AssemblyInformationalVersionAttribute>()!.InformationalVersion.Split('+')[0];

    /// <summary>Blanks the <c>#r</c> lines of carried packages; every other line keeps its number.</summary>
    /// <param name="code">Source of a cell.</param>
    /// <param name="mismatch">One sentence when a line asks for another version; else null.</param>
    public static string Blank(string code, out string? mismatch)
    {
        string? found = null;
        var blanked = Directive().Replace(code, line =>
        {
            var asked = line.Groups["version"].Value.Trim();
            if (asked is not ("" or "*" or "*-*") && !string.Equals(asked, Version, StringComparison.OrdinalIgnoreCase))
                found ??= $"This notebook asks for {line.Groups["package"].Value} {asked}, but this waywright carries {Version}: use waywright {asked}, or write {Version} in the notebook's '#r' line.";
            return "";
        });
        mismatch = found;
        return blanked;
    }

    // From the cell's start over lines that may stand before code: a line inside a text further down is left alone.
    [GeneratedRegex("""(?<=\A(?:[ \t]*(?:#.*|//.*|using\b.*)?\r?\n)*)[ \t]*#r[ \t]+"nuget:[ \t]*(?<package>Waywright(?:\.Notebooks|\.Placement)?)[ \t]*(?:,(?<version>[^"\r\n]*))?"[ \t]*(?=\r?$)""", RegexOptions.IgnoreCase | RegexOptions.Multiline)]
    private static partial Regex Directive();
}
