namespace Waywright;

/// <summary>What makes a component of uncertainty smaller when it is done again and averaged.</summary>
public enum AveragesOut
{
    /// <summary>Another reading or pass, with nothing moved.</summary>
    Repeating,

    /// <summary>Lifting, laying again and setting the instrument anew, at another reading; repeats in one lay share it.</summary>
    Relaying,

    /// <summary>Nothing that is done with this instrument alone: it is the same every time.</summary>
    Nothing,
}

/// <summary>One component of what an instrument adds to a measurement.</summary>
/// <param name="Name">What it is.</param>
/// <param name="StandardUncertainty">u, in the instrument's unit.</param>
/// <param name="DegreesOfFreedom">Infinite where it comes from limits; n - 1 where from n repeats.</param>
/// <param name="AveragesOut">What averages it out.</param>
/// <param name="Remedy">What would make it smaller, in words.</param>
public sealed record UncertaintyComponent(string Name, double StandardUncertainty, double DegreesOfFreedom, AveragesOut AveragesOut, string Remedy);
