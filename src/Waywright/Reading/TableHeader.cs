using System;
using System.Collections.Generic;
using System.Linq;

namespace Waywright;

/// <summary>The header line of a table: what separates fields, and the columns' names.</summary>
/// <param name="Delimiter">Comma, semicolon or tab.</param>
/// <param name="Columns">Without quotes and outer blanks; none is empty, none stands twice.</param>
internal sealed record TableHeader(char Delimiter, IReadOnlyList<string> Columns)
{
    public const string Delimiters = ",;\t";

    /// <exception cref="InputException">More than one separator, a column without a name, a column twice.</exception>
    public static TableHeader Read(string header, int line, ProblemList problems)
    {
        var delimiter = DelimiterOf(header, line, problems);
        var columns = header.Split(delimiter).Select(name => Unquote(name.Trim()).Trim()).ToArray();
        var seen = new HashSet<string>(StringComparer.OrdinalIgnoreCase);
        foreach (var column in columns)
        {
            if (column.Length == 0)
                problems.Add(line, null, "a column without a name", "a name for each column");
            else if (!seen.Add(column))
                problems.Add(line, null, $"the column {ProblemList.Shown(column)} twice", "each column once");
        }

        problems.ThrowIfAny();
        return new TableHeader(delimiter, columns);
    }

    /// <summary>Whether a line is blank or a comment; a spreadsheet writes a blank row as separators alone.</summary>
    public static bool HoldsNothing(ReadOnlySpan<char> line)
    {
        line = line.TrimStart();
        return line.IsEmpty || line[0] == '#' || line.IndexOfAnyExcept(",;\t \r") < 0;
    }

    /// <summary>As <see cref="HoldsNothing"/>, above the header: no column is called '#', so there a spreadsheet has put a comment in quotes.</summary>
    public static bool StandsAbove(ReadOnlySpan<char> line) => HoldsNothing(line) || line.TrimStart(" \t\"") is ['#', ..];

    public static string NameOf(char delimiter) => delimiter switch
    {
        ',' => "comma",
        ';' => "semicolon",
        _ => "tab",
    };

    public static string Unquote(ReadOnlySpan<char> field)
        => field.Length >= 2 && field[0] == '"' && field[^1] == '"' ? field[1..^1].ToString().Replace("\"\"", "\"", StringComparison.Ordinal) : field.ToString();

    private static char DelimiterOf(string header, int line, ProblemList problems)
    {
        var met = Delimiters.Where(d => header.Contains(d, StringComparison.Ordinal)).ToArray();
        if (met.Length > 1)
        {
            problems.Add(line, header.IndexOf(met[1], StringComparison.Ordinal) + 1, $"fields separated by {string.Join(" and by ", met.Select(NameOf))}", "one separator: comma, semicolon or tab");
            problems.ThrowIfAny();
        }

        return met.Length == 1 ? met[0] : ',';
    }
}
