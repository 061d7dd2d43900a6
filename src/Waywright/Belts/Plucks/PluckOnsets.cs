using System;
using System.Collections.Generic;
using System.Linq;

namespace Waywright;

/// <summary>
/// Where plucks start: where the 50 ms after a moment are at least 6 dB louder than the 50 ms before it and not 15 dB under the loudest; there the first place where 10 ms rise by half of the largest rise.
/// A level alone would fail under hum. The file's first sample counts as a start where the quietest 50 ms of the file are that much quieter.
/// </summary>
internal static class PluckOnsets
{
    private const double Window = 0.05;
    private const double Step = 0.005;
    private const double ShortWindow = 0.01;
    private const double Apart = 0.2;
    private const double LeastRise = 4;
    private const double LeastOfLoudest = 0.03;

    public static List<int> Of(PluckSignal signal)
    {
        var (window, step) = (signal.Count(Window), Math.Max(1, signal.Count(Step)));
        var length = signal.Samples.Length;
        if (length <= 2 * window)
            return [Sharpest(signal, 0, length)];
        var (loudest, quietest) = (0.0, double.PositiveInfinity);
        for (var at = 0; at + window <= length; at += step)
        {
            var power = signal.Power(at, at + window);
            (loudest, quietest) = (Math.Max(loudest, power), Math.Min(quietest, power));
        }

        var starts = new List<int>();
        var (best, bestAt) = (0.0, -1);
        for (var at = 0; at + window <= length; at += step)
        {
            var after = signal.Power(at, at + window);
            var before = at >= window ? signal.Power(at - window, at) : at > 0 ? Math.Max(quietest, signal.Power(0, at)) : quietest;
            var rise = after >= LeastOfLoudest * loudest ? after / Math.Max(before, 1e-9 * loudest) : 0;
            if (bestAt >= 0 && at - bestAt > window)
                Keep();
            if (rise >= LeastRise && rise > best)
                (best, bestAt) = (rise, at);
        }

        if (bestAt >= 0)
            Keep();
        return starts.Count > 0 ? starts : [Sharpest(signal, 0, length)];

        void Keep()
        {
            var start = bestAt == 0 ? 0 : Sharpest(signal, bestAt - window, bestAt + window);
            // After the first, two notes that beat swell too, but not within 10 ms.
            var isSudden = starts.Count == 0 || signal.Power(start, start + signal.Count(ShortWindow)) >= LeastRise * signal.Power(start - signal.Count(ShortWindow), start);
            if (isSudden && (starts.Count == 0 || start - starts[^1] > signal.Count(Apart)))
                starts.Add(start);
            (best, bestAt) = (0, -1);
        }
    }

    /// <summary>The first place where the level over 10 ms rises by at least half of the largest rise of the stretch.</summary>
    private static int Sharpest(PluckSignal signal, int from, int to)
    {
        var window = signal.Count(ShortWindow);
        (from, to) = (Math.Max(0, from), Math.Min(to, signal.Samples.Length - 1));
        double Rise(int at) => Math.Sqrt(signal.Power(at, at + window)) - Math.Sqrt(at == 0 ? 0 : signal.Power(at - window, at));
        var largest = 0.0;
        for (var at = from; at < to; at++)
            largest = Math.Max(largest, Rise(at));
        return largest == 0 ? from : Enumerable.Range(from, Math.Max(1, to - from)).First(at => Rise(at) >= largest / 2);
    }
}
