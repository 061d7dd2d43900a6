using System;

namespace Waywright;

/// <summary>Turns what the kernel found into the figures, the interval of slopes and the contacts of a minimum zone.</summary>
internal static class ZoneBuilder
{
    // Readings and positions are themselves rounded: four units of the largest cover the ties that rounding breaks.
    private const double Rounding = 4 * 2.220446049250313e-16;

    private const double OfTheWidth = 1e-10;

    /// <summary>A slope, a station that the heights count from, and how far the readings reach from the line through it.</summary>
    private readonly record struct Zone(double Slope, int Anchor, double Highest, double Lowest)
    {
        public double Width => Highest - Lowest;
    }

    public static MinimumZone Of(Profile profile, in NarrowestZone found, in LeastSquaresLine leastSquares)
    {
        var x = profile.Positions;
        var z = profile.Heights;
        var slope = leastSquares.Slope + found.Slope;
        var rounding = Rounding * (profile.LargestHeight + (Math.Abs(slope) * Math.Max(Math.Abs(x[0]), Math.Abs(x[^1]))));
        if (profile.HasRepeatedStation && WidestStation(x, z) is var (upper, lower) && z[upper] - z[lower] >= found.Width - rounding)
        {
            var (lowest, highest) = OptimalSlopes(x, z, upper, lower);
            if (lowest <= highest)
                return Finish(profile, leastSquares, Scan(profile, lowest + ((highest - lowest) / 2), lower), lowest, highest, rounding);
        }

        var zone = Scan(profile, SlopeOfReadings(x, z, found) ?? slope, found.Falling.Lower);
        // That slope has the digits of the readings, but two near stations on a steep line can leave it fewer than the search's own.
        if (zone.Width > found.Width + rounding)
            zone = Scan(profile, slope, found.Falling.Lower);
        return Finish(profile, leastSquares, zone, zone.Slope, zone.Slope, rounding);
    }

    private static Zone Scan(Profile profile, double slope, int anchor)
    {
        new LineScan(profile.Positions, profile.Heights, slope, anchor).Extremes(out var highest, out var lowest);
        return new Zone(slope, anchor, highest, lowest);
    }

    private static MinimumZone Finish(Profile profile, in LeastSquaresLine leastSquares, in Zone zone, double lowestSlope, double highestSlope, double rounding)
    {
        var (position, height) = (profile.Positions[zone.Anchor], profile.Heights[zone.Anchor]);
        var half = zone.Width / 2;
        var middle = zone.Highest - half;
        var atFirst = (height - profile.Heights[0]) + middle - (zone.Slope * (position - profile.Positions[0]));
        var meanSquare = leastSquares.MeanSquareFrom(zone.Slope, atFirst);
        var tolerance = rounding + (OfTheWidth * zone.Width);
        var contacts = new LineScan(profile.Positions, profile.Heights, zone.Slope, zone.Anchor).Contacts(zone.Highest - tolerance, zone.Lowest + tolerance);
        return new MinimumZone(
            ReferenceLines.Line(ReferenceLineKind.MinimumZone, zone.Slope, position, height + middle, half, -half, meanSquare),
            (lowestSlope * 1000) + 0.0,
            (highestSlope * 1000) + 0.0,
            contacts);
    }

    /// <summary>The slope at which both pairs span the same, from the readings themselves; none if one pair is all there is.</summary>
    private static double? SlopeOfReadings(ReadOnlySpan<double> x, ReadOnlySpan<double> z, in NarrowestZone found)
    {
        var (falling, rising) = (found.Falling, found.Rising);
        if (falling == rising)
            return null;
        // Differences within a side first: where both pairs share a station it drops out without rounding.
        var rise = (z[falling.Upper] - z[rising.Upper]) - (z[falling.Lower] - z[rising.Lower]);
        var run = (x[falling.Upper] - x[rising.Upper]) - (x[falling.Lower] - x[rising.Lower]);
        return rise / run;
    }

    /// <summary>The repeated station whose readings span most: no zone is narrower than that.</summary>
    private static (int Upper, int Lower) WidestStation(ReadOnlySpan<double> x, ReadOnlySpan<double> z)
    {
        var (upper, lower) = (0, 0);
        for (int first = 0, i = 1; i < x.Length; i++)
        {
            // Readings of one station stand in order of height.
            if (x[i] != x[first])
                first = i;
            else if (upper == lower || z[i] - z[first] > z[upper] - z[lower])
                (upper, lower) = (i, first);
        }

        return (upper, lower);
    }

    /// <summary>
    /// Where a repeated station alone spans the zone, every slope will do that keeps the others inside:
    /// z_lower + b (x - x_s) &lt;= z &lt;= z_upper + b (x - x_s). None do, by rounding, if the lowest comes out above the highest.
    /// </summary>
    private static (double Lowest, double Highest) OptimalSlopes(ReadOnlySpan<double> x, ReadOnlySpan<double> z, int upper, int lower)
    {
        var lowest = double.NegativeInfinity;
        var highest = double.PositiveInfinity;
        for (var i = 0; i < x.Length; i++)
        {
            var run = x[i] - x[upper];
            if (run == 0)
                continue;
            var toUpper = (z[i] - z[upper]) / run;
            var toLower = (z[i] - z[lower]) / run;
            lowest = Math.Max(lowest, run > 0 ? toUpper : toLower);
            highest = Math.Min(highest, run > 0 ? toLower : toUpper);
        }

        return (lowest, highest);
    }
}
