using System;
using System.Collections.Generic;
using System.Globalization;
using System.Linq;

namespace Waywright;

/// <summary>
/// Which holes of a rail get a screw. Holes are numbered from 1 at the end with the dot; positions count from that end. Start with <c>Every</c> and take
/// fewer from there: <c>ScrewPattern.Every(350, 20, 5).EveryOther()</c>.
/// </summary>
/// <remarks>A pattern says where the screws are, nothing of the load that they carry: the rail's and the frame's makers say how many that takes.</remarks>
public sealed record ScrewPattern
{
    private readonly FixedList<double> _positions;
    private readonly FixedList<int> _holes;

    private ScrewPattern(double lengthMm, FixedList<double> positions, FixedList<int> holes, string name)
        => (LengthMm, _positions, _holes, Name) = (lengthMm, positions, holes, name);

    /// <summary>Length of the rail, mm.</summary>
    public double LengthMm { get; }

    /// <summary>Middles of all holes of the rail, mm from the dot, rising.</summary>
    public IReadOnlyList<double> HolesMm => _positions;

    /// <summary>Numbers of the holes that get a screw, rising.</summary>
    public IReadOnlyList<int> Holes => _holes;

    /// <summary>What the pattern is called: <c>every other hole</c>.</summary>
    public string Name { get; }

    /// <summary>Middles of the holes that get a screw, mm from the dot, rising.</summary>
    public IReadOnlyList<double> ScrewsMm => FixedList<double>.Copy(_holes.Select(h => _positions[h - 1]));

    /// <summary>Numbers of the holes that are left over: those outside the end screws, and those of a gap that is wider than the narrowest.</summary>
    public IReadOnlyList<int> LeftOver
    {
        get
        {
            var narrowest = _holes.Zip(_holes.Skip(1), (a, b) => b - a).Min();
            var left = Enumerable.Range(1, _holes[0] - 1);
            for (var i = 1; i < _holes.Count; i++)
            {
                if (_holes[i] - _holes[i - 1] > narrowest)
                    left = left.Concat(Enumerable.Range(_holes[i - 1] + 1, _holes[i] - _holes[i - 1] - 1));
            }

            return FixedList<int>.Copy(left.Concat(Enumerable.Range(_holes[^1] + 1, _positions.Count - _holes[^1])));
        }
    }

    /// <summary>From the end with the dot to the first screw, mm: that much stands free.</summary>
    public double DotEndFreeMm => _positions[_holes[0] - 1];

    /// <summary>From the last screw to the far end, mm: that much stands free.</summary>
    public double FarEndFreeMm => LengthMm - _positions[_holes[^1] - 1];

    /// <summary>The widest distance from screw to screw, mm.</summary>
    public double WidestGapMm => _holes.Zip(_holes.Skip(1), (a, b) => _positions[b - 1] - _positions[a - 1]).Max();

    /// <summary>
    /// The order to tighten in, one list of hole numbers for each round: from the middle outwards, from side to side, so that the rail can stretch out
    /// towards its ends. First round: until the heads sit. Second: to the full torque. Common practice, no source.
    /// </summary>
    public IReadOnlyList<IReadOnlyList<int>> TighteningRounds
    {
        get
        {
            var order = FixedList<int>.Own(TighteningOrder.Of(_holes.AsSpan(), _positions.AsSpan()));
            return FixedList<IReadOnlyList<int>>.Own([order, order]);
        }
    }

    /// <summary>
    /// A screw in every hole of a rail whose ends are alike: n = floor((L - 2 e) / p) + 1 holes, the first one (L - (n - 1) p) / 2 from the end. So 350 mm
    /// at a pitch of 20 mm have 18 holes (common practice, no source).
    /// </summary>
    /// <param name="lengthMm">Length L, mm, 1 to 1e5.</param>
    /// <param name="pitchMm">From hole to hole p, mm, above 0.</param>
    /// <param name="leastEndDistanceMm">The least that a hole's middle is from an end e, mm, above 0.</param>
    /// <exception cref="ArgumentException">A size is out of its range, or fewer than two holes fit; all that is wrong is listed.</exception>
    public static ScrewPattern Every(double lengthMm, double pitchMm, double leastEndDistanceMm)
    {
        var positions = HoleRow.Fill(lengthMm, pitchMm, leastEndDistanceMm);
        return new ScrewPattern(lengthMm, positions, All(positions.Count), "every hole");
    }

    /// <summary>A screw in every hole of a rail of the list.</summary>
    /// <param name="rail">A rail, its holes counted from its own end distance.</param>
    /// <exception cref="ArgumentException">It has fewer than two holes.</exception>
    public static ScrewPattern Every(RailStock.Rail rail)
    {
        ArgumentNullException.ThrowIfNull(rail);
        var positions = HoleRow.Of(rail);
        return new ScrewPattern(rail.LengthMm, positions, All(positions.Count), "every hole");
    }

    /// <summary>Every other hole from the dot on: 1, 3, 5... With an even number of holes the last one is left over, and the far end stands free.</summary>
    /// <exception cref="ArgumentException">The rail has two holes only.</exception>
    public ScrewPattern EveryOther() => Chosen(HoleRow.EveryOther(_positions.Count), "every other hole");

    /// <summary>Every other hole from the far end on. With an even number of holes hole 1 is left over, and the end with the dot stands free.</summary>
    /// <exception cref="ArgumentException">The rail has two holes only.</exception>
    public ScrewPattern EveryOtherFromFarEnd() => Chosen(HoleRow.EveryOther(_positions.Count).Select(h => _positions.Count + 1 - h), "every other hole from the far end");

    /// <summary>
    /// Every other hole from both ends inwards, so both ends are held. With an even number of holes the spare is at the centre: one gap there is three
    /// pitches wide.
    /// </summary>
    /// <exception cref="ArgumentException">The rail has two holes only.</exception>
    public ScrewPattern EveryOtherFromBothEnds() => Chosen(HoleRow.FromBothEnds(_positions.Count), "every other hole from both ends");

    /// <summary>So many screws, as even as the holes allow, one in each end hole: hole 1 + (n - 1) i / (count - 1), rounded towards the dot where it falls half-way.</summary>
    /// <param name="count">2 to the number of holes.</param>
    /// <exception cref="ArgumentException">There are not so many holes, or fewer than two screws are asked for.</exception>
    public ScrewPattern OfCount(int count)
        => count >= 2 && count <= _positions.Count
            ? Chosen(HoleRow.Even(_positions.Count, count), Plain($"{count} screws, spread evenly"))
            : throw new ArgumentException(Plain($"{count} screws: from 2 to {_positions.Count} fit this rail."), nameof(count));

    /// <summary>Screws in the holes named.</summary>
    /// <param name="holes">Numbers from 1, at least two, each once, in any order.</param>
    /// <exception cref="ArgumentException">A hole isn't there or is named twice, or there are fewer than two; all that is wrong is listed.</exception>
    public ScrewPattern InHoles(params IReadOnlyList<int> holes)
    {
        ArgumentNullException.ThrowIfNull(holes);
        return Chosen(holes, "chosen holes");
    }

    /// <summary>The rail turned end for end with its screws.</summary>
    public ScrewPattern Reversed()
        => new(LengthMm, FixedList<double>.Copy(_positions.Reverse().Select(x => LengthMm - x)), FixedList<int>.Copy(_holes.Reverse().Select(h => _positions.Count + 1 - h)), Name);

    /// <summary>Screws that are known to be among the holes.</summary>
    internal ScrewPattern Chosen(IEnumerable<int> holes, string name)
    {
        var chosen = HoleRow.Checked(holes, _positions.Count);
        return new ScrewPattern(LengthMm, _positions, chosen, chosen.Count == _positions.Count ? "every hole" : name);
    }

    private static FixedList<int> All(int count) => FixedList<int>.Copy(Enumerable.Range(1, count));

    private static string Plain(FormattableString sentence) => sentence.ToString(CultureInfo.InvariantCulture);
}
