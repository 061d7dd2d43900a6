using System;
using System.Collections.Generic;
using System.Globalization;
using System.Linq;

namespace Waywright;

/// <summary>
/// Takes out of a combined sweep what its set-up says moved the readings: a lever's angle, z cos(angle); a top's sag on two supports, z - v(x); and the yielding under the
/// measuring force F where it presses, z + F G(x, x). Nothing is corrected that the set-up doesn't state.
/// </summary>
internal static class SweepCorrections
{
    public const string SelfWeight = "self-weight";
    public const string MeasuringForce = "measuring force";
    public const string Lever = "lever angle";

    // A quarter of the smallest starting limit, 10 um for the top within 100 mm (common practice, no source).
    private const double WarnAboveUm = 10.0 / 4;

    public static PooledSweep Apply(PooledSweep pooled)
    {
        if (pooled.Sweep.Setup is not { } setup)
            return pooled;
        var corrections = new List<SweepCorrection>();
        var factor = LeverFactor(setup);
        if (factor < 1)
            corrections.Add(Correction(Lever, [.. pooled.Profile.HeightsUm.Select(z => z * (factor - 1))], Plain($"The lever stands at {setup.LeverAngleDeg}° to the surface and turns too far: readings are multiplied by cos = {factor:0.0000}.")));
        if (BeamOf(pooled) is { } beam)
            corrections.AddRange(Bending(pooled, setup, beam));
        if (corrections.Count == 0)
            return pooled;
        var means = pooled.Means;
        var added = Enumerable.Range(0, pooled.Profile.Count).Select(i => corrections.Where(c => c.Name != Lever).Sum(c => c.HeightsUm[i])).ToArray();
        return pooled with
        {
            Profile = new Profile(pooled.Profile.PositionsMm, [.. pooled.Profile.HeightsUm.Select((z, i) => (factor * z) + added[i])], pooled.Profile.Name),
            Passes = FixedList<AlignedPass>.Copy(pooled.Passes.Select(Corrected)),
            Uncorrected = pooled.Profile,
            Corrections = FixedList<SweepCorrection>.Copy(corrections),
        };

        AlignedPass Corrected(AlignedPass pass, int k)
        {
            var stations = means.StationsOf(k);
            var heights = new double[stations.Length];
            for (var i = 0; i < heights.Length; i++)
                heights[i] = (factor * pass.HeightsUm[i]) + added[stations[i]];
            return pass with { HeightsUm = FixedList<double>.Own(heights) };
        }
    }

    /// <summary>What readings are multiplied by to be heights.</summary>
    public static double LeverFactor(Setup setup) => setup.LeverAngleDeg is { } angle ? Math.Cos(angle * Math.PI / 180) : 1;

    /// <summary>The rail as it lay, if it lay on two supports and its section is known.</summary>
    public static SupportedBeam? BeamOf(PooledSweep pooled)
    {
        if (pooled.Sweep is not { Face: { } face, Setup: { Rail: { } rail, Holding: { Kind: HoldingKind.TwoSupports } holding } })
            return null;
        var last = pooled.Profile.PositionsMm[^1];
        return last <= rail.LengthMm
            ? rail.On(holding, face)
            : throw new InputException(new InputProblem(pooled.Sweep.Source, null, null, Plain($"a station of {pooled.Sweep.Name} at {last} mm"), Plain($"stations on the rail, which is {rail.LengthMm} mm long by its set-up '{pooled.Sweep.Setup.Id}'")));
    }

    /// <summary>Stations at which the measuring force would lift the rail off a support, mm.</summary>
    public static IEnumerable<double> Lifting(PooledSweep pooled)
        => pooled.Sweep is { Face: RailFace.Top, Setup.ForceN: { } force } && BeamOf(pooled) is { } beam
            ? pooled.Profile.PositionsMm.Where(x => beam.Under([new PointForce(x, force)]).Lifts)
            : [];

    private static IEnumerable<SweepCorrection> Bending(PooledSweep pooled, Setup setup, SupportedBeam beam)
    {
        var stations = pooled.Profile.PositionsMm;
        var supports = Plain($"two supports at {beam.SupportsMm[0]} mm and {beam.SupportsMm[1]} mm");
        if (pooled.Sweep.Face == RailFace.Top)
        {
            var line = beam.Under();
            yield return Correction(SelfWeight, [.. stations.Select(x => -line.DeflectionUm(x))], $"The top bends under its own weight on {supports}.");
        }

        if (setup.ForceN is not > 0)
            yield break;
        var yielding = Correction(MeasuringForce, [.. stations.Select(x => setup.ForceN.Value * beam.InfluenceUmPerN(x, x))], "");
        var where = pooled.Sweep.Face == RailFace.Top ? $"on {supports}" : $"on {supports}; if the dial comes from beside, set stops there, or it pushes the rail away";
        var warning = yielding.SizeUm > WarnAboveUm
            ? Plain($" Caution: that is more than {WarnAboveUm:0.0} um, a quarter of the smallest starting limit; use a light lever indicator or supports nearer to the stations.")
            : "";
        yield return yielding with { Note = Plain($"The dial presses with {setup.ForceN} N and the rail yields where it presses, {where}.{warning}") };
    }

    private static SweepCorrection Correction(string name, double[] heights, string note) => new(name, heights.Max() - heights.Min(), FixedList<double>.Own(heights), note);

    private static string Plain(FormattableString sentence) => sentence.ToString(CultureInfo.InvariantCulture);
}
