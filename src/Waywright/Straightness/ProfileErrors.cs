using System;
using System.Collections.Generic;
using System.Globalization;

namespace Waywright;

/// <summary>
/// What the heights of a profile are uncertain by: e_i = StationUm[i] g_i + Σ over shapes of HeightsUm[i] d, where the g_i are standard normal and
/// independent from station to station, and each shape has one draw d for the whole profile. Straight lines in a shape do no harm: straightness ignores them.
/// </summary>
/// <param name="StationUm">Standard uncertainty of each station's height from what differs from station to station, um, 0 or more, in the order of the profile.</param>
/// <param name="StationDegreesOfFreedom">How well these are known: 1 or more; infinite where not from repeats.</param>
/// <param name="Shapes">What moves the whole profile; may be empty.</param>
/// <exception cref="ArgumentException">A value is not finite or out of range, or a shape has another number of heights than there are stations.</exception>
public sealed record ProfileErrors(IReadOnlyList<double> StationUm, double StationDegreesOfFreedom, IReadOnlyList<ErrorShape> Shapes)
{
    private readonly FixedList<double> _station = Checked(StationUm);
    private readonly FixedList<ErrorShape> _shapes = Checked(Shapes, StationUm.Count);

    /// <summary>Standard uncertainty of each station's height from what differs from station to station, um.</summary>
    public IReadOnlyList<double> StationUm => _station;

    /// <summary>Degrees of freedom of these: the scatter of all stations is one estimate.</summary>
    public double StationDegreesOfFreedom { get; } = ErrorShape.CheckedDegrees(StationDegreesOfFreedom);

    /// <summary>What moves the whole profile.</summary>
    public IReadOnlyList<ErrorShape> Shapes => _shapes;

    internal ReadOnlySpan<double> Station => _station.AsSpan();

    private static FixedList<double> Checked(IReadOnlyList<double> station)
    {
        ArgumentNullException.ThrowIfNull(station);
        for (var i = 0; i < station.Count; i++)
        {
            if (!(station[i] >= 0 && double.IsFinite(station[i])))
                throw new ArgumentException(string.Create(CultureInfo.InvariantCulture, $"Standard uncertainty {station[i]} at index {i} is not a finite number of 0 or more."), nameof(station));
        }

        return FixedList<double>.Copy(station);
    }

    private static FixedList<ErrorShape> Checked(IReadOnlyList<ErrorShape> shapes, int stations)
    {
        ArgumentNullException.ThrowIfNull(shapes);
        foreach (var shape in shapes)
        {
            if (shape.HeightsUm.Count != stations)
                throw new ArgumentException(string.Create(CultureInfo.InvariantCulture, $"The shape of '{shape.Input}' has {shape.HeightsUm.Count} heights for {stations} stations."), nameof(shapes));
        }

        return FixedList<ErrorShape>.Copy(shapes);
    }
}

/// <summary>One input that moves the whole profile in a known shape by an unknown amount: the guide's bow, the dial's error over its readings, the bow between lays.</summary>
/// <param name="Input">What it is; one name is one input.</param>
/// <param name="HeightsUm">Change of the profile for one standard uncertainty of the input, um, finite.</param>
/// <param name="DegreesOfFreedom">Of that standard uncertainty: 1 or more, the draw is then Student's t; infinite: standard normal, or rectangular.</param>
/// <param name="IsRectangular">The draw is anywhere between -sqrt 3 and sqrt 3, so of unit variance; only with infinite degrees of freedom.</param>
/// <param name="AveragesOut">What makes it smaller when it is done again.</param>
/// <param name="Remedy">What would make it smaller, in words.</param>
/// <exception cref="ArgumentException">A height is not finite, degrees of freedom are below 1, or a rectangular input has finite ones.</exception>
public sealed record ErrorShape(string Input, IReadOnlyList<double> HeightsUm, double DegreesOfFreedom, bool IsRectangular, AveragesOut AveragesOut, string Remedy)
{
    private readonly FixedList<double> _heights = Checked(HeightsUm, Input);

    /// <summary>Change of the profile for one standard uncertainty of the input, um.</summary>
    public IReadOnlyList<double> HeightsUm => _heights;

    /// <summary>Degrees of freedom of the standard uncertainty.</summary>
    public double DegreesOfFreedom { get; } = IsRectangular && double.IsFinite(DegreesOfFreedom)
        ? throw new ArgumentException("A rectangular input comes from limits: its degrees of freedom are infinite.", nameof(DegreesOfFreedom))
        : CheckedDegrees(DegreesOfFreedom);

    internal ReadOnlySpan<double> Heights => _heights.AsSpan();

    internal static double CheckedDegrees(double degreesOfFreedom) => degreesOfFreedom >= 1
        ? degreesOfFreedom
        : throw new ArgumentException(string.Create(CultureInfo.InvariantCulture, $"{degreesOfFreedom} degrees of freedom: at least 1 is needed, or infinity."), nameof(degreesOfFreedom));

    private static FixedList<double> Checked(IReadOnlyList<double> heights, string input)
    {
        ArgumentNullException.ThrowIfNull(heights);
        for (var i = 0; i < heights.Count; i++)
        {
            if (!double.IsFinite(heights[i]))
                throw new ArgumentException(string.Create(CultureInfo.InvariantCulture, $"The shape of '{input}' has the height {heights[i]} at index {i}."), nameof(heights));
        }

        return FixedList<double>.Copy(heights);
    }
}
