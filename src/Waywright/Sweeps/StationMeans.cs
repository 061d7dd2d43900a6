using System;
using System.Collections.Generic;
using System.Linq;

namespace Waywright;

/// <summary>Which readings stand behind each station of a combined profile.</summary>
internal sealed class StationMeans
{
    private readonly int[][] _stations;

    public StationMeans(PooledSweep pooled)
    {
        var passes = pooled.Sweep.Passes;
        var positions = pooled.Profile.Positions.ToArray();
        _stations = pooled.Sweep.Rail is null
            ? [BareOrder(passes[0])]
            : [.. passes.Select(p => p.PositionsMm.Select(x => Array.BinarySearch(positions, x)).ToArray())];
        Counts = new int[positions.Length];
        var lays = new HashSet<string>[positions.Length];
        for (var k = 0; k < passes.Count; k++)
        {
            foreach (var station in _stations[k])
            {
                Counts[station]++;
                (lays[station] ??= []).Add(passes[k].Lay);
            }
        }

        Lays = Array.ConvertAll(lays, l => l.Count);
    }

    /// <summary>Readings at each station.</summary>
    public int[] Counts { get; }

    /// <summary>Lays that these readings belong to.</summary>
    public int[] Lays { get; }

    /// <summary>Stations of a pass's readings, in its order.</summary>
    public ReadOnlySpan<int> StationsOf(int pass) => _stations[pass];

    /// <summary>The mean at each station of what a pass has at its readings.</summary>
    /// <param name="ofPass">One value for each reading of the pass.</param>
    public double[] Of(Func<int, IReadOnlyList<double>> ofPass)
    {
        var means = new double[Counts.Length];
        for (var k = 0; k < _stations.Length; k++)
        {
            var values = ofPass(k);
            for (var i = 0; i < values.Count; i++)
                means[_stations[k][i]] += values[i] / Counts[_stations[k][i]];
        }

        return means;
    }

    /// <summary>What each reading differs from its station's combined height by, um, pass after pass.</summary>
    public double[] Residuals(PooledSweep pooled)
        => [.. pooled.Passes.SelectMany((pass, k) => pass.HeightsUm.Select((z, i) => z - pooled.Profile.HeightsUm[_stations[k][i]]))];

    // A bare profile keeps each reading as a station, in order of position and height.
    private static int[] BareOrder(SweepPass pass)
    {
        var order = Enumerable.Range(0, pass.PositionsMm.Count).OrderBy(i => pass.PositionsMm[i]).ThenBy(i => pass.ReadingsUm[i]).ToArray();
        var stations = new int[order.Length];
        for (var place = 0; place < order.Length; place++)
            stations[order[place]] = place;
        return stations;
    }
}
