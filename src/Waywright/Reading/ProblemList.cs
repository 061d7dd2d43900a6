using System;
using System.Collections.Generic;
using System.Globalization;

namespace Waywright;

/// <summary>Collects what is wrong with one source; a flood is cut with a count.</summary>
internal sealed class ProblemList(string source)
{
    private const int Most = 50;

    private readonly List<InputProblem> _problems = [];
    private int _all;

    public string Source { get; } = source;

    public bool Any => _all > 0;

    public void Add(int? line, int? column, string found, string expected)
    {
        if (++_all <= Most)
            _problems.Add(new InputProblem(Source, line, column, found, expected));
    }

    public void Add(InputProblem problem) => Add(problem.Line, problem.Column, problem.Found, problem.Expected);

    public void ThrowIfAny()
    {
        if (_all == 0)
            return;
        if (_all > Most)
            _problems.Add(new InputProblem(Source, null, null, string.Create(CultureInfo.InvariantCulture, $"{_all - Most} more problems"), "none: correct the ones above first"));
        throw new InputException(_problems);
    }

    /// <summary>Text from a file as a message shows it: in quotes, cut, control characters made visible.</summary>
    public static string Shown(ReadOnlySpan<char> text)
    {
        const int longest = 40;
        var cut = text.Length > longest;
        Span<char> shown = stackalloc char[longest];
        var length = Math.Min(text.Length, longest);
        for (var i = 0; i < length; i++)
            shown[i] = char.IsControl(text[i]) || char.GetUnicodeCategory(text[i]) is UnicodeCategory.Format or UnicodeCategory.LineSeparator or UnicodeCategory.ParagraphSeparator ? '\uFFFD' : text[i];
        return length == 0 ? "nothing" : $"'{shown[..length]}{(cut ? "..." : "")}'";
    }
}
