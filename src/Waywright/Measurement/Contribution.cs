using System.Diagnostics.CodeAnalysis;

namespace Waywright;

/// <summary>What one independent input adds to a result's uncertainty: a line of its budget (JCGM 100:2008, 5.1.3).</summary>
/// <param name="Input">The input's name.</param>
/// <param name="Signed">Sensitivity times the input's standard uncertainty, c u, in the result's unit; its sign says which way the result follows.</param>
/// <param name="DegreesOfFreedom">The input's; infinite where its uncertainty was stated and not estimated from repeats.</param>
/// <param name="Share">Share of the result's variance, 0 to 1; 0 where the input has cancelled or is exact.</param>
[SuppressMessage("Naming", "CA1720", Justification = "With its sign, not the integer type.")]
public sealed record Contribution(string Input, double Signed, double DegreesOfFreedom, double Share);
