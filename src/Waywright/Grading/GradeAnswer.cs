namespace Waywright;

/// <summary>What is said of one rail.</summary>
internal sealed record GradeAnswer(string Grade, string Reason, string Next, double? Confidence = null)
{
    /// <summary>The feature that takes the largest share of its limit; null when none could be judged.</summary>
    public string? LimitingFeature { get; init; }
}
