namespace Waywright;

/// <summary>Whether the linear calculation of JCGM 100 may be used in place of Monte Carlo for this model and these inputs (JCGM 101:2008, clause 8).</summary>
/// <param name="LowDifference">Distance of the lower ends of the two intervals.</param>
/// <param name="HighDifference">Distance of the upper ends.</param>
/// <param name="Tolerance">Numerical tolerance delta of the standard uncertainty for the wanted digits (7.9.2).</param>
public sealed record GumValidation(double LowDifference, double HighDifference, double Tolerance)
{
    /// <summary>Both distances are within the tolerance.</summary>
    public bool Agrees => LowDifference <= Tolerance && HighDifference <= Tolerance;
}
