using System;
using System.Globalization;
using System.Linq;

namespace Waywright;

/// <summary>
/// What would settle an open question: the passes K for which k s(K) is no more than the room between estimate and limit,
/// <c>s(K)² = s² n / K + u_sys²</c>; where the systematic part alone takes the room, the largest of its inputs and its remedy.
/// </summary>
internal static class Settling
{
    // More passes than this are not taken by hand.
    private const int MostPasses = 40;

    public static string Of(MeasuredFeature feature, double limitUm, PooledSweep face, double level)
    {
        if (feature.Figure is not { } figure)
            return "sweep it again with its set-up written down.";
        var room = limitUm - figure.EstimateUm;
        if (room <= 0 && !feature.IsRefused(limitUm))
            return "more passes are not likely to: it is more likely over the limit than within. Wipe it clean, lift it, lay it again and sweep it once more.";
        var passes = face.Sweep.Passes.Count;
        var (noise, shared) = (figure.Widest.OfStations, figure.Widest.OfShapes);
        var k = StudentQuantile.Of(level, figure.Widest.DegreesOfFreedom);
        var square = (Math.Max(room, 0) / k * Math.Max(room, 0) / k) - (shared * shared);
        var needed = square > 0 ? Math.Ceiling(passes * noise * noise / square) : double.PositiveInfinity;
        if (needed > passes && needed <= MostPasses)
            return string.Create(CultureInfo.InvariantCulture, $"take {needed:0} passes instead of {passes}, some of them after lifting and re-laying the rail.");
        if (needed <= passes)
            return "take as many passes again, some of them after lifting and re-laying the rail.";
        var largest = ErrorBudget.Of(new ZoneFigure(new PreparedStations(face.Profile.Positions)), face.Errors!).First(b => shared == 0 || b.Name != ErrorBudget.Stations);
        return shared > noise / Math.Sqrt(MostPasses)
            ? $"no number of passes settles this; the largest part that stays is the {largest.Name}: {largest.Remedy}."
            : $"no number of passes that is taken by hand settles this; {largest.Remedy}, or use a finer dial.";
    }
}
