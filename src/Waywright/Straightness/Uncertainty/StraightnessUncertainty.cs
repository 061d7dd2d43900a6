using System;
using System.Collections.Generic;
using System.Linq;
using System.Threading;

namespace Waywright;

/// <summary>The figures of a profile and how sure they are, from simulated errors.</summary>
/// <remarks>
/// Each trial draws e_i = u_i g_i + Σ shapes x draw; a scatter known from few repeats is drawn wider by sqrt(nu / chi-squared). The same seed gives the same
/// figures for any number of threads.
/// </remarks>
public sealed record StraightnessUncertainty
{
    /// <summary>Numbers kept of simulated residuals: long profiles get fewer trials.</summary>
    private const int MostNumbers = 8_000_000;
    internal const int FewestTrials = 1000;

    // Draws of their own.
    private const ulong BetweenSeed = 0x9E3779B97F4A7C15;

    private readonly ErrorTrials _trials;

    private StraightnessUncertainty(Profile profile, ErrorTrials trials, ulong seed, IReadOnlyList<UncertainFigure> figures, IReadOnlyList<double> contactShares)
        => (Profile, _trials, Seed, Figures, ContactShares) = (profile, trials, seed, figures, contactShares);

    /// <summary>The profile as measured.</summary>
    public Profile Profile { get; }

    /// <summary>What its heights are uncertain by.</summary>
    public ProfileErrors Errors => _trials.Errors.Stated;

    /// <summary>Simulations that were made.</summary>
    public int Trials => _trials.Trials;

    /// <summary>Seed of their random numbers.</summary>
    public ulong Seed { get; }

    /// <summary>STRt, STRp, STRv and STRq about each line.</summary>
    public IReadOnlyList<UncertainFigure> Figures { get; }

    /// <summary>For each station the share of simulations, errors added to the heights as measured, in which it touches the minimum zone.</summary>
    public IReadOnlyList<double> ContactShares { get; }

    /// <summary>
    /// Where it comes from, largest first: for each input the widest comparison of three stations that one standard uncertainty of it can move, um
    /// (STRt about the minimum zone). The shapes of a guide, and those of a dial, are one line.
    /// </summary>
    public IReadOnlyList<UncertaintyComponent> Budget => ErrorBudget.Of(new ZoneFigure(_trials.Stations), _trials.Errors);

    /// <summary>Works out every figure's bounds.</summary>
    /// <param name="profile">Three stations or more at different positions.</param>
    /// <param name="errors">What its heights are uncertain by, one value for each station.</param>
    /// <param name="trials">Simulations wanted, 1,000 or more; profiles of more than 8,000,000 / trials stations get fewer, at least 1,000.</param>
    /// <param name="seed">Of the random numbers.</param>
    /// <param name="cancel">Stops it.</param>
    /// <exception cref="ArgumentException">Errors of another number of stations, or a profile of two positions.</exception>
    /// <exception cref="ArgumentOutOfRangeException">Fewer than 1,000 trials.</exception>
    /// <exception cref="OperationCanceledException">It was stopped.</exception>
    public static StraightnessUncertainty Of(Profile profile, ProfileErrors errors, int trials = 20_000, ulong seed = 1, CancellationToken cancel = default)
    {
        var drawn = Draw(profile, errors, trials, seed, cancel);
        var figures = Array.ConvertAll(new FigureSet(profile, drawn, cancel).All(), f => f.Complete());
        return new StraightnessUncertainty(profile, drawn, seed, FixedList<UncertainFigure>.Own(figures), FixedList<double>.Own(ContactTrials.Shares(profile, drawn, cancel)));
    }

    /// <summary>The figure asked for.</summary>
    /// <param name="line">About which line.</param>
    /// <param name="parameter">Which figure.</param>
    public UncertainFigure Of(ReferenceLineKind line, StraightnessParameter parameter = StraightnessParameter.STRt) => Figures.First(f => f.Line == line && f.Parameter == parameter);

    /// <summary>The worst short stretch (see <see cref="LocalStraightness"/>) with its own floor and bounds; null when no window holds 4 stations.</summary>
    /// <param name="windowMm">Length of the window, mm, above 0.</param>
    /// <param name="cancel">Stops it.</param>
    public UncertainFigure? Local(double windowMm, CancellationToken cancel = default) => new FigureSet(Profile, _trials, cancel).Local(windowMm)?.Complete();

    /// <summary>Equal when it came from the same profile, errors, trials and seed.</summary>
    public bool Equals(StraightnessUncertainty? other)
        => other is not null && Profile.Equals(other.Profile) && Errors.Equals(other.Errors) && Trials == other.Trials && Seed == other.Seed;

    /// <inheritdoc/>
    public override int GetHashCode() => HashCode.Combine(Profile, Errors, Trials, Seed);

    /// <summary>Only what grading asks for: figures of one set of trials.</summary>
    internal static FigureSet SetOf(Profile profile, HeightErrors errors, int trials, ulong seed, CancellationToken cancel)
    {
        var drawn = Trial(profile, errors, trials, seed, cancel);
        return new FigureSet(profile, drawn, cancel, errors.Between.Count == 0 ? null : ErrorTrials.Draw(drawn.Stations, errors.OfBetween(), drawn.Trials, seed ^ BetweenSeed, cancel));
    }


    private static ErrorTrials Draw(Profile profile, ProfileErrors errors, int trials, ulong seed, CancellationToken cancel)
    {
        ArgumentNullException.ThrowIfNull(profile);
        ArgumentNullException.ThrowIfNull(errors);
        ErrorInputs.CheckFit(profile, errors);
        return Trial(profile, errors, trials, seed, cancel);
    }

    private static ErrorTrials Trial(Profile profile, HeightErrors errors, int trials, ulong seed, CancellationToken cancel)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(trials, FewestTrials);
        if (profile.PositionsMm.Distinct().Take(3).Count() < 3)
            throw new ArgumentException($"'{profile.Name}' has two positions: they always lie on a line, so nothing can be told of straightness.", nameof(profile));
        var stations = new PreparedStations(profile.Positions);
        return ErrorTrials.Draw(stations, errors, Math.Max(FewestTrials, Math.Min(trials, MostNumbers / stations.Padded)), seed, cancel);
    }
}
