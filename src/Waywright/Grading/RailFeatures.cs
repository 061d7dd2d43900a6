using System;
using System.Collections.Generic;
using System.Linq;
using System.Threading;

namespace Waywright;

/// <summary>What a rail is graded by.</summary>
/// <param name="Rail">Its name.</param>
/// <param name="Side">The side, combined; null when not swept.</param>
/// <param name="Top">The top, combined; null when not swept.</param>
/// <param name="All">Side, side local, top mounted, top local, top free; the drag where it was measured.</param>
/// <param name="Drag">What the drag log says of it; null where it doesn't have it.</param>
internal sealed record RailFeatures(string Rail, PooledSweep? Side, PooledSweep? Top, IReadOnlyList<MeasuredFeature> All, RailDrag? Drag)
{
    public static RailFeatures Of(string rail, PooledSweep? side, PooledSweep? top, RailScrews screws, RailDrag? drag, int trials, ulong seed, CancellationToken cancel)
        => new(rail, side, top, FixedList<MeasuredFeature>.Copy([.. SideFeatures.Of(side, trials, seed, cancel), .. TopFeatures.Of(rail, top, screws, trials, seed, cancel), .. drag?.Spread is { } spread ? [spread] : Array.Empty<MeasuredFeature>()]), drag);

    public MeasuredFeature this[string feature] => All.First(f => f.Feature == feature);

    /// <summary>Two positions always lie on a line.</summary>
    public static bool CanBend(PooledSweep? face) => face is not null && face.Profile.PositionsMm.Distinct().Take(3).Count() == 3;

    /// <summary>The figures of a face as it lay free, one set of trials; null without a set-up or where it can't bend.</summary>
    public static FigureSet? FreeFigures(PooledSweep? face, int trials, ulong seed, CancellationToken cancel)
        => CanBend(face) && face!.Errors is { } errors ? StraightnessUncertainty.SetOf(face.Profile, errors, trials, seed, cancel) : null;

    /// <summary>Where the uncertainty of a face's figures comes from.</summary>
    public static UncertaintyComponent[] Budget(Profile profile, HeightErrors errors) => [.. ErrorBudget.Of(new ZoneFigure(new PreparedStations(profile.Positions)), errors)];
}
