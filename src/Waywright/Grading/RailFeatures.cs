using System;
using System.Collections.Generic;
using System.Linq;

namespace Waywright;

/// <summary>What a rail is graded by.</summary>
/// <param name="Rail">Its name.</param>
/// <param name="Side">The side, combined; null when not swept.</param>
/// <param name="Top">The top, combined; null when not swept.</param>
/// <param name="All">Side, side local, top mounted, top local, top free; the drag where it was measured.</param>
/// <param name="Drag">What the drag log says of it; null where it doesn't have it.</param>
internal sealed record RailFeatures(string Rail, PooledSweep? Side, PooledSweep? Top, IReadOnlyList<MeasuredFeature> All, RailDrag? Drag)
{
    public static RailFeatures Of(string rail, PooledSweep? side, PooledSweep? top, RailScrews screws, RailDrag? drag, TrialShelf shelf)
        => new(rail, side, top, FixedList<MeasuredFeature>.Copy([.. SideFeatures.Of(side, shelf), .. TopFeatures.Of(rail, top, screws, shelf), .. drag?.Spread is { } spread ? [spread] : Array.Empty<MeasuredFeature>()]), drag);

    public MeasuredFeature this[string feature] => All.First(f => f.Feature == feature);
}
