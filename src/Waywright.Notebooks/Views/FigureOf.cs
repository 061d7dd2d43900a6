using UnitsNet;

namespace Waywright.Notebooks;

/// <summary>Turns uncertain values into figures of a record.</summary>
internal static class FigureOf
{
    private const double Coverage = 0.95;
    private const double RerunTolerance = 1e-9;

    /// <summary>A quantity in its SI unit.</summary>
    public static Figure Quantity<TQuantity>(string id, string name, Measured<TQuantity> measured, string siUnit, string method)
        where TQuantity : struct, IQuantity
        => Uncertain(id, name, measured.Si, siUnit, method);

    public static Figure Uncertain(string id, string name, Uncertain x, string unit, string method)
    {
        if (x.StandardUncertainty == 0)
            return new Figure(id, name, x.Value, null, unit, method: method, relativeTolerance: RerunTolerance);
        var expanded = x.Expanded(Coverage);
        return new Figure(id, name, x.Value, null, unit, x.StandardUncertainty, double.IsInfinity(x.DegreesOfFreedom) ? null : x.DegreesOfFreedom, expanded.CoverageFactor, expanded.Low, expanded.High, method,
            RerunTolerance, 1e-6 * x.StandardUncertainty);
    }
}
