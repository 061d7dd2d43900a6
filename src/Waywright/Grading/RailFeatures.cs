using System.Collections.Generic;
using System.Linq;
using System.Threading;

namespace Waywright;

/// <summary>A figure of a rail as read and, with a set-up, with its bounds.</summary>
internal sealed record MeasuredFeature(string Feature, double? ReadUm, UncertainFigure? Figure, Setup? Setup = null)
{
    /// <summary>Whether it is within a limit: as read, or by its upper bound.</summary>
    public bool IsWithin(double limitUm, double level) => Figure is { } figure ? figure.NoiseFloorUm <= limitUm && figure.UpperBoundUm(level) <= limitUm : ReadUm <= limitUm;

    /// <summary>Whether it is proven to be beyond a limit.</summary>
    public bool IsBeyond(double limitUm, double level) => Figure is { } figure ? figure.NoiseFloorUm <= limitUm && figure.LowerBoundUm(level) > limitUm : ReadUm > limitUm;

    /// <summary>Whether the same set-up reads more than the limit on a perfectly straight rail in 5 of 100 sweeps.</summary>
    public bool IsRefused(double limitUm) => Figure?.NoiseFloorUm > limitUm;

    /// <summary>Its share of a limit.</summary>
    public double? ShareOf(double limitUm, double level) => (Figure?.UpperBoundUm(level) ?? ReadUm) / limitUm;
}

/// <summary>What a rail is graded by.</summary>
/// <param name="Rail">Its name.</param>
/// <param name="Side">The side, combined; null when not swept.</param>
/// <param name="Top">The top, combined; null when not swept.</param>
/// <param name="All">Side, side local, top local.</param>
internal sealed record RailFeatures(string Rail, PooledSweep? Side, PooledSweep? Top, IReadOnlyList<MeasuredFeature> All)
{
    public static RailFeatures Of(string rail, PooledSweep? side, PooledSweep? top, int trials, ulong seed, CancellationToken cancel)
    {
        var (sideWhole, sideLocal) = Bounds(side, whole: true, trials, seed, cancel);
        var (_, topLocal) = Bounds(top, whole: false, trials, seed, cancel);
        return new RailFeatures(rail, side, top, FixedList<MeasuredFeature>.Own(
        [
            new(RailFeature.Side, CanBend(side) ? side!.Straightness.MinimumZone.Line.STRtUm : null, sideWhole, side?.Sweep.Setup),
            new(RailFeature.SideLocal, side?.Profile.Local(GradeRules.LocalWindowMm)?.STRtUm, sideLocal, side?.Sweep.Setup),
            new(RailFeature.TopLocal, top?.Profile.Local(GradeRules.LocalWindowMm)?.STRtUm, topLocal, top?.Sweep.Setup),
        ]));
    }

    public MeasuredFeature this[string feature] => All.First(f => f.Feature == feature);

    private static (UncertainFigure? Whole, UncertainFigure? Local) Bounds(PooledSweep? face, bool whole, int trials, ulong seed, CancellationToken cancel)
        => CanBend(face) && face!.Errors is { } errors
            ? StraightnessUncertainty.Grading(face.Profile, errors, whole, GradeRules.LocalWindowMm, trials, seed, cancel)
            : (null, null);

    // Two positions always lie on a line.
    private static bool CanBend(PooledSweep? face) => face is not null && face.Profile.PositionsMm.Distinct().Take(3).Count() == 3;
}
