using System;
using System.Linq;
using UnitsNet;

namespace Waywright;

/// <summary>
/// Whether two mounted rails run parallel, from a differential sweep: the dial rides on the carriage of one rail (the guide of the set-up, <c>rail:A</c>) and reads a side of the
/// other. Straight line z = a + b x by least squares: b says which end to move and by how much, what is left of the readings says how uneven the distance is.
/// </summary>
/// <remarks>
/// The constant a is the dial's zero, so the distance itself stays unknown to the dial; a tape or caliper gives it, but can't see what this sees. What varies is the difference of both
/// rails: it doesn't say which of them is bent. Sideways only; a difference in height needs a sweep of the tops.
/// Readings of several passes have to come from one standing of the dial: b is the tilt between the rails and of the dial's own way alike. Where the dial, its arm or the carriage was set anew
/// between passes, each pass has a height and perhaps a tilt of its own: heights only widen the scatter, but a tilt of t um/m adds t to b as if the rails were askew, and passes of different
/// tilt give their mean, whose scatter about one line doesn't tell it. Pool such passes as a sweep first, compare the slopes of the passes, and sweep with the carriages changed over to see t.
/// b = Sum (x - mean x) z / Sum (x - mean x)2; with errors given its uncertainty is theirs, to JCGM 100:2008, 5.2; without, from the scatter about the line (H.3.2), n - 2 degrees of
/// freedom, which counts unevenness as noise. Checked by lines and figures worked out by hand.
/// </remarks>
public sealed record Parallelism
{
    private const double UmPerM = 1e6;
    private const double MmPerM = 1000;

    private Parallelism(Profile difference, Measured<Length> apart, bool dialBetween, ProfileErrors? errors, string guide, string moved)
    {
        (Difference, Apart, DialBetween, Errors, Guide, Moved) = (difference, apart, dialBetween, errors, guide, moved);
        var line = LineFit.Of(difference.PositionsMm, difference.HeightsUm);
        SlopeUmPerM = Slope(difference, errors, line);
        var awayPerM = dialBetween ? 1 : -1;
        MoveUm = awayPerM * (ToMm - FromMm) / MmPerM * SlopeUmPerM;
        var left = difference.PositionsMm.Zip(difference.HeightsUm, (x, z) => z - line.At(x)).ToArray();
        VariationUm = left.Max() - left.Min();
    }

    /// <summary>What was read: the moved rail against the guide, um over mm.</summary>
    public Profile Difference { get; }

    /// <summary>From rail to rail, by tape or caliper.</summary>
    public Measured<Length> Apart { get; }

    /// <summary>Whether the dial stands between the rails, touching the face that looks at the guide: readings then grow where the rails come closer.</summary>
    public bool DialBetween { get; }

    /// <summary>What the readings are uncertain by; null where not given.</summary>
    public ProfileErrors? Errors { get; }

    /// <summary>The rail whose carriage bore the dial.</summary>
    public string Guide { get; }

    /// <summary>The rail that was read, and that can be moved.</summary>
    public string Moved { get; }

    /// <summary>b, um for each m, in the dial's sign.</summary>
    public Uncertain SlopeUmPerM { get; }

    /// <summary>By how much to move the moved rail's end at <see cref="ToMm"/>, the other end staying: + away from the guide, - towards it, um.</summary>
    public Uncertain MoveUm { get; }

    /// <summary>Largest less smallest height about the line, um, noise included: what is left once the end is moved.</summary>
    public double VariationUm { get; }

    /// <summary>First station, mm.</summary>
    public double FromMm => Difference.PositionsMm[0];

    /// <summary>Last station, mm.</summary>
    public double ToMm => Difference.PositionsMm[^1];

    /// <summary>Whether the 95 % interval of <see cref="MoveUm"/> leaves 0 out.</summary>
    public bool IsOutOfParallel => MoveUm.Expanded() is var move && (move.Low > 0 || move.High < 0);

    /// <summary>The smallest difference between both ends' distances that <see cref="Apart"/>'s instrument would show with 95 %, um: 1.96 sqrt 2 u; 0 where no uncertainty was stated.</summary>
    public double TapeSeesUm => CoverageFactor.Of(0.95, Apart.Si.DegreesOfFreedom) * Math.Sqrt(2) * UmPerM * Apart.Si.StandardUncertainty;

    /// <summary>From a differential sweep.</summary>
    /// <param name="difference">Heights of the moved rail against the guide's carriage, at three stations or more.</param>
    /// <param name="apart">From rail to rail, above 0.</param>
    /// <param name="dialBetween">Whether the dial touches the face that looks at the guide; false for the far face. It decides which way to move.</param>
    /// <param name="errors">What the heights are uncertain by, if known.</param>
    /// <param name="guide">Name of the rail whose carriage bore the dial.</param>
    /// <param name="moved">Name of the rail that was read.</param>
    /// <exception cref="ArgumentException">Fewer than three stations, errors of another number of stations, an empty name, or both names alike.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The distance is 0 or negative.</exception>
    public static Parallelism Of(Profile difference, Measured<Length> apart, bool dialBetween, ProfileErrors? errors = null, string guide = "A", string moved = "B")
    {
        ArgumentNullException.ThrowIfNull(difference);
        ArgumentNullException.ThrowIfNull(apart);
        ArgumentException.ThrowIfNullOrWhiteSpace(guide);
        ArgumentException.ThrowIfNullOrWhiteSpace(moved);
        if (guide == moved)
            throw new ArgumentException($"Both rails are called '{guide}'.", nameof(moved));
        if (!(apart.Si.Value > 0))
            throw new ArgumentOutOfRangeException(nameof(apart), apart.ToString(), "The distance from rail to rail is above 0.");
        ErrorInputs.CheckFit(difference, errors);
        return new(difference, apart.AsInput("distance from rail to rail"), dialBetween, errors, guide, moved);
    }

    private static Uncertain Slope(Profile difference, ProfileErrors? errors, LineFit line)
    {
        if (errors is null)
            return Of(line.Slope, line.SlopeUncertainty, line.DegreesOfFreedom, "scatter about the line");
        var mean = difference.PositionsMm.Average();
        var sxx = difference.PositionsMm.Sum(x => (x - mean) * (x - mean));
        double[] weights = [.. difference.PositionsMm.Select(x => MmPerM * (x - mean) / sxx)];
        var scatter = ErrorInputs.Scatter("scatter of the readings", errors.StationDegreesOfFreedom);
        var effect = Math.Sqrt(weights.Zip(errors.StationUm, (w, s) => w * w * s * s).Sum());
        return ErrorInputs.Figure(MmPerM * line.Slope, [(scatter, effect)], errors, shape => weights.Zip(shape.HeightsUm, (w, z) => w * z).Sum());
    }

    private static Uncertain Of(double slope, double u, double degrees, string name)
        => Uncertain.Of(MmPerM * slope, [ErrorInputs.Scatter(name, degrees)], [MmPerM * u]);
}
