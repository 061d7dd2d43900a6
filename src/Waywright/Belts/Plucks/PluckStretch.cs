using System;

namespace Waywright;

/// <summary>The part of a pluck that is used, in samples.</summary>
/// <param name="Start">Where the pluck starts.</param>
/// <param name="From">30 ms on.</param>
/// <param name="To">Before this one.</param>
/// <param name="QuietPower">Mean square before the first pluck, hum taken out; null where nothing is known of it.</param>
internal readonly record struct PluckStretch(int Start, int From, int To, double? QuietPower)
{
    /// <summary>The same with the hum in it.</summary>
    public double? HummingPower { get; init; }

    public const double LeastSeconds = 0.12;
    private const double LongestSeconds = 1;
    private const double Skipped = 0.03;
    private const double Window = 0.02;
    private const double Quiet = 0.25;
    private const double LeastQuiet = 0.05;
    private const double Down = 3.1623e-3;

    /// <param name="signal">The take.</param>
    /// <param name="start">Where this pluck starts.</param>
    /// <param name="next">Where the next one does, or the take ends.</param>
    /// <param name="isFirst">Whether what is before it is quiet and not the last pluck's end.</param>
    public static PluckStretch Of(PluckSignal signal, int start, int next, bool isFirst)
    {
        var quietFrom = Math.Max(0, start - signal.Count(Quiet));
        double? quiet = isFirst && start - quietFrom > signal.Count(LeastQuiet) ? signal.Power(quietFrom, start) : null;
        var from = Math.Min(start + signal.Count(Skipped), next);
        var (window, last) = (signal.Count(Window), Math.Min(next, from + signal.Count(LongestSeconds)));
        var (least, loudest) = (from + signal.Count(LeastSeconds), 0.0);
        for (var at = from; at + window <= last; at += window / 2)
        {
            var power = signal.Power(at, at + window);
            loudest = Math.Max(loudest, power);
            if (at > least && (power < Down * loudest || power < 1.5 * quiet))
                return new(start, from, at, quiet);
        }

        return new(start, from, last, quiet);
    }
}
