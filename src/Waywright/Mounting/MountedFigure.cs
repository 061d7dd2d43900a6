using System;
using System.Threading;
using System.Threading.Tasks;

namespace Waywright;

/// <summary>
/// How sure a predicted residual T is. Errors e of the free top, and what it may be between the stations, move it by |T(z +/- e) - T(z)|, and on a straight rail by T(+/- e), each with the base's
/// push solved anew: the interval is T -/+ a quantile of the largest of these. Nearly every rail touches its base somewhere between the screws, so nothing simpler, as a linear map, is in use;
/// docs/coverage-mounted.md has how often the interval held the truth in simulation.
/// </summary>
internal sealed class MountedFigure
{
    // Contact is solved four times in each.
    private const int Trials = 2000;
    private const ulong Seed = 1;

    // On a rigid base the rail's own makes no difference, N m2.
    private const double AnyStiffness = 1;

    private readonly MountedMap _map;
    private readonly PreparedStations _stations;
    private readonly int[] _screws;
    private readonly double _share;
    private readonly bool _orHeld;
    private readonly double[] _free;
    private readonly double[] _gap;
    private readonly double _residual;

    /// <param name="given">Rail, screws, base.</param>
    /// <param name="map">To stations, holes and ends, without a screw tightened: the free top.</param>
    /// <param name="orHeld">Whether what the screws alone leave counts where it is more.</param>
    private MountedFigure(MountingCase given, MountedMap map, bool orHeld)
    {
        (_map, _share, _orHeld, _stations) = (map, given.BaseShare, orHeld, new PreparedStations(map.Places));
        _screws = [.. Array.ConvertAll([.. given.Screws.ScrewsMm], x => Array.BinarySearch(map.Places, x))];
        (_free, _gap) = (new double[map.Places.Length], new double[map.Places.Length]);
        given.FreeCurve.Along(map.Places, _free);
        given.BaseCurve?.Along(map.Places, _gap);
        for (var i = 0; i < _gap.Length; i++)
            _gap[i] = _free[i] - _gap[i];
        _residual = Residual(_free, _gap);
    }

    /// <param name="given">Rail, screws, base.</param>
    /// <param name="residualUm">As predicted.</param>
    /// <param name="errors">Of the free top.</param>
    /// <param name="trials">Simulations.</param>
    /// <param name="cancel">Stops it.</param>
    public static UncertainFigure Of(MountingCase given, double residualUm, ProfileErrors errors, int trials = Trials, CancellationToken cancel = default)
        => Of(given, residualUm, errors, orHeld: false, trials, Seed, cancel);

    /// <summary>The larger of what is left with the base's push and what the screws alone leave, on a flat and rigid base.</summary>
    /// <param name="free">The free top.</param>
    /// <param name="screws">The screws.</param>
    /// <param name="residualUm">As predicted, at stations, holes and ends.</param>
    /// <param name="errors">Of the free top.</param>
    /// <param name="trials">Simulations.</param>
    /// <param name="seed">Of their random numbers.</param>
    /// <param name="cancel">Stops them.</param>
    public static UncertainFigure OfTop(Profile free, ScrewPattern screws, double residualUm, ProfileErrors errors, int trials, ulong seed, CancellationToken cancel)
        => Of(new MountingCase(free, screws, AnyStiffness, null, null, null), residualUm, errors, orHeld: true, trials, seed, cancel);

    private static UncertainFigure Of(MountingCase given, double residualUm, ProfileErrors errors, bool orHeld, int trials, ulong seed, CancellationToken cancel)
    {
        var own = new Lazy<MountedFigure>(() => new MountedFigure(given, new MountedMap([.. given.Free.PositionsMm], given.Screws, share: 0), orHeld));
        return new UncertainFigure(ReferenceLineKind.MinimumZone, StraightnessParameter.STRt, FigureTrials.Guaranteed(residualUm, () => own.Value.Noise(given, errors, trials, seed, cancel)));
    }

    private double[] Noise(MountingCase given, ProfileErrors errors, int trials, ulong seed, CancellationToken cancel)
    {
        var mapped = _map.Errors(given.Free.Heights, errors);
        var drawn = ErrorTrials.Draw(_stations, HeightErrors.Mapped(errors, _map.Columns, FixedList<ErrorShape>.Copy([.. mapped.Shapes, .. mapped.Between]), [], 0), trials, seed, cancel);
        var noise = new double[trials];
        Parallel.For(0, trials, new ParallelOptions { CancellationToken = cancel }, t => noise[t] = Moved(drawn.All(t)));
        RadixSort.Sort(noise);
        return noise;
    }

    // Both signs, as the interval reaches to both sides.
    private double Moved(ReadOnlySpan<double> errors)
    {
        var n = _free.Length;
        var (most, free, gap) = (0.0, new double[n], new double[n]);
        foreach (var sign in (ReadOnlySpan<double>)[1, -1])
        {
            for (var i = 0; i < n; i++)
                (free[i], gap[i]) = (_free[i] + (sign * errors[i]), _gap[i] + (sign * errors[i]));
            most = Math.Max(most, Math.Abs(Residual(free, gap) - _residual));
            for (var i = 0; i < n; i++)
                free[i] = sign * errors[i];
            most = Math.Max(most, Residual(free, [.. free]));
        }

        return most;
    }

    // T of f - r (d - w), with w what contact leaves open.
    private double Residual(double[] free, double[] gap)
    {
        var contact = new ContactSearch(_map.Places, _screws, gap);
        var held = 0.0;
        if (_orHeld)
        {
            contact.Solve(withBase: false);
            held = Zone(free, gap, contact);
        }

        contact.Solve(withBase: true);
        return Math.Max(held, Zone(free, gap, contact));
    }

    private double Zone(double[] free, double[] gap, ContactSearch contact)
    {
        var mounted = new double[free.Length];
        for (var i = 0; i < mounted.Length; i++)
            mounted[i] = free[i] - (_share * (gap[i] - contact.Open[i]));
        return ProfileKernel.Solve(_map.Places, mounted, out _).Width;
    }
}
