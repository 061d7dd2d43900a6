using System.Collections.Generic;
using System.Globalization;
using System.Threading;

namespace Waywright;

/// <summary>The side as it was swept free: screws in clearance holes don't pull it straight.</summary>
internal static class SideFeatures
{
    private static readonly NotJudged Straight = new("swept at two positions, which always lie on a line", "Sweep the side midway between all holes and near both ends.");

    public static IEnumerable<MeasuredFeature> Of(PooledSweep? side, int trials, ulong seed, CancellationToken cancel)
    {
        var figures = RailFeatures.FreeFigures(side, trials, seed, cancel);
        UncertaintyComponent[] Budget() => side?.Errors is { } errors ? RailFeatures.Budget(side.Profile, errors) : [];
        var window = GradeRules.LocalWindowMm.ToString(CultureInfo.InvariantCulture);
        yield return new MeasuredFeature(RailFeature.Side, RailFeatures.CanBend(side) ? side!.Straightness.MinimumZone.Line.STRtUm : null, figures?.Zone(StraightnessParameter.STRt), side)
        {
            Missing = Straight,
            Budget = Budget,
        };
        yield return new MeasuredFeature(RailFeature.SideLocal, side?.Profile.Local(GradeRules.LocalWindowMm)?.STRtUm, figures?.Local(GradeRules.LocalWindowMm), side)
        {
            Missing = RailFeatures.CanBend(side) ? new NotJudged($"fewer than 4 stations within {window} mm", $"Sweep the side again with at least 4 stations in every {window} mm.") : Straight,
            Budget = Budget,
        };
    }
}
