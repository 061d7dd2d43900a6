using System;
using System.Collections.Generic;
using System.Globalization;
using System.Linq;

namespace Waywright;

/// <summary>
/// A profile as a straight line plus bow, S, W and finer shapes: z = line + Σ c_k q_k, with q_k polynomials of degree k that are orthogonal to each other on the
/// stations measured, so that each mode is found without the others and their squares add up to the whole. For bow and S, and for matching rails;
/// <see cref="KinkTest"/> looks for what is not smooth, <see cref="StraightnessFigures"/> has the figure to grade by.
/// </summary>
/// <remarks>
/// Stations count alike, however uncertain, and wherever they are. A pure parabola has its height at the middle as its bow and nothing else, on any stations; a
/// finer mode holds what no coarser one can describe. Amplitudes follow the heights linearly, so their uncertainty is exact to JCGM 100:2008, 5.2;
/// amplitudes of one profile share inputs: see <see cref="Uncertain.CorrelationWith"/>.
/// Recurrence of Forsythe, J. SIAM 5 (1957) 74-88. Checked by closed forms for parabola and sine, and by NumPy's QR.
/// </remarks>
public sealed record ShapeModes
{
    private readonly FixedList<ShapeMode> _modes;
    private readonly FixedList<double> _coefficients;
    private readonly ModeShapes _shapes;

    private ShapeModes(Profile profile, ProfileErrors? errors, ModeShapes shapes, FixedList<double> coefficients, FixedList<ShapeMode> modes)
        => (Profile, Errors, _shapes, _coefficients, _modes) = (profile, errors, shapes, coefficients, modes);

    /// <summary>What was measured.</summary>
    public Profile Profile { get; }

    /// <summary>What its heights are uncertain by; null where that was not given, and the amplitudes are then without uncertainty.</summary>
    public ProfileErrors? Errors { get; }

    /// <summary>From the bow on, in rising order.</summary>
    public IReadOnlyList<ShapeMode> Modes => _modes;

    /// <summary>The bow.</summary>
    public ShapeMode Bow => _modes[0];

    /// <summary>Root mean square of what all modes together leave, um.</summary>
    public double LeftUm => _modes[^1].LeftUm;

    /// <summary>The modes of a profile.</summary>
    /// <param name="profile">Stations at one more position than the highest order.</param>
    /// <param name="errors">What its heights are uncertain by, if known.</param>
    /// <param name="highestOrder">2 to 6.</param>
    /// <exception cref="ArgumentException">Too few different positions for the order, or errors of another number of stations.</exception>
    /// <exception cref="ArgumentOutOfRangeException">An order below 2 or above 6.</exception>
    public static ShapeModes Of(Profile profile, ProfileErrors? errors = null, int highestOrder = 4)
    {
        ArgumentNullException.ThrowIfNull(profile);
        if (highestOrder is < ModeShapes.LowestOrder or > ModeShapes.HighestOrder)
            throw new ArgumentOutOfRangeException(nameof(highestOrder), highestOrder, "Orders from 2 to 6 are possible.");
        ErrorInputs.CheckFit(profile, errors);
        var axis = new UnitAxis(profile);
        var shapes = ModeShapes.Of(axis.Stations(profile), highestOrder);
        var coefficients = new double[highestOrder + 1];
        var rest = profile.Heights.ToArray();
        for (var k = 0; k <= highestOrder; k++)
            coefficients[k] = TakeOff(shapes.At(k), rest);
        return new ShapeModes(profile, errors, shapes, FixedList<double>.Own(coefficients), Amplitudes(profile, errors, shapes, coefficients));
    }

    /// <summary>Height of line and modes at a position, um.</summary>
    /// <param name="xMm">Position, mm; beyond the stations the polynomial runs away.</param>
    public double HeightUm(double xMm)
    {
        Span<double> values = stackalloc double[ModeShapes.HighestOrder + 1];
        values = values[.._coefficients.Count];
        _shapes.Values(new UnitAxis(Profile).At(xMm), values);
        return Householder.Product(values, _coefficients.AsSpan());
    }

    /// <summary>Equal when they were found from equal profiles and errors, to the same order.</summary>
    public bool Equals(ShapeModes? other) => other is not null && Profile.Equals(other.Profile) && Equals(Errors, other.Errors) && _modes.Count == other._modes.Count;

    /// <inheritdoc/>
    public override int GetHashCode() => HashCode.Combine(Profile, Errors, _modes.Count);

    private static FixedList<ShapeMode> Amplitudes(Profile profile, ProfileErrors? errors, ModeShapes shapes, double[] coefficients)
    {
        var weights = Enumerable.Range(ModeShapes.LowestOrder, coefficients.Length - ModeShapes.LowestOrder).Select(shapes.Weights).ToArray();
        var scatter = errors is null ? [] : Scatter(errors, weights);
        var rest = profile.Heights.ToArray();
        for (var k = 0; k < ModeShapes.LowestOrder; k++)
            TakeOff(shapes.At(k), rest);
        var all = Householder.Product(rest, rest);
        var modes = new ShapeMode[weights.Length];
        for (var m = 0; m < modes.Length; m++)
        {
            var order = m + ModeShapes.LowestOrder;
            TakeOff(shapes.At(order), rest);
            var square = coefficients[order] * coefficients[order] * Householder.Product(shapes.At(order), shapes.At(order));
            var mine = scatter.Select(s => (s.Input, s.Effects[m])).Where(s => s.Item2 != 0);
            var amplitude = ErrorInputs.Figure(ModeShapes.AmplitudeOf(order) * coefficients[order], mine, errors, shape => Householder.Product(weights[m], shape.Heights));
            modes[m] = new ShapeMode(order, amplitude, all > 0 ? Math.Min(1, square / all) : 0, Math.Sqrt(Householder.Product(rest, rest) / profile.Count));
        }

        return FixedList<ShapeMode>.Own(modes);
    }

    // Amplitudes that scatter moves together are written as sums of independent inputs, one for each order: L of L L' = covariance.
    private static (Uncertain Input, double[] Effects)[] Scatter(ProfileErrors errors, double[][] weights)
    {
        var covariance = new double[weights.Length, weights.Length];
        for (var i = 0; i < weights.Length; i++)
        {
            for (var j = 0; j <= i; j++)
            {
                for (var s = 0; s < errors.StationUm.Count; s++)
                    covariance[i, j] += weights[i][s] * weights[j][s] * errors.StationUm[s] * errors.StationUm[s];
                covariance[j, i] = covariance[i, j];
            }
        }

        var names = weights.Select((_, i) => string.Create(CultureInfo.InvariantCulture, $"scatter of the readings, order {i + ModeShapes.LowestOrder}")).ToArray();
        var factor = CovarianceFactor.Of(names, covariance);
        return [.. names.Select((name, j) => (ErrorInputs.Scatter(name, errors.StationDegreesOfFreedom), weights.Select((_, i) => factor[(i * names.Length) + j]).ToArray()))];
    }

    // Off what the shapes before it left, which is what makes it exact to rounding.
    private static double TakeOff(ReadOnlySpan<double> shape, double[] heights)
    {
        var coefficient = Householder.Product(shape, heights) / Householder.Product(shape, shape);
        for (var i = 0; i < heights.Length; i++)
            heights[i] -= coefficient * shape[i];
        return coefficient;
    }
}
