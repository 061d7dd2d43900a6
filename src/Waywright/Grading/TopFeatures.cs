using System.Collections.Generic;

namespace Waywright;

/// <summary>The top as its screws will hold it, and as it was swept free.</summary>
internal static class TopFeatures
{
    public const string Again = "Sweep the top midway between all holes and near both ends.";

    public static IEnumerable<MeasuredFeature> Of(string rail, PooledSweep? top, RailScrews screws, TrialShelf shelf)
    {
        var (pattern, missing) = screws.Of(rail, top?.Profile);
        missing ??= new NotJudged("swept at two positions, which always lie on a line", Again);
        var layout = pattern is null || !FaceFigures.CanBend(top) ? null : shelf.Held(top!.Profile, pattern);
        var held = layout is null ? null : new MountedTop(top!.Profile, top.Errors, pattern!, layout.Map!);
        var source = held?.Errors is { } errors ? new FaceFigures(held.Held, errors, layout!, shelf) : null;
        yield return new MeasuredFeature(RailFeature.TopMounted, held?.ResidualUm, top)
        {
            Source = source,
            Predicted = held is null ? null : () => held.Counting,
            Pick = figures => held!.Figure(() => figures.Set, shelf.Trials, shelf.Seed, shelf.Cancel),
            Quick = (figures, um) => held!.MayBePressed ? null : figures.Quick(null, um),
            Missing = missing,
        };
        yield return new MeasuredFeature(RailFeature.TopLocal, held?.LocalUm, top)
        {
            Source = source,
            Predicted = held is null ? null : () => held.Held,
            WindowMm = held?.WindowMm,
            Pick = figures => figures.Set.Local(held!.WindowMm),
            Quick = (figures, um) => figures.Quick(held!.WindowMm, um),
            Missing = held is null ? missing : new NotJudged("fewer than 4 stations, holes and ends within two pitches", "Sweep the top again with a station midway between all holes."),
        };
        yield return new MeasuredFeature(RailFeature.TopFree, FaceFigures.CanBend(top) ? top!.Straightness.MinimumZone.Line.STRtUm : null, top)
        {
            Source = FaceFigures.OfFree(top, shelf),
            Pick = figures => figures.Set.Zone(StraightnessParameter.STRt),
            Quick = (figures, um) => figures.Quick(null, um),
            Missing = missing,
        };
    }
}
