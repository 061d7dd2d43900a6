using System;
using System.Linq;

namespace Waywright;

/// <summary>
/// What the mains leave in a recording: eight partials of one frequency near 50 or 60 Hz, fitted to the quiet before the first pluck by least squares and carried on through the whole take.
/// </summary>
/// <param name="FrequencyHz">Of the mains.</param>
/// <param name="Share">Of the energy before the first pluck that it takes.</param>
/// <param name="Wave">Its value at each sample.</param>
internal sealed record MainsHum(double FrequencyHz, double Share, double[] Wave)
{
    public const double LeastSeconds = 0.15;
    private const double LongestSeconds = 1;
    private const int Partials = 8;
    private const double Band = 0.2;
    private const double LeastShare = 0.3;

    /// <summary>Null where less than 0.15 s is quiet, or where mains take less than 30 % of that.</summary>
    public static MainsHum? Find(PluckSignal signal, int quiet, double? mainsHz)
    {
        if (quiet < signal.Count(LeastSeconds))
            return null;
        var from = Math.Max(0, quiet - signal.Count(LongestSeconds));
        var part = signal.Samples.AsSpan(from, quiet - from).ToArray();
        var mean = part.Average();
        var energy = part.Sum(value => (value - mean) * (value - mean));
        if (energy == 0)
            return null;
        var (best, share) = (0.0, 0.0);
        double[] mains = mainsHz is { } given ? [given] : [50, 60];
        foreach (var middle in mains)
        {
            for (var step = -4; step <= 4; step++)
                Try(middle + (Band * step / 4));
        }

        var about = best;
        for (var step = -8; step <= 8; step++)
            Try(about + (Band * step / 40));
        about = best;
        for (var step = -4; step <= 4; step++)
            Try(about + (Band * step / 200));
        if (share < LeastShare)
            return null;
        var waves = Waves(best, signal.Rate, 0, signal.Samples.Length);
        var coefficients = new LeastSquares(Waves(best, signal.Rate, from, part.Length)).Solve(part);
        var wave = new double[signal.Samples.Length];
        for (var i = 0; i < 2 * Partials; i++)
            Products.Add(wave, coefficients[i], waves[i]);
        return new(best, share, wave);

        void Try(double hertz)
        {
            var fit = new LeastSquares(Waves(hertz, signal.Rate, from, part.Length));
            var rest = fit.Rest(part, fit.Solve(part));
            var taken = 1 - (Products.Sum(rest, rest) / energy);
            if (taken > share)
                (best, share) = (hertz, taken);
        }

        static double[][] Waves(double hertz, double rate, int first, int count)
        {
            // The last is a constant: over a fraction of a period the mean is no offset.
            var columns = new double[(2 * Partials) + 1][];
            columns[^1] = [.. Enumerable.Repeat(1.0, count)];
            for (var k = 0; k < Partials; k++)
            {
                var (sines, cosines) = (new double[count], new double[count]);
                for (var i = 0; i < count; i++)
                    (sines[i], cosines[i]) = Math.SinCos(2 * Math.PI * (k + 1) * hertz * (first + i) / rate);
                (columns[2 * k], columns[(2 * k) + 1]) = (sines, cosines);
            }

            return columns;
        }
    }
}
