using System.Collections.Generic;
using System.Threading;

namespace Waywright;

/// <summary>
/// Whether a dial and a set-up can decide a limit on STRt about the minimum zone, before anything is swept; and if not, what would.
/// A limit is decided when a rail with a bow of half of it is found within it (upper bound of <see cref="UncertainFigure"/> at 95 %, one-sided) with a chance of
/// <see cref="WantedChance"/> or more. So the smallest decidable limit L solves <c>P(upper bound of T(bow of L/2 + e) &lt;= L) = 0.9</c>, e simulated.
/// </summary>
/// <remarks>
/// That a rail at half the limit should pass in nine of ten sweeps is common practice, no source. Passes that settle it follow
/// <c>K = ceil(s² / (((limit - estimate) / k)² - u_sys²))</c> with the estimate at half the limit and k from the simulation; where the divisor is not above 0, no number does.
/// Rounding to q is taken as everywhere else: u = max(s, q / sqrt 12) for one pass, s² / K + h / lays for more, with what repeating leaves of it in h.
/// </remarks>
public sealed record MeasuringPlan
{
    /// <summary>A rail at half a decidable limit is accepted with at least this chance.</summary>
    public const double WantedChance = 0.9;

    internal const int MostPasses = 500;

    internal MeasuringPlan(MeasuringPlanSweep sweep, double limitUm, bool isGuideKnown, ulong seed)
        => (Sweep, LimitUm, IsGuideKnown, Seed) = (sweep, limitUm, isGuideKnown, seed);

    /// <summary>The dial, in um.</summary>
    public Instrument Dial => Sweep.Dial;

    /// <summary>Length that is swept, mm.</summary>
    public double LengthMm => Sweep.LengthMm;

    /// <summary>Stations, evenly from end to end.</summary>
    public int Stations => Sweep.Stations;

    /// <summary>Passes in all, forward and back by turns.</summary>
    public int Passes => Sweep.Passes;

    /// <summary>How often the rail is laid down; passes are dealt out over the lays.</summary>
    public int Lays => Sweep.Lays;

    /// <summary>Straightness of the guide, um; null where it was left out of the plan, or isn't known.</summary>
    public double? GuideUm => Sweep.GuideUm;

    /// <summary>False: nobody knows how straight the guide is, so figures rank and pair rails and never grade them.</summary>
    public bool IsGuideKnown { get; }

    /// <summary>Limit on STRt that is to be decided, um.</summary>
    public double LimitUm { get; }

    /// <summary>Seed of the simulation.</summary>
    public ulong Seed { get; }

    /// <summary>95 % point of STRt of simulated error alone, um: a rail that reads no more can't be told from straight.</summary>
    public double NoiseFloorUm { get; internal init; }

    /// <summary>What a perfectly straight rail reads on average, um.</summary>
    public double StraightReadingUm { get; internal init; }

    /// <summary>The smallest limit that this plan decides, um, found to 0.5 %; null against an unknown guide, which decides none.</summary>
    public double? SmallestDecidableLimitUm { get; internal init; }

    /// <summary>Chance that a rail with a bow of half the limit is found within it at 95 %; null against an unknown guide.</summary>
    public double? ChanceHalfLimitAccepted { get; internal init; }

    /// <summary>Whether the plan decides the limit: the chance is high enough.</summary>
    public bool IsDecidable => ChanceHalfLimitAccepted >= WantedChance;

    /// <summary>Fewest passes in the same number of lays that decide; null: no number does, or the guide is unknown.</summary>
    public int? PassesNeeded { get; internal init; }

    /// <summary>Fewest passes that decide when the rail is laid anew, at a new stand height, before each: where passes alone don't; null where that doesn't either.</summary>
    public int? LaysNeeded { get; internal init; }

    /// <summary>The most the guide may be out of straight, um, for these passes to decide; null where even a perfect one is not enough.</summary>
    public double? LargestGuideUm { get; internal init; }

    /// <summary>
    /// What the figure of a rail at half the limit will be uncertain by, largest first: for each input the widest comparison of three stations that one standard
    /// uncertainty of it can move, um.
    /// </summary>
    public IReadOnlyList<UncertaintyComponent> Budget { get; internal init; } = FixedList<UncertaintyComponent>.Empty;

    /// <summary>What to do, then why.</summary>
    public string Verdict => MeasuringPlanText.Verdict(this);

    /// <summary>What to do if the plan decides; if not, what would.</summary>
    public string Next => MeasuringPlanText.Next(this);

    /// <summary>What was taken for granted.</summary>
    public IReadOnlyList<string> Assumptions => MeasuringPlanText.Assumptions(this);

    internal MeasuringPlanSweep Sweep { get; }

    /// <summary>The next finer reading or dial that decides where passes don't.</summary>
    internal Instrument? FinerDial { get; init; }

    /// <summary>Plans with a dial of which only the scale and, perhaps, the repeatability is known.</summary>
    /// <param name="divisionUm">One division, um, above 0.</param>
    /// <param name="readTo"><c>whole</c>, <c>half</c> or <c>tenth</c> of a division.</param>
    /// <param name="lengthMm">Length that is swept, mm, above 0.</param>
    /// <param name="limitUm">Limit on STRt, um, above 0.</param>
    /// <param name="stations">4 to 500; by default so many that they are about 25 mm apart, at least 8.</param>
    /// <param name="passes">1 to 500 in all.</param>
    /// <param name="lays">1 up to the passes.</param>
    /// <param name="guideUm">Straightness of the guide, um, 0 or more; null leaves it out.</param>
    /// <param name="isGuideKnown">False where the guide's straightness isn't known.</param>
    /// <param name="repeatabilityUm">Standard deviation of repeated readings as they are read, um; by default repeats are taken to be equal, so that rounding is all there is.</param>
    /// <param name="trials">Simulated sweeps, 1,000 or more.</param>
    /// <param name="seed">Of the simulation.</param>
    /// <param name="cancel">Stops it.</param>
    /// <exception cref="InputException">A value is outside its range; all that are, are listed.</exception>
    public static MeasuringPlan Of(
        double divisionUm,
        string readTo,
        double lengthMm,
        double limitUm,
        int? stations = null,
        int passes = 1,
        int lays = 1,
        double? guideUm = null,
        bool isGuideKnown = true,
        double? repeatabilityUm = null,
        int trials = 2000,
        ulong seed = 1,
        CancellationToken cancel = default)
        => MeasuringPlanInput.Checked(divisionUm, readTo, repeatabilityUm, lengthMm, limitUm, stations, passes, lays, guideUm, isGuideKnown, trials, seed, cancel);

    /// <summary>As the other, with a dial whose own errors are known: limits, retrace, repeatability.</summary>
    /// <param name="dial">In um.</param>
    /// <param name="lengthMm">Length that is swept, mm, above 0.</param>
    /// <param name="limitUm">Limit on STRt, um, above 0.</param>
    /// <param name="stations">4 to 500; by default so many that they are about 25 mm apart, at least 8.</param>
    /// <param name="passes">1 to 500 in all.</param>
    /// <param name="lays">1 up to the passes.</param>
    /// <param name="guideUm">Straightness of the guide, um, 0 or more; null leaves it out.</param>
    /// <param name="isGuideKnown">False where the guide's straightness isn't known.</param>
    /// <param name="trials">Simulated sweeps, 1,000 or more.</param>
    /// <param name="seed">Of the simulation.</param>
    /// <param name="cancel">Stops it.</param>
    /// <exception cref="InputException">A value is outside its range, or the dial is not in um; all that are wrong are listed.</exception>
    public static MeasuringPlan Of(
        Instrument dial,
        double lengthMm,
        double limitUm,
        int? stations = null,
        int passes = 1,
        int lays = 1,
        double? guideUm = null,
        bool isGuideKnown = true,
        int trials = 2000,
        ulong seed = 1,
        CancellationToken cancel = default)
        => MeasuringPlanInput.Checked(dial, lengthMm, limitUm, stations, passes, lays, guideUm, isGuideKnown, trials, seed, cancel);
}
