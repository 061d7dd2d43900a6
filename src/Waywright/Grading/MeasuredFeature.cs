using System;

namespace Waywright;

/// <summary>Why a feature could not be judged, and what would help.</summary>
internal sealed record NotJudged(string Why, string Remedy);

/// <summary>A figure of a rail as read and, with a set-up, with its bounds; these are simulated only where a decision or somebody asks for them.</summary>
/// <param name="feature">One of <see cref="RailFeature"/>.</param>
/// <param name="read">As read, um, or % for the drag; null when it could not be judged.</param>
/// <param name="face">The face that it is a figure of; null when not swept.</param>
internal sealed class MeasuredFeature(string feature, double? read, PooledSweep? face)
{
    private readonly WeakReference<UncertainFigure?> _figure = new(null);
    private UncertainFigure? _kept;
    private double? _standardUncertainty;
    private UncertainFigure? _deciding;
    private (QuickBounds? Bounds, bool IsKnown) _quick;

    public string Feature => feature;

    public double? Read => read;

    public PooledSweep? Face => face;

    /// <summary>The heights that it is a figure of, where these are not the face as swept: the top as its screws will hold it.</summary>
    public Func<Profile>? Predicted { get; init; }

    /// <summary>Length of the window of a short stretch, mm; null for the whole length.</summary>
    public double? WindowMm { get; init; }

    /// <summary>What it is simulated from; null without a set-up, or where there is no figure.</summary>
    public FaceFigures? Source { get; init; }

    /// <summary>The figure out of what it is simulated from.</summary>
    public Func<FaceFigures, UncertainFigure?> Pick { get; init; } = _ => null;

    /// <summary>The bounds that need no trials of their own; null where none are sound.</summary>
    public Func<FaceFigures, double, QuickBounds?> Quick { get; init; } = (figures, um) => figures.Quick(null, um);

    /// <summary>Why there is no figure; of no meaning where there is one, or where the face was not swept.</summary>
    public NotJudged? Missing { get; init; }

    /// <summary>The least that is proven of it where it has no bounds: a limit below it is one that it is beyond. The figure as read when not given.</summary>
    public double? Proven { get; init; }

    /// <summary>What would settle it where passes of a dial can't.</summary>
    public string? Remedy { get; init; }

    /// <summary>What it was read with, as a sentence names it.</summary>
    public string? With { get; init; }

    /// <summary>Whether it has bounds, without simulating them.</summary>
    public bool IsBounded => Source is not null && read is not null;

    /// <summary>With its bounds; null without a set-up. The same whenever it is asked for; in a large batch only the last ones are kept, as thousands of rails have no room for their trials.</summary>
    public UncertainFigure? Figure
    {
        get
        {
            if (!IsBounded)
                return null;
            if (!_figure.TryGetTarget(out var figure))
            {
                Simulations++;
                _figure.SetTarget(figure = Source!.Hold(Pick(Source)!.Complete()));
                _standardUncertainty ??= figure.StandardUncertaintyUm;
            }

            _kept = Source!.IsKept ? figure : null;
            return figure;
        }
    }

    /// <summary>Of the figure with its bounds, um: kept once it was worked out; null without a set-up.</summary>
    public double? StandardUncertaintyUm => _standardUncertainty ?? Figure?.StandardUncertaintyUm;

    /// <summary>How often its figure was simulated.</summary>
    public int Simulations { get; private set; }

    /// <summary>Whether it is within a limit: as read, or by its upper bound.</summary>
    public bool IsWithin(double limit, double level)
    {
        if (!IsBounded || !(read <= limit))
            return read <= limit;
        return Bounds?.IsWithin(limit, level) == true || Deciding.IsWithin(limit, level);
    }

    /// <summary>Whether it is proven to be beyond a limit.</summary>
    public bool IsBeyond(double limit, double level)
    {
        if (!IsBounded)
            return (Proven ?? read) > limit;
        if (!(read > limit))
            return false;
        return Bounds?.IsBeyond(limit, level) == true || (Deciding.NoiseFloorUm <= limit && Deciding.LowerBoundUm(level) > limit);
    }

    /// <summary>Whether the same set-up reads more than the limit on a perfectly straight rail in 5 of 100 sweeps.</summary>
    public bool IsRefused(double limit) => IsBounded && !(Bounds?.FloorUm <= limit) && Deciding.NoiseFloorUm > limit;

    /// <summary>Its share of a limit.</summary>
    public double? ShareOf(double limit, double level) => (Figure?.UpperBoundUm(level) ?? read) / limit;

    /// <summary>Lets go of what was simulated for a decision.</summary>
    public void Release() => (_deciding, _quick) = (null, default);

    private QuickBounds? Bounds => (_quick = _quick.IsKnown ? _quick : (Quick(Source!, read!.Value), true)).Bounds;

    // Only the parts that a decision takes are simulated.
    private UncertainFigure Deciding => _deciding ??= Pick(Source!)!;
}
