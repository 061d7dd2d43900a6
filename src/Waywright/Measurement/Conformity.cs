namespace Waywright;

/// <summary>How likely it is that a measured quantity is within its limits (JCGM 106:2012, clause 7).</summary>
/// <param name="Limits">The limits.</param>
/// <param name="Value">Measured value.</param>
/// <param name="StandardUncertainty">Its standard uncertainty.</param>
/// <param name="Probability">Probability of conformity p_c, 0 to 1.</param>
/// <param name="ProbabilityError">Standard error of p_c from the finite number of Monte Carlo trials; 0 where it was calculated.</param>
public sealed record Conformity(ToleranceLimits Limits, double Value, double StandardUncertainty, double Probability, double ProbabilityError)
{
    /// <summary>Measurement capability index C_m = T / (4 u) (JCGM 106:2012, 7.6); null for one limit or for no uncertainty. Below 3 to 10, decisions near the limits are often wrong.</summary>
    public double? CapabilityIndex => StandardUncertainty > 0 ? Limits.Width / (4 * StandardUncertainty) : null;
}
