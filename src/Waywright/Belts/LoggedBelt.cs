namespace Waywright;

/// <summary>One belt of a log: the mean of its plucks and the tension that it proves.</summary>
/// <param name="Belt">Its name.</param>
/// <param name="Tension">Span, note and tension.</param>
/// <param name="Plucks">How many plucks the note is the mean of.</param>
/// <param name="ScatterHz">Standard deviation of one pluck; null for a single one.</param>
/// <param name="Reel">What it was cut from: belts of one reel share the density; null where the log doesn't say.</param>
/// <param name="Fixture">What held its span: belts in one fixture share the length; null where the log doesn't say.</param>
public sealed record LoggedBelt(string Belt, BeltTension Tension, int Plucks, double? ScatterHz, string? Reel, string? Fixture);
