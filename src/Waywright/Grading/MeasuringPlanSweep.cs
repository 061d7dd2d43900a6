using System;
using System.Collections.Generic;
using System.Linq;

namespace Waywright;

/// <summary>
/// The sweep that is planned, as if it had been taken: a rail with a bow, levelled until both ends read alike within 10 um, passes forward and back by turns, dealt out over
/// the lays, all at one stand height. Its errors come from the same parts as those of a sweep that was read.
/// </summary>
internal sealed record MeasuringPlanSweep(Instrument Dial, double LengthMm, int Stations, int Passes, int Lays, double? GuideUm)
{
    private const double LevelledUm = 10;

    public double[] PositionsMm => [.. Enumerable.Range(0, Stations).Select(i => LengthMm * i / (Stations - 1))];

    /// <summary>Heights of a rail whose bow is so high that the stations see this STRt about the minimum zone, um.</summary>
    public double[] Bow(double bowUm)
    {
        var bow = Array.ConvertAll(PositionsMm, x => 4 * (x / LengthMm) * (1 - (x / LengthMm)));
        var seen = StraightnessFigures.Of(new Profile(PositionsMm, bow)).MinimumZone.Line.STRtUm;
        return Array.ConvertAll(bow, z => bowUm / seen * z);
    }

    /// <summary>What the heights of such a rail will be uncertain by.</summary>
    public ProfileErrors Errors(double bowUm)
    {
        var pooled = Pooled(bowUm);
        var (station, degrees) = StationScatter.Of(pooled.Means, Dial.ReadingStep, Dial.Repeatability, Degrees, Passes > 1);
        var shapes = new List<ErrorShape>(GuideShapes.Of(pooled.Sweep.Setup!, pooled.Profile));
        shapes.AddRange(DialWaves.Of(Dial, pooled, pooled.Means, factor: 1));
        if (RetraceShape.Of(Dial, pooled, pooled.Means, factor: 1) is { } retrace)
            shapes.Add(retrace);
        return new ProfileErrors(station, degrees, shapes);
    }

    // Of the scatter that the planned passes themselves will show; for one pass, of what is known of the dial.
    private double Degrees => Passes > 1 ? (Stations - 2) * (Passes - 1) : Dial.RepeatabilityDegreesOfFreedom;

    private PooledSweep Pooled(double bowUm)
    {
        var positions = FixedList<double>.Own(PositionsMm);
        var readings = FixedList<double>.Copy(Bow(bowUm).Select((z, i) => z + (LevelledUm * positions[i] / LengthMm)));
        var passes = Enumerable.Range(0, Passes).Select(k => new SweepPass(NumberText.Plain(k + 1), Direction(k), NumberText.Plain((k % Lays) + 1), positions, readings)).ToArray();
        var setup = new Setup("planned", "plate", GuideUm, GuideUm is null ? "unknown" : "certificate", "surface", "on a plate", Dial.Name, Dial.Division, "whole", null, null) { Indicator = Dial };
        var sweep = new Sweep("planned", RailFace.Side, setup.Id, setup, FixedList<SweepPass>.Own(passes), "plan");
        return new PooledSweep(sweep, new Profile(positions, readings), FixedList<AlignedPass>.Empty, Passes > 1 ? Dial.Repeatability : null, (Stations - 2) * (Passes - 1));
    }

    // Each lay has passes both ways where it has more than one.
    private string Direction(int pass) => (pass + (Lays % 2 == 0 ? pass / Lays : 0)) % 2 == 0 ? "forward" : "back";
}
