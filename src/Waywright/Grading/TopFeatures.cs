using System.Collections.Generic;
using System.Threading;

namespace Waywright;

/// <summary>The top as its screws will hold it, and as it was swept free.</summary>
internal static class TopFeatures
{
    public const string Again = "Sweep the top midway between all holes and near both ends.";

    public static IEnumerable<MeasuredFeature> Of(string rail, PooledSweep? top, RailScrews screws, int trials, ulong seed, CancellationToken cancel)
    {
        var (pattern, missing) = screws.Of(rail, top?.Profile);
        var mounted = pattern is null || !RailFeatures.CanBend(top) ? null : MountedTop.Of(top!.Profile, top.Errors, pattern);
        var (whole, local) = mounted?.Errors is null ? (null, null) : mounted.Figures(trials, seed, cancel);
        UncertaintyComponent[] Budget() => mounted?.Errors is { } errors ? RailFeatures.Budget(mounted.Held, errors) : [];
        missing ??= new NotJudged("swept at two positions, which always lie on a line", Again);
        yield return new MeasuredFeature(RailFeature.TopMounted, mounted?.ResidualUm, whole, top) { Missing = missing, Budget = Budget };
        yield return new MeasuredFeature(RailFeature.TopLocal, mounted?.LocalUm, local, top)
        {
            Missing = mounted is null ? missing : new NotJudged("fewer than 4 stations, holes and ends within two pitches", "Sweep the top again with a station midway between all holes."),
            Budget = Budget,
        };
        yield return new MeasuredFeature(
            RailFeature.TopFree, RailFeatures.CanBend(top) ? top!.Straightness.MinimumZone.Line.STRtUm : null, RailFeatures.FreeFigures(top, trials, seed, cancel)?.Zone(StraightnessParameter.STRt), top)
        {
            Missing = missing,
            Budget = () => top?.Errors is { } errors ? RailFeatures.Budget(top.Profile, errors) : [],
        };
    }
}
