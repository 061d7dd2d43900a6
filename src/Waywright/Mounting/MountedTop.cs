using System;
using System.Linq;
using System.Threading;

namespace Waywright;

/// <summary>
/// A top as its screws alone hold it on a flat base, and how sure that is. The base's push between the screws leaves less as a rule and is then left out, as a rail whose
/// top is wavy over a flat bottom is not pressed flat; where it would leave more, what it leaves counts. Screws in every or every other hole leave the push no room for that.
/// </summary>
internal sealed class MountedTop
{
    // Wider than every other hole, or an end that stands over by more than a pitch: the base's push may leave more than the screws (docs/coverage-mounted.md).
    private const double MostPitches = 2;
    private const double MostFreePitches = 1;

    // Contact is solved four times in each.
    private const int MostTrials = 2000;

    private readonly Profile _free;
    private readonly MountedMap _map;
    private readonly double? _pressedUm;
    private readonly double[]? _pressed;

    public MountedTop(Profile free, ProfileErrors? errors, ScrewPattern screws, MountedMap map)
    {
        (_free, _map, Screws) = (free, map, screws);
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

    /// <summary>Whether the base's push may decide the figure: where it does as read, or where the screws are so far apart that it may by the true heights.</summary>
    public bool MayBePressed => _pressedUm is not null || Screws.WidestGapMm > (MostPitches * PitchOf(Screws)) + MountedMap.ClosestMm
        || Math.Max(Screws.DotEndFreeMm, Screws.FarEndFreeMm) > (MostFreePitches * PitchOf(Screws)) + MountedMap.ClosestMm;

    /// <summary>Why a free top can't be laid along its screws, or null.</summary>
    public static string? Problem(Profile free, ScrewPattern screws) => StationCurve.Problem(free, screws, "The top", within: true);

    /// <summary>The widest stretch without a station between two of them.</summary>
    public static (double FromMm, double ToMm) WidestGap(Profile free)
        => free.PositionsMm.Zip(free.PositionsMm.Skip(1)).MaxBy(gap => gap.Second - gap.First);

    public static MountedTop Of(Profile free, ProfileErrors? errors, ScrewPattern screws) => new(free, errors, screws, new MountedMap(free.Positions.ToArray(), screws));

    public static double PitchOf(ScrewPattern screws) => screws.HolesMm[1] - screws.HolesMm[0];

    /// <summary>What counts with its bounds; where the base may push it, from trials that solve contact anew, as no bound through the screws' map is then sound.</summary>
    /// <param name="set">Trials of the errors of <see cref="Held"/>; not asked for where contact is solved.</param>
    /// <param name="trials">Simulations of contact, at most.</param>
    /// <param name="seed">Of their random numbers.</param>
    /// <param name="cancel">Stops them.</param>
    public UncertainFigure Figure(Func<FigureSet> set, int trials, ulong seed, CancellationToken cancel = default)
        => MayBePressed
            ? MountedFigure.OfTop(_free, Screws, ResidualUm, Errors!.Stated, Math.Min(trials, MostTrials), seed, cancel)
            : set().Zone(StraightnessParameter.STRt);

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
