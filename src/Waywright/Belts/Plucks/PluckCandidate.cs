namespace Waywright;

/// <summary>A note that a spectrum could be the ladder of.</summary>
/// <param name="FrequencyHz">Its lowest partial, Hz.</param>
/// <param name="Strength">How well the ladder fits, 1 for the best.</param>
public sealed record PluckCandidate(double FrequencyHz, double Strength);
