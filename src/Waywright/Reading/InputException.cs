using System;
using System.Collections.Generic;
using System.Globalization;
using System.Linq;
using System.Text;

namespace Waywright;

/// <summary>One thing that is wrong with an input, and where.</summary>
/// <param name="Source">The file as the caller named it, or what the text was given as (<c>--span</c>).</param>
/// <param name="Line">Line in the file, from 1; null when it is about the whole.</param>
/// <param name="Column">Character in the line, from 1; null when it is about the whole line.</param>
/// <param name="Found">What stands there.</param>
/// <param name="Expected">What should stand there.</param>
public sealed record InputProblem(string Source, int? Line, int? Column, string Found, string Expected)
{
    /// <summary><c>sweeps.csv:4:17: found 'abc', expected a number such as 12.5</c>.</summary>
    public override string ToString()
    {
        var text = new StringBuilder(Source);
        if (Line is { } line)
            text.Append(CultureInfo.InvariantCulture, $":{line}");
        if (Line is not null && Column is { } column)
            text.Append(CultureInfo.InvariantCulture, $":{column}");
        return text.Append(": found ").Append(Found).Append(", expected ").Append(Expected).ToString();
    }
}

/// <summary>
/// An input that can't be used: a file, a quantity, an option. It lists everything that is wrong, so that one round of corrections is enough.
/// Thrown for what a person wrote; a caller's programming error is an <see cref="ArgumentException"/>.
/// </summary>
public sealed class InputException : Exception
{
    /// <summary>For a list of at least one problem.</summary>
    /// <exception cref="ArgumentException">The list is empty.</exception>
    public InputException(IEnumerable<InputProblem> problems)
        : this(Listed(problems))
    {
    }

    /// <summary>For one problem.</summary>
    public InputException(InputProblem problem)
        : this([problem])
    {
    }

    private InputException(FixedList<InputProblem> problems)
        : base(string.Join('\n', problems.Select(p => p.ToString())))
        => Problems = problems;

    /// <summary>What is wrong, in the order of the file.</summary>
    public IReadOnlyList<InputProblem> Problems { get; }

    private static FixedList<InputProblem> Listed(IEnumerable<InputProblem> problems)
    {
        var list = FixedList<InputProblem>.Copy(problems);
        return list.Count > 0 ? list : throw new ArgumentException("An InputException needs at least one problem.", nameof(problems));
    }
}
