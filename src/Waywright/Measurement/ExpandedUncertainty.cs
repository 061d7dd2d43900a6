namespace Waywright;

/// <summary>A value with its expanded uncertainty U = k u: about the stated share of such intervals holds the true value (JCGM 100:2008, 6.2 and G.4).</summary>
/// <param name="Value">The value.</param>
/// <param name="U">Expanded uncertainty, in the value's unit.</param>
/// <param name="CoverageFactor">k, from Student's t.</param>
/// <param name="Coverage">The coverage probability, such as 0.95.</param>
/// <param name="DegreesOfFreedom">Effective degrees of freedom; may be infinite.</param>
public sealed record ExpandedUncertainty(double Value, double U, double CoverageFactor, double Coverage, double DegreesOfFreedom)
{
    /// <summary>Lower end of the interval, Value - U.</summary>
    public double Low => Value - U;

    /// <summary>Upper end of the interval, Value + U.</summary>
    public double High => Value + U;
}
