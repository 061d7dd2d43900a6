namespace Waywright;

/// <summary>Which figure of straightness, in the terms of ISO 12780-1.</summary>
public enum StraightnessParameter
{
    /// <summary>From the lowest to the highest.</summary>
    STRt,

    /// <summary>Highest above the line.</summary>
    STRp,

    /// <summary>Lowest below the line.</summary>
    STRv,

    /// <summary>Root mean square from the line.</summary>
    STRq,
}
