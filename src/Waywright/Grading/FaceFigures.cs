using System;
using System.Linq;

namespace Waywright;

/// <summary>The heights of one face, free or as screws hold them, and their errors: what figures of it are simulated from when they are asked for.</summary>
internal sealed class FaceFigures(Profile profile, HeightErrors errors, StationLayout layout, TrialShelf shelf)
{
    private readonly WeakReference<FigureSet?> _set = new(null);

    /// <summary>All figures of the face from one set of trials. It is kept as long as somebody holds it, or it was among the last ones asked for: a batch of thousands of rails has no room for all.</summary>
    public FigureSet Set
    {
        get
        {
            if (!_set.TryGetTarget(out var set))
                _set.SetTarget(set = shelf.Hold(StraightnessUncertainty.SetOf(profile, errors, shelf.Trials, shelf.Seed, shelf.Cancel)));
            return set;
        }
    }

    /// <summary>Whether figures are kept once they were asked for.</summary>
    public bool IsKept => shelf.IsKept;

    /// <summary>Keeps a figure for as long as its rail is likely to be told of.</summary>
    public UncertainFigure Hold(UncertainFigure figure) => shelf.Hold(figure);

    /// <summary>Where its uncertainty comes from, largest first.</summary>
    public UncertaintyComponent[] Budget() => [.. ErrorBudget.Of(new ZoneFigure(layout.Stations), errors)];

    public QuickBounds Quick(double? windowMm, double observedUm) => new(layout, profile, errors, windowMm, observedUm, shelf);

    /// <summary>A face as it lay free; null without a set-up or where it can't bend.</summary>
    public static FaceFigures? OfFree(PooledSweep? face, TrialShelf shelf)
        => CanBend(face) && face!.Errors is { } errors ? new FaceFigures(face.Profile, errors, shelf.Free(face.Profile), shelf) : null;

    /// <summary>Two positions always lie on a line.</summary>
    public static bool CanBend(PooledSweep? face) => face is not null && face.Profile.PositionsMm.Distinct().Take(3).Count() == 3;
}
