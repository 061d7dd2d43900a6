using System;
using System.Collections.Generic;
using System.Threading.Tasks;

namespace Waywright;

/// <summary>The adaptive procedure of JCGM 101:2008, 7.9.4: sequences of M trials until their averages are stable.</summary>
internal sealed class AdaptiveTrials(TrialRunner runner, int significantDigits, double coverage, bool shortest, int mostSequences)
{
    // Sequences calculated together; which one is the last is decided one after the other, so this changes the time taken and nothing else.
    private const int Wave = 16;

    private readonly int _length = SequenceLength(coverage);
    private readonly List<double[]> _results = [];
    private readonly List<double[]> _figures = [];

    /// <summary>M = max(J, 10^4), J the smallest whole number of at least 100 / (1 - p) (7.9.4 b).</summary>
    public static int SequenceLength(double coverage)
    {
        // The length is even because a trial's draws come in pairs.
        var length = Math.Max((int)Math.Ceiling((100 / (1 - coverage)) - 1e-6), 10_000);
        return length + (length % 2);
    }

    public MonteCarloResult Run(ulong seed)
    {
        var count = 1;
        double tolerance;
        bool isStable;
        do
        {
            count++;
            while (_results.Count < count)
                RunWave();
            tolerance = MonteCarloResult.NumericalTolerance(Deviation(count), significantDigits);
            isStable = IsStable(count, tolerance);
        }
        while (!isStable && count < mostSequences);

        var all = new double[count * _length];
        for (var i = 0; i < count; i++)
            _results[i].CopyTo(all, i * _length);
        return new MonteCarloResult(all, runner.Inputs, seed, tolerance, isStable);
    }

    private void RunWave()
    {
        var first = _results.Count;
        var count = Math.Min(Wave, mostSequences - first);
        var wave = new double[count * _length];
        runner.Run((long)first * _length, wave);
        var figures = new double[count][];
        Parallel.For(0, count, i => figures[i] = Figures(wave.AsSpan(i * _length, _length)));
        for (var i = 0; i < count; i++)
            _results.Add(wave[(i * _length)..((i + 1) * _length)]);
        _figures.AddRange(figures);
    }

    // Mean, standard uncertainty and interval ends of one sequence (7.9.4 d).
    private double[] Figures(ReadOnlySpan<double> sequence)
    {
        var result = new MonteCarloResult(sequence.ToArray(), runner.Inputs, 0);
        var interval = shortest ? result.Shortest(coverage) : result.Symmetric(coverage);
        return [result.Mean, result.StandardUncertainty, interval.Low, interval.High];
    }

    // 7.9.4 g to i: twice the standard deviation of each average.
    private bool IsStable(int count, double tolerance)
    {
        Span<double> values = stackalloc double[count];
        for (var figure = 0; figure < 4; figure++)
        {
            for (var i = 0; i < count; i++)
                values[i] = _figures[i][figure];
            if (2 * MonteCarloResult.Moments(values).Deviation / Math.Sqrt(count) > tolerance)
                return false;
        }

        return true;
    }

    // u(y) of all trials so far (7.9.4 f), from the means and deviations of the sequences.
    private double Deviation(int count)
    {
        double mean = 0, within = 0, between = 0;
        for (var i = 0; i < count; i++)
            mean += (_figures[i][0] - _figures[0][0]) / count;
        for (var i = 0; i < count; i++)
        {
            var distance = _figures[i][0] - _figures[0][0] - mean;
            between += distance * distance;
            within += _figures[i][1] * _figures[i][1];
        }

        return Math.Sqrt((((_length - 1) * within) + (_length * between)) / ((count * (double)_length) - 1));
    }
}
