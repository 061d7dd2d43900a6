using System;
using System.Collections.Generic;
using System.Linq;

namespace Waywright;

/// <summary>
/// The belts of a <c>spans.csv</c>: columns <c>belt,reel,fixture,span,density,frequency</c>, the last three as quantity texts
/// (<c>180 +/- 0.5 mm</c>, <c>8.1 g/m</c>, <c>96 Hz</c>), one row for each pluck.
/// </summary>
/// <remarks>
/// Rows of one belt are plucks of it: the note is their mean, with u the larger of their scatter and what is stated (said in <c>TakenAs</c>).
/// Belts of one reel have one density and belts in one fixture one span: the same text, and one input, which cancels when belts are compared.
/// An empty reel or fixture is shared with nobody. Other columns are not used, and <see cref="ReadAs"/> names them.
/// </remarks>
public sealed record BeltLog
{
    internal BeltLog(string source, string readAs, IEnumerable<LoggedBelt> belts)
    {
        Source = source;
        ReadAs = readAs;
        Belts = FixedList<LoggedBelt>.Copy(belts);
    }

    /// <summary>The file as the caller named it.</summary>
    public string Source { get; }

    /// <summary>How the file was taken: separator, decimal mark, rows, unused columns.</summary>
    public string ReadAs { get; }

    /// <summary>The belts, in the order in which the file first names them.</summary>
    public IReadOnlyList<LoggedBelt> Belts { get; }

    /// <summary>A belt by its name; capitals matter.</summary>
    /// <exception cref="ArgumentException">No belt of this name.</exception>
    public LoggedBelt this[string belt] => Belts.FirstOrDefault(b => b.Belt == belt)
        ?? throw new ArgumentException($"No belt '{belt}' in {Source}: it has {string.Join(", ", Belts.Select(b => b.Belt))}.", nameof(belt));

    /// <summary>Reads a file.</summary>
    /// <exception cref="InputException">No such file, a column or quantity missing or wrong, a reel or fixture with two texts, plucks of one belt more than a factor 1.5 apart.</exception>
    public static BeltLog Read(string path)
    {
        ArgumentException.ThrowIfNullOrWhiteSpace(path);
        using var table = TableReader.Open(path);
        return new BeltLogReader(table).Read(path);
    }

    /// <summary>Reads a text as if it were the file <paramref name="source"/>.</summary>
    /// <exception cref="InputException">As for <see cref="Read"/>.</exception>
    public static BeltLog Parse(string text, string source)
    {
        ArgumentNullException.ThrowIfNull(text);
        ArgumentException.ThrowIfNullOrWhiteSpace(source);
        using var table = TableReader.Parse(text, source);
        return new BeltLogReader(table).Read(source);
    }
}
