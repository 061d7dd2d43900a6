using System;
using System.Collections.Generic;
using System.Linq;
using MathNet.Numerics.LinearAlgebra;
using MathNet.Numerics.LinearAlgebra.Factorization;

namespace Waywright;

/// <summary>
/// Least squares of <c>z_ik = s_i + a_k + b_k x_i + e_ik</c>. The station heights are eliminated first (each reading less its station's mean),
/// which leaves 2 (K - 1) unknowns; x is centred and scaled so that they are of one size.
/// </summary>
internal static class PassAlignment
{
    // Columns of the reduced system that fall below this share of the largest are undetermined.
    private const double Undetermined = 1e-9;

    public static PooledSweep Pool(Sweep sweep) => SweepCorrections.Apply(Align(sweep));

    /// <summary>Aligned and combined, nothing corrected.</summary>
    public static PooledSweep Align(Sweep sweep)
    {
        if (sweep.Rail is null)
            return Bare(sweep);
        var stations = sweep.Passes.SelectMany(p => p.PositionsMm).Distinct().Order().ToArray();
        if (stations.Length < 2)
            throw Problem(sweep, stations.Length == 1 ? "one station" : "no station", "at least two stations at different positions");
        var layout = new Layout(sweep, stations);
        var lines = sweep.Passes.Count == 1 ? new double[2] : Solve(sweep, layout);
        return Combine(sweep, layout, lines);
    }

    // A bare profile is heights, not passes: each reading stays a point of its own, also where a station is repeated.
    private static PooledSweep Bare(Sweep sweep)
    {
        var pass = sweep.Passes[0];
        if (pass.PositionsMm.Distinct().Take(2).Count() < 2)
            throw Problem(sweep, "one station", "at least two stations at different positions");
        var profile = new Profile(pass.PositionsMm, pass.ReadingsUm, sweep.Name);
        return new PooledSweep(sweep, profile, FixedList<AlignedPass>.Own([new AlignedPass(pass, 0, 0, pass.ReadingsUm)]), null, 0);
    }

    private static double[] Solve(Sweep sweep, Layout layout)
    {
        var passes = sweep.Passes.Count;
        var unknowns = 2 * (passes - 1);
        var readings = sweep.ReadingCount;
        var design = Matrix<double>.Build.Dense(readings, unknowns);
        var heights = Vector<double>.Build.Dense(readings);
        var meanDesign = new double[layout.Stations.Length, unknowns];
        var meanHeight = new double[layout.Stations.Length];
        var row = 0;
        foreach (var (pass, station, x, z) in layout.Readings())
        {
            heights[row] = z;
            meanHeight[station] += z / layout.Counts[station];
            if (pass > 0)
            {
                design[row, 2 * (pass - 1)] = 1;
                design[row, (2 * (pass - 1)) + 1] = x;
                meanDesign[station, 2 * (pass - 1)] += 1.0 / layout.Counts[station];
                meanDesign[station, (2 * (pass - 1)) + 1] += x / layout.Counts[station];
            }

            row++;
        }

        row = 0;
        foreach (var (_, station, _, _) in layout.Readings())
        {
            heights[row] -= meanHeight[station];
            for (var c = 0; c < unknowns; c++)
                design[row, c] -= meanDesign[station, c];
            row++;
        }

        if (readings < unknowns)
            throw NotLinked(sweep);
        var qr = design.QR(QRMethod.Thin);
        var diagonal = qr.R.Diagonal().PointwiseAbs();
        if (!(diagonal.Minimum() > Undetermined * Math.Max(1, diagonal.Maximum())))
            throw NotLinked(sweep);
        var solved = qr.Solve(heights);
        return [0, 0, .. solved];
    }

    private static PooledSweep Combine(Sweep sweep, Layout layout, double[] lines)
    {
        var passes = sweep.Passes.Count;
        var meanOffset = Enumerable.Range(0, passes).Average(k => lines[2 * k]);
        var meanTilt = Enumerable.Range(0, passes).Average(k => lines[(2 * k) + 1]);
        var heights = new double[layout.Stations.Length];
        foreach (var (pass, station, x, z) in layout.Readings())
            heights[station] += Aligned(pass, x, z) / layout.Counts[station];
        var aligned = new AlignedPass[passes];
        var squares = 0.0;
        for (var k = 0; k < passes; k++)
        {
            var pass = sweep.Passes[k];
            var own = new double[pass.PositionsMm.Count];
            for (var i = 0; i < own.Length; i++)
            {
                own[i] = Aligned(k, layout.Scaled(pass.PositionsMm[i]), pass.ReadingsUm[i]);
                var residual = own[i] - heights[layout.StationOf(pass.PositionsMm[i])];
                squares += residual * residual;
            }

            aligned[k] = new AlignedPass(pass, lines[2 * k] - meanOffset, (lines[(2 * k) + 1] - meanTilt) / layout.HalfSpan * 1000, FixedList<double>.Own(own));
        }

        var freedom = sweep.ReadingCount - layout.Stations.Length - (2 * (passes - 1));
        var repeatability = freedom > 0 ? Math.Sqrt(squares / freedom) : (double?)null;
        return new PooledSweep(sweep, new Profile(layout.Stations, heights, sweep.Name), FixedList<AlignedPass>.Own(aligned), repeatability, Math.Max(0, freedom));

        double Aligned(int pass, double x, double z) => z - (lines[2 * pass] - meanOffset) - ((lines[(2 * pass) + 1] - meanTilt) * x);
    }

    private static InputException NotLinked(Sweep sweep)
        => Problem(sweep, $"passes of {sweep.Name} with fewer than two stations in common", "passes over the same stations, so that they can be aligned");

    private static InputException Problem(Sweep sweep, string found, string expected)
        => new(new InputProblem(sweep.Source, null, null, sweep.Rail is null || found.Contains(sweep.Name, StringComparison.Ordinal) ? found : $"{found} for {sweep.Name}", expected));

    /// <summary>The stations of all passes, and readings by pass and station.</summary>
    private sealed class Layout
    {
        private readonly Sweep _sweep;
        private readonly double _middle;

        public Layout(Sweep sweep, double[] stations)
        {
            _sweep = sweep;
            Stations = stations;
            _middle = stations.Average();
            HalfSpan = (stations[^1] - stations[0]) / 2;
            Counts = new int[stations.Length];
            foreach (var position in sweep.Passes.SelectMany(p => p.PositionsMm))
                Counts[StationOf(position)]++;
        }

        public double[] Stations { get; }

        public int[] Counts { get; }

        public double HalfSpan { get; }

        public int StationOf(double position) => Array.BinarySearch(Stations, position);

        public double Scaled(double position) => (position - _middle) / HalfSpan;

        public IEnumerable<(int Pass, int Station, double X, double Z)> Readings()
        {
            for (var k = 0; k < _sweep.Passes.Count; k++)
            {
                var pass = _sweep.Passes[k];
                for (var i = 0; i < pass.PositionsMm.Count; i++)
                    yield return (k, StationOf(pass.PositionsMm[i]), Scaled(pass.PositionsMm[i]), pass.ReadingsUm[i]);
            }
        }
    }
}
