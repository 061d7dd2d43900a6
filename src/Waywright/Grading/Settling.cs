using System;
using System.Globalization;
using System.Linq;

namespace Waywright;

/// <summary>
/// What would settle an open question: the fewest passes K for which the upper bound that is to be expected is within the limit,
/// <c>estimate + a sqrt(n / K) + k sqrt(s² n / K + u_sys²)</c>, a what noise adds to the figure at the n passes taken; where the systematic part alone
/// takes the room, the largest of its inputs and its remedy.
/// </summary>
internal static class Settling
{
    // More passes than this are not taken by hand.
    private const int MostPasses = 40;

    public static string Of(MeasuredFeature feature, double limitUm, double level)
    {
        if (feature.Remedy is { } remedy)
            return remedy;
        if (feature.Figure is not { } figure)
            return "sweep it again with its set-up written down.";
        var between = figure.MoreBetweenUm(level);
        if (between > 0 && figure.UpperBoundUm(level) > limitUm && between > (limitUm - figure.EstimateUm) / 2)
            return $"no number of passes settles this; the largest part that stays is the {ErrorBudget.Between}: {feature.Source!.Budget().First(b => b.Name == ErrorBudget.Between).Remedy}.";
        var room = limitUm - figure.EstimateUm;
        if (room <= 0 && !feature.IsRefused(limitUm))
            return "more passes are not likely to: it is more likely over the limit than within. Wipe it clean, lift it, lay it again and sweep it once more.";
        var passes = feature.Face!.Sweep.Passes.Count;
        if (figure.IsGuaranteed)
            return OfGuaranteed(feature, (figure.UpperBoundUm(level) - figure.ObservedUm) / room, passes);
        var (noise, shared) = (figure.Widest.OfStations, figure.Widest.OfShapes);
        var k = StudentQuantile.Of(level, figure.Widest.DegreesOfFreedom);
        bool Settles(int taken)
        {
            var share = (double)passes / taken;
            return figure.EstimateUm + (figure.NoiseShareUm * Math.Sqrt(share)) + (k * Math.Sqrt((noise * noise * share) + (shared * shared))) <= limitUm;
        }

        for (var taken = passes + 1; taken <= MostPasses; taken++)
        {
            if (Settles(taken))
                return string.Create(CultureInfo.InvariantCulture, $"take {taken} passes instead of {passes}, some of them after lifting and re-laying the rail.");
        }

        var largest = feature.Source!.Budget().First(b => shared == 0 || b.Name != ErrorBudget.Stations);
        return shared > noise / Math.Sqrt(MostPasses)
            ? $"no number of passes settles this; the largest part that stays is the {largest.Name}: {largest.Remedy}."
            : $"no number of passes that is taken by hand settles this; {largest.Remedy}, or use a finer dial.";
    }

    // Where nothing but how far errors move it is known, passes help if the stations' scatter is the largest part, and more screws always do.
    private static string OfGuaranteed(MeasuredFeature feature, double times, int passes)
    {
        const string screws = "more screws leave the errors less play";
        var largest = feature.Source!.Budget()[0];
        var taken = Math.Ceiling(passes * times * times);
        return largest.Name == ErrorBudget.Stations && times > 0 && taken <= MostPasses
            ? string.Create(CultureInfo.InvariantCulture, $"try more screws, or others (mount-rails): {screws}. Else take {Math.Max(passes + 1, taken):0} passes instead of {passes}, some of them after lifting and re-laying the rail.")
            : $"try more screws, or others (mount-rails): {screws}. Else the largest part is the {largest.Name}: {largest.Remedy}.";
    }
}
