namespace Waywright;

/// <summary>What is said of one rail.</summary>
internal sealed record GradeAnswer(string Grade, string Reason, string Next, double? Confidence = null);
