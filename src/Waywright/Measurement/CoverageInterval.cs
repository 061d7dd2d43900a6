namespace Waywright;

/// <summary>An interval that holds the quantity with the stated probability, given what is known (JCGM 101:2008, 3.12).</summary>
/// <param name="Low">Lower end.</param>
/// <param name="High">Upper end.</param>
/// <param name="Coverage">The probability, such as 0.95.</param>
public sealed record CoverageInterval(double Low, double High, double Coverage);
