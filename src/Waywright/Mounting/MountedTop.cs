using System;
using System.Linq;

namespace Waywright;

/// <summary>
/// A top as its screws alone hold it on a flat base, and how sure that is. The base's push between the screws leaves less as a rule and is then left out, as a rail whose
/// top is wavy over a flat bottom is not pressed flat; where it would leave more, what it leaves counts.
/// </summary>
internal sealed class MountedTop
{
    /// <summary>
    /// By how much more than errors alone read contact can move the residual: 1.46 was the most of 1,500 simulated rails screwed down at every third hole, 0.34 at every other
    /// (docs/methods.md).
    /// </summary>
    public const double ContactFactor = 1.5;

    private readonly MountedMap _map;
    private readonly double? _pressedUm;
    private readonly double[]? _pressed;

    public MountedTop(Profile free, ProfileErrors? errors, ScrewPattern screws, MountedMap map)
    {
        (_map, Screws) = (map, screws);
        Held = new Profile(map.Places, map.Mounted(free.Heights), free.Name);
        Errors = errors is null ? null : map.Errors(free.Heights, errors);
        HeldUm = Zone(Held.Heights);
        (_pressed, _pressedUm) = Pressed();
    }

    public ScrewPattern Screws { get; }

    /// <summary>As the screws alone hold it, at stations, holes and ends.</summary>
    public Profile Held { get; }

    /// <summary>STRt of that about the minimum zone, um.</summary>
    public double HeldUm { get; }

    /// <summary>What counts, at the same places.</summary>
    public Profile Counting => _pressed is null ? Held : new Profile(_map.Places, _pressed, Held.Name);

    /// <summary>What counts, um.</summary>
    public double ResidualUm => _pressedUm ?? HeldUm;

    /// <summary>Length of the window for short stretches: two pitches of the holes.</summary>
    public double WindowMm => 2 * PitchOf(Screws);

    /// <summary>The largest STRt within that window, um; null where it holds too few places.</summary>
    public double? LocalUm => Held.Local(WindowMm)?.STRtUm;

    /// <summary>What the heights of <see cref="Held"/> are uncertain by; null where no set-up was given.</summary>
    public HeightErrors? Errors { get; }

    /// <summary>By how many times what errors alone read they can move the figure: 1, or more where the base's push counts.</summary>
    public double Factor => _pressedUm is null ? 1 : ContactFactor;

    /// <summary>Why a free top can't be laid along its screws, or null.</summary>
    public static string? Problem(Profile free, ScrewPattern screws) => StationCurve.Problem(free, screws, "The top", within: true);

    /// <summary>The widest stretch without a station between two of them.</summary>
    public static (double FromMm, double ToMm) WidestGap(Profile free)
        => free.PositionsMm.Zip(free.PositionsMm.Skip(1)).MaxBy(gap => gap.Second - gap.First);

    public static MountedTop Of(Profile free, ProfileErrors? errors, ScrewPattern screws) => new(free, errors, screws, new MountedMap(free.Positions.ToArray(), screws));

    public static double PitchOf(ScrewPattern screws) => screws.HolesMm[1] - screws.HolesMm[0];

    /// <summary>What counts with its bounds.</summary>
    /// <param name="set">Trials of the errors of <see cref="Held"/>.</param>
    public UncertainFigure Figure(FigureSet set) => _pressedUm is { } pressed
        ? new(ReferenceLineKind.MinimumZone, StraightnessParameter.STRt, FigureTrials.Guaranteed(pressed, () => Array.ConvertAll(set.ZoneTrials.Sorted, n => ContactFactor * n), set.ZoneTrials))
        : set.Zone(StraightnessParameter.STRt);

    // None where the base leaves no more than the screws alone.
    private (double[]? Heights, double? Um) Pressed()
    {
        var places = _map.Places;
        int[] screws = [.. Screws.ScrewsMm.Select(x => Array.BinarySearch(places, x))];
        var contact = new ContactSearch(places, screws, Held.Heights.ToArray());
        contact.Solve(withBase: true);
        var pressed = Zone(contact.Open);
        return pressed > HeldUm ? (contact.Open.ToArray(), pressed) : (null, null);
    }

    private double Zone(ReadOnlySpan<double> heights) => ProfileKernel.Solve(_map.Places, heights, out _).Width;
}
