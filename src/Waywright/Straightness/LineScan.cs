using System;
using System.Collections.Generic;
using System.Numerics;
using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;

namespace Waywright;

/// <summary>
/// Looks at readings as they are from a straight line through one station: (z - z_a) - slope (x - x_a). Figures come from here rather than from the
/// centred values of the search, so that whole numbers stay whole.
/// </summary>
internal readonly ref struct LineScan(ReadOnlySpan<double> positions, ReadOnlySpan<double> heights, double slope, int anchor)
{
    private readonly ReadOnlySpan<double> _positions = positions;
    private readonly ReadOnlySpan<double> _heights = heights;
    private readonly double _slope = slope;
    private readonly double _position = positions[anchor];
    private readonly double _height = heights[anchor];

    /// <summary>The largest and the smallest height from the line.</summary>
    public void Extremes(out double highest, out double lowest)
    {
        var lastBlock = _positions.Length - Lanes.Block;
        if (lastBlock < 0)
        {
            FewExtremes(out highest, out lowest);
            return;
        }

        ref readonly var x = ref MemoryMarshal.GetReference(_positions);
        ref readonly var z = ref MemoryMarshal.GetReference(_heights);
        var (position, height, slope) = (Vector256.Create(_position), Vector256.Create(_height), Vector256.Create(_slope));
        Vector256<double> high0 = Vector256.Create(double.NegativeInfinity), high1 = high0, high2 = high0, high3 = high0;
        Vector256<double> low0 = Vector256.Create(double.PositiveInfinity), low1 = low0, low2 = low0, low3 = low0;
        for (var next = 0; next < _positions.Length; next += Lanes.Block)
        {
            // The last block begins early enough to be whole: looking at a station twice moves no extreme.
            var at = Math.Min(next, lastBlock);
            var from0 = (Lanes.At(in z, at, 0) - height) - (slope * (Lanes.At(in x, at, 0) - position));
            var from1 = (Lanes.At(in z, at, 1) - height) - (slope * (Lanes.At(in x, at, 1) - position));
            var from2 = (Lanes.At(in z, at, 2) - height) - (slope * (Lanes.At(in x, at, 2) - position));
            var from3 = (Lanes.At(in z, at, 3) - height) - (slope * (Lanes.At(in x, at, 3) - position));
            high0 = Vector256.MaxNative(high0, from0);
            high1 = Vector256.MaxNative(high1, from1);
            high2 = Vector256.MaxNative(high2, from2);
            high3 = Vector256.MaxNative(high3, from3);
            low0 = Vector256.MinNative(low0, from0);
            low1 = Vector256.MinNative(low1, from1);
            low2 = Vector256.MinNative(low2, from2);
            low3 = Vector256.MinNative(low3, from3);
        }

        highest = Lanes.Highest(high0, high1, high2, high3);
        lowest = Lanes.Lowest(low0, low1, low2, low3);
    }

    private void FewExtremes(out double highest, out double lowest)
    {
        highest = lowest = From(0);
        for (var station = 1; station < _positions.Length; station++)
        {
            highest = Math.Max(highest, From(station));
            lowest = Math.Min(lowest, From(station));
        }
    }

    /// <summary>The stations that reach up to one height or down to another.</summary>
    public FixedList<ZoneContact> Contacts(double upper, double lower)
    {
        var contacts = new List<ZoneContact>(4);
        var lastBlock = _positions.Length - Lanes.Block;
        for (var station = 0; lastBlock < 0 && station < _positions.Length; station++)
            Add(contacts, station, upper, lower);
        for (var next = 0; lastBlock >= 0 && next < _positions.Length; next += Lanes.Block)
        {
            // The last block begins early enough to be whole; what was seen before is masked out.
            var at = Math.Min(next, lastBlock);
            for (var hits = Hits(at, upper, lower) & (uint.MaxValue << (next - at)); hits != 0; hits &= hits - 1)
                Add(contacts, at + BitOperations.TrailingZeroCount(hits), upper, lower);
        }

        return FixedList<ZoneContact>.Copy(contacts);
    }

    /// <summary>One bit for each station of a block that reaches either height.</summary>
    private uint Hits(int at, double upper, double lower)
    {
        ref readonly var x = ref MemoryMarshal.GetReference(_positions);
        ref readonly var z = ref MemoryMarshal.GetReference(_heights);
        var (position, height, slope) = (Vector256.Create(_position), Vector256.Create(_height), Vector256.Create(_slope));
        var (uppers, lowers) = (Vector256.Create(upper), Vector256.Create(lower));
        uint hits = 0;
        for (var vector = Lanes.Vectors - 1; vector >= 0; vector--)
        {
            var from = (Lanes.At(in z, at, vector) - height) - (slope * (Lanes.At(in x, at, vector) - position));
            hits = (hits << Vector256<double>.Count) | (Vector256.GreaterThanOrEqual(from, uppers) | Vector256.LessThanOrEqual(from, lowers)).ExtractMostSignificantBits();
        }

        return hits;
    }

    private void Add(List<ZoneContact> contacts, int station, double upper, double lower)
    {
        var from = From(station);
        if (from >= upper)
            contacts.Add(new ZoneContact(station, _positions[station], ZoneSide.Upper));
        if (from <= lower)
            contacts.Add(new ZoneContact(station, _positions[station], ZoneSide.Lower));
    }

    private double From(int station) => (_heights[station] - _height) - (_slope * (_positions[station] - _position));
}
