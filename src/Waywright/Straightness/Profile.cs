using System;
using System.Collections.Generic;
using System.Globalization;
using System.Linq;

namespace Waywright;

/// <summary>
/// Heights of one line of a surface over positions along it: what is left of a sweep once passes are aligned and pooled. Stations are in order of
/// position; a station may be there more than once, its readings in order of height. Two profiles with the same name, positions and heights are equal.
/// </summary>
/// <remarks>A profile has no uncertainty of its own: <c>PooledSweep</c> carries what is known about the readings behind it.</remarks>
public sealed record Profile
{
    private const double Largest = 1e12;
    private const double ShortestMm = 1e-9;

    private readonly FixedList<double> _positions;
    private readonly FixedList<double> _heights;

    /// <summary>Copies the stations and puts them in order of position.</summary>
    /// <param name="positionsMm">Along the line, mm, -1e12 to 1e12, at least two that differ by 1e-9 mm or more.</param>
    /// <param name="heightsUm">One reading for each position, um, -1e12 to 1e12.</param>
    /// <param name="name">What it is a profile of; may be empty.</param>
    /// <exception cref="ArgumentException">The lists differ in length, a value is not finite or out of range, or fewer than two positions differ.</exception>
    public Profile(IReadOnlyList<double> positionsMm, IReadOnlyList<double> heightsUm, string name = "")
    {
        ArgumentNullException.ThrowIfNull(positionsMm);
        ArgumentNullException.ThrowIfNull(heightsUm);
        ArgumentNullException.ThrowIfNull(name);
        if (positionsMm.Count != heightsUm.Count)
            throw new ArgumentException(string.Create(CultureInfo.InvariantCulture, $"{positionsMm.Count} positions and {heightsUm.Count} heights: each station needs both."), nameof(heightsUm));
        var stations = new (double Position, double Height)[positionsMm.Count];
        for (var i = 0; i < stations.Length; i++)
            stations[i] = (Checked(positionsMm[i], i, nameof(positionsMm)), Checked(heightsUm[i], i, nameof(heightsUm)));
        Array.Sort(stations);
        if (stations.Length < 2 || stations[^1].Position - stations[0].Position < ShortestMm)
            throw new ArgumentException("A profile needs at least two stations at different positions.", nameof(positionsMm));
        _positions = FixedList<double>.Own(Array.ConvertAll(stations, s => s.Position));
        _heights = FixedList<double>.Own(Array.ConvertAll(stations, s => s.Height));
        Name = name;
        LargestHeight = Math.Max(Math.Abs(_heights.Min()), Math.Abs(_heights.Max()));
        HasRepeatedStation = _positions.Distinct().Count() < Count;
    }

    /// <summary>Positions, mm, in rising order.</summary>
    public IReadOnlyList<double> PositionsMm => _positions;

    /// <summary>Heights, um, one for each position.</summary>
    public IReadOnlyList<double> HeightsUm => _heights;

    /// <summary>How many stations.</summary>
    public int Count => _positions.Count;

    /// <summary>What it is a profile of; may be empty.</summary>
    public string Name { get; }

    /// <summary>Whether the heights are what a filter left of them: such a profile shows shapes, and is never graded.</summary>
    public bool IsFiltered => CutoffMm is not null;

    /// <summary>Cut-off of the filter, mm, see <see cref="ProfileFilter"/>; null where the heights are as they were measured.</summary>
    public double? CutoffMm { get; internal init; }

    /// <summary>Largest reading without its sign.</summary>
    internal double LargestHeight { get; }

    /// <summary>Whether some position is there twice.</summary>
    internal bool HasRepeatedStation { get; }

    internal ReadOnlySpan<double> Positions => _positions.AsSpan();

    internal ReadOnlySpan<double> Heights => _heights.AsSpan();

    /// <summary>
    /// The same surface looked at from the other end: x becomes (first + last - x), heights keep their sign. This is a top face turned end for end;
    /// a side face turned end for end also changes sign, which is for whoever knows the face to do.
    /// </summary>
    public Profile Reversed()
    {
        var ends = _positions[0] + _positions[Count - 1];
        return new Profile(Array.ConvertAll(Positions.ToArray(), x => ends - x), _heights, Name) { CutoffMm = CutoffMm };
    }

    /// <summary>Local straightness: the widest minimum zone of any stretch no longer than the window.</summary>
    /// <param name="windowMm">Length of the sliding window, mm, above zero. It holds its end stations.</param>
    /// <returns>Null where no window holds four stations at different positions.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The window is not a length above zero.</exception>
    public LocalStraightness? Local(double windowMm) => LocalStraightness.Of(this, windowMm);

    // Adding zero makes -0 a plain 0, so that equal profiles print alike.
    private static double Checked(double value, int index, string parameter)
        => Math.Abs(value) <= Largest
            ? value + 0.0
            : throw new ArgumentException(string.Create(CultureInfo.InvariantCulture, $"Value {value} at index {index} is not a finite number between -1e12 and 1e12."), parameter);
}
