using System.Collections.Generic;
using System.Globalization;

namespace Waywright;

/// <summary>The side as it was swept free: screws in clearance holes don't pull it straight.</summary>
internal static class SideFeatures
{
    private static readonly NotJudged Straight = new("swept at two positions, which always lie on a line", "Sweep the side midway between all holes and near both ends.");

    public static IEnumerable<MeasuredFeature> Of(PooledSweep? side, TrialShelf shelf)
    {
        var source = FaceFigures.OfFree(side, shelf);
        yield return new MeasuredFeature(RailFeature.Side, FaceFigures.CanBend(side) ? side!.Straightness.MinimumZone.Line.STRtUm : null, side)
        {
            Source = source,
            Pick = figures => figures.Set.Zone(StraightnessParameter.STRt),
            Quick = (figures, um) => figures.Quick(null, um),
            Missing = Straight,
        };
        const double windowMm = GradeRules.LocalWindowMm;
        var window = windowMm.ToString(CultureInfo.InvariantCulture);
        yield return new MeasuredFeature(RailFeature.SideLocal, side?.Profile.Local(windowMm)?.STRtUm, side)
        {
            Source = source,
            WindowMm = windowMm,
            Pick = figures => figures.Set.Local(windowMm),
            Quick = (figures, um) => figures.Quick(windowMm, um),
            Missing = FaceFigures.CanBend(side) ? new NotJudged($"fewer than 4 stations within {window} mm", $"Sweep the side again with at least 4 stations in every {window} mm.") : Straight,
        };
    }
}
