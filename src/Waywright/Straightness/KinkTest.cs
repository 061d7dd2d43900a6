using System;
using System.Globalization;
using System.Linq;
using System.Threading;

namespace Waywright;

/// <summary>
/// Whether a profile is bent at one place, as a rail is that was pressed over an edge: z = smooth polynomial + angle (x - knee)+, against the smooth polynomial
/// alone. Gives the place, the angle, and the chance that scatter alone makes some knee stand out as much. Smooth shapes are for <see cref="ShapeModes"/>.
/// </summary>
/// <remarks>
/// <para>Statistic: the largest, over knees at and between stations, of |angle| / sqrt(s²/q + shapes), s the scatter about the bent line, q the square of the
/// knee's corner that no polynomial describes. A wavy or rough surface has a large s, so it is not called bent.
/// Chance: share of trials, with heights drawn from the errors alone, whose own largest is no smaller, (1 + r) / (1 + trials) (Davison and Hinkley, Bootstrap
/// methods and their application, 1997, 4.2; from memory): that knees were tried everywhere is in it. Trials scatter as much as the residuals do where that is more
/// than the errors say.</para>
/// <para>The smooth part has order 4 unless told otherwise: bow and S of the rail, and the W that its own weight makes on two supports. With order 2 an S is taken for a bend.
/// False alarms at the level of 5 % in 2,000 simulated sweeps of 14 stations: 4 to 6 %, surface rougher than the errors say or not; with 9 stations, the fewest, 5 to 7 %, and up to 11 % where it is rougher.</para>
/// <para>Position and angle are those of least squares. Angles that are barely found read high: small ones that scatter made smaller were not found.</para>
/// </remarks>
public sealed record KinkTest
{
    /// <summary>Chance up to which a bend counts as found (common practice, no source): of twenty straight faces one is then called bent.</summary>
    public const double Level = 0.05;

    private const double Coverage = 0.95;
    private const int LowestOrder = 2;
    private const int HighestOrder = 4;
    private const int FewestTrials = 100;
    private const int MostTrials = 10_000_000;

    private readonly ModeShapes _smooth;
    private readonly FixedList<double> _bentCoefficients;
    private readonly FixedList<double> _smoothCoefficients;

    private KinkTest(Profile profile, ProfileErrors? errors, KinkModel model, KinkFit fit, KinkPeak peak, double chance, int trials, ulong seed)
    {
        (Profile, Errors, SmoothOrder) = (profile, errors, model.SmoothOrder);
        (Statistic, ChanceOfNoise, Trials, Seed) = (peak.Statistic, chance, trials, seed);
        _smooth = model.Smooth;
        _bentCoefficients = FixedList<double>.Own(fit.Bent);
        _smoothCoefficients = FixedList<double>.Own(fit.SmoothAlone);
        var shown = model.ScaleOf(fit.Squares);
        var isAsKnown = model.IsScaleKnown && shown <= 1;
        var scale = isAsKnown ? 1 : shown;
        var degrees = isAsKnown ? errors!.StationDegreesOfFreedom : model.DegreesOfFreedom;
        var (angle, knee) = fit.Uncertainties();
        var perM = 1000 / model.Axis.UnitMm;
        var scatter = ErrorInputs.Scatter("scatter of the readings", degrees);
        AngleUmPerM = ErrorInputs.Figure(perM * fit.Angle, [(scatter, perM * scale * angle)], errors, shape => perM * fit.AngleOf(shape.Heights));
        PositionMm = model.Axis.Mm(fit.Knee);
        (FromMm, ToMm) = Interval(profile, model, fit, scale, CoverageFactor.Of(Coverage, degrees), knee);
    }

    /// <summary>What was measured.</summary>
    public Profile Profile { get; }

    /// <summary>What its heights are uncertain by; null where that was not given, and residuals alone tell.</summary>
    public ProfileErrors? Errors { get; }

    /// <summary>Degree of the smooth polynomial.</summary>
    public int SmoothOrder { get; }

    /// <summary>Where the best single bend is, mm.</summary>
    public double PositionMm { get; }

    /// <summary>Lower end of the 95 % interval of the position, mm, for a bend that is there: knees whose bent line fits nearly as well (Student's t).</summary>
    public double FromMm { get; }

    /// <summary>Upper end of that interval, mm.</summary>
    public double ToMm { get; }

    /// <summary>Change of slope at the bend, um/m (1,000 are 1 mrad, or 1 um/mm): below zero the bend stands out towards the dial, above zero it is a hollow.</summary>
    public Uncertain AngleUmPerM { get; }

    /// <summary>|angle| over its standard uncertainty, at the knee where that is largest.</summary>
    public double Statistic { get; }

    /// <summary>The chance that errors alone show a bend as clear as this somewhere along the rail, not below 1/(1 + trials).</summary>
    public double ChanceOfNoise { get; }

    /// <summary>Number of trials behind the chance.</summary>
    public int Trials { get; }

    /// <summary>Seed of the trials.</summary>
    public ulong Seed { get; }

    /// <summary>Whether the chance is at most <see cref="Level"/>.</summary>
    public bool IsFound => ChanceOfNoise <= Level;

    /// <summary>Looks for the best single bend.</summary>
    /// <param name="profile">As measured, with stations at five more positions than the smooth order: three on either side of any bend, the bend counted.</param>
    /// <param name="errors">What its heights are uncertain by, if known: scatter of either every station or none.</param>
    /// <param name="seed">Any; the result names it.</param>
    /// <param name="smoothOrder">2 to 4.</param>
    /// <param name="trials">100 to 10 million.</param>
    /// <param name="cancel">Ends the trials.</param>
    /// <exception cref="ArgumentException">A filtered profile, too few different positions, errors of another number of stations, or a station without scatter among others.</exception>
    /// <exception cref="ArgumentOutOfRangeException">An order or a number of trials outside its range.</exception>
    /// <exception cref="OperationCanceledException">Cancelled.</exception>
    public static KinkTest Of(Profile profile, ProfileErrors? errors, ulong seed, int smoothOrder = 4, int trials = 10_000, CancellationToken cancel = default)
    {
        ArgumentNullException.ThrowIfNull(profile);
        Check(profile, errors, smoothOrder, trials);
        var model = new KinkModel(profile, errors, smoothOrder);
        var peak = model.Highest(profile.Heights, new double[profile.Count]);
        var chance = KinkTrials.Chance(model, errors, peak, trials, seed, cancel);
        return new KinkTest(profile, errors, model, KinkFit.Of(model, profile.Heights), peak, chance, trials, seed);
    }

    /// <summary>Height of the bent line at a position, um.</summary>
    public double BentHeightUm(double xMm)
    {
        var axis = new UnitAxis(Profile);
        return Polynomial(_bentCoefficients, axis.At(xMm)) + (_bentCoefficients[^1] * Math.Max(0, axis.At(xMm) - axis.At(PositionMm)));
    }

    /// <summary>Height of the smooth line without a bend, um.</summary>
    public double SmoothHeightUm(double xMm) => Polynomial(_smoothCoefficients, new UnitAxis(Profile).At(xMm));

    /// <summary>Equal when the same was asked of equal profiles and errors.</summary>
    public bool Equals(KinkTest? other)
        => other is not null && Profile.Equals(other.Profile) && Equals(Errors, other.Errors) && (SmoothOrder, Trials, Seed) == (other.SmoothOrder, other.Trials, other.Seed);

    /// <inheritdoc/>
    public override int GetHashCode() => HashCode.Combine(Profile, Errors, SmoothOrder, Trials, Seed);

    private double Polynomial(FixedList<double> coefficients, double t)
    {
        Span<double> values = stackalloc double[HighestOrder + 1];
        values = values[..(SmoothOrder + 1)];
        _smooth.Values(t, values);
        return Householder.Product(values, coefficients.AsSpan());
    }

    // Of two intervals the wider: by the sums of squares, right for a faint bend, and by the slope of the model, right for a sharp one that lies between two knees of the grid.
    private static (double From, double To) Interval(Profile profile, KinkModel model, KinkFit fit, double scale, double factor, double knee)
    {
        var allowed = fit.Squares + (factor * factor * scale * scale);
        var left = model.SquaresLeft(profile.Heights);
        var within = model.Knees.Where((_, k) => left[k] <= allowed).Append(fit.Knee).ToArray();
        var reach = factor * scale * knee;
        var (from, to) = (Math.Min(within.Min(), fit.Knee - reach), Math.Max(within.Max(), fit.Knee + reach));
        return (model.Axis.Mm(Math.Max(-1, from)), model.Axis.Mm(Math.Min(1, to)));
    }

    private static void Check(Profile profile, ProfileErrors? errors, int smoothOrder, int trials)
    {
        ErrorInputs.CheckFit(profile, errors);
        if (profile.IsFiltered)
            throw new ArgumentException($"'{profile.Name}' is filtered, which rounds a bend off: test the profile as it was measured.", nameof(profile));
        if (smoothOrder is < LowestOrder or > HighestOrder)
            throw new ArgumentOutOfRangeException(nameof(smoothOrder), smoothOrder, "A smooth order from 2 to 4 is possible.");
        if (trials is < FewestTrials or > MostTrials)
            throw new ArgumentOutOfRangeException(nameof(trials), trials, "From 100 to 10 million trials are possible.");
        var positions = profile.PositionsMm.Distinct().Count();
        var fewest = KinkModel.FewestPositions(smoothOrder);
        if (positions < fewest)
            throw new ArgumentException(string.Create(CultureInfo.InvariantCulture, $"A bend beside a smooth shape of order {smoothOrder} needs stations at {fewest} different positions, not {positions}."), nameof(profile));
        if (errors is not null && errors.StationUm.Any(u => u > 0) && errors.StationUm.Any(u => u == 0))
            throw new ArgumentException("Some stations have no uncertainty of their own: give one to every station, or to none.", nameof(errors));
    }
}
