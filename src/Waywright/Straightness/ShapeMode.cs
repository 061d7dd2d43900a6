using System;
using System.Globalization;

namespace Waywright;

/// <summary>
/// One of the shapes that a profile is the sum of, after its straight line: the bow (order 2), the S (3), the W (4), then finer ones, each orthogonal to
/// those before it on the stations measured.
/// </summary>
/// <param name="Order">Degree of its polynomial, 2 to 6.</param>
/// <param name="AmplitudeUm">
/// How high the curve of this order and size rises over the straight line through its own ends: for the bow its height at the middle, for the S the height of its
/// first half. Positive: it rises from the first station on, so an even one with + is crowned, and turning the rail end for end changes the sign of odd ones only.
/// </param>
/// <param name="Share">Share of the sum of squares about the least-squares line, 0 to 1.</param>
/// <param name="LeftUm">Root mean square of what this mode and those before it leave, um.</param>
public sealed record ShapeMode(int Order, Uncertain AmplitudeUm, double Share, double LeftUm)
{
    /// <summary>What it is called.</summary>
    public string Name => Order switch
    {
        2 => "bow",
        3 => "S",
        4 => "W",
        _ => string.Create(CultureInfo.InvariantCulture, $"order {Order}"),
    };

    /// <summary>Whether the 95 % interval of the amplitude keeps clear of zero; null where its uncertainty is not known.</summary>
    public bool? IsClear => AmplitudeUm.StandardUncertainty == 0 ? null : AmplitudeUm.Expanded().U < Math.Abs(AmplitudeUm.Value);
}
