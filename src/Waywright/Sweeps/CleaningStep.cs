using System.Collections.Generic;

namespace Waywright;

/// <summary>A reading that cleaning changed, dropped or flagged.</summary>
/// <param name="Rail">The rail; null for a bare profile.</param>
/// <param name="Face">The face; null for a bare profile.</param>
/// <param name="Pass">What a person calls the pass: <c>pass 2 back, lay A</c>.</param>
/// <param name="PositionMm">The station, mm from the dot.</param>
/// <param name="BeforeUm">The reading before the step, um.</param>
/// <param name="AfterUm">After it, um: equal when it was flagged only, null when it was dropped.</param>
/// <param name="Why">What is wrong with it.</param>
public sealed record CleanedReading(string? Rail, RailFace? Face, string Pass, double PositionMm, double BeforeUm, double? AfterUm, string Why);

/// <summary>What one step of the cleaning chain found in a batch.</summary>
/// <param name="Name"><c>roll-over</c>, <c>sign</c>, <c>spikes</c>, <c>retrace</c> or <c>drift</c>.</param>
/// <param name="Found">What it changed, in a sentence; it begins with 'Nothing changed' when it changed nothing.</param>
/// <param name="Changed">Readings that differ now, or are gone.</param>
/// <param name="Flagged">Readings to look at, as they were.</param>
/// <param name="Notes">What it saw, face by face, in sentences.</param>
public sealed record CleaningStep(string Name, string Found, IReadOnlyList<CleanedReading> Changed, IReadOnlyList<CleanedReading> Flagged, IReadOnlyList<string> Notes);
