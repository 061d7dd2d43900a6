using System.Collections.Generic;

namespace Waywright;

/// <summary>Something known that moved the readings, and was taken out again.</summary>
/// <param name="Name">What it is: <c>self-weight</c>, <c>measuring force</c>, <c>lever angle</c>.</param>
/// <param name="SizeUm">Largest less smallest of what was added, um.</param>
/// <param name="HeightsUm">What was added to the height at each station, um.</param>
/// <param name="Note">What it was worked out from, and a warning where one is due.</param>
public sealed record SweepCorrection(string Name, double SizeUm, IReadOnlyList<double> HeightsUm, string Note);
