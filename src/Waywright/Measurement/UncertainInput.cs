using System;

namespace Waywright;

/// <summary>
/// An independent input. Two are one and the same if their identities are equal: the name where one was given, else the object that the
/// literal made, so a span written once and used twice does not average out, and two spans that happen to read alike do.
/// </summary>
internal sealed record UncertainInput(object Identity, string? Name, double Value, double StandardUncertainty, double DegreesOfFreedom)
{
    /// <summary>Whether its name is what makes it one input.</summary>
    public bool IsNamed => Identity is string;

    /// <summary>Its name in a budget.</summary>
    public string Called => Name ?? $"an input of {NumberText.Plain(Value)}";

    /// <summary>Whether both are the same input.</summary>
    /// <exception cref="ArgumentException">They are, but say different things.</exception>
    public bool IsSameAs(UncertainInput other)
    {
        if (ReferenceEquals(this, other))
            return true;
        if (!Identity.Equals(other.Identity))
            return false;
        if (!SaysTheSameAs(other))
            throw new ArgumentException($"The input '{Called}' is met twice, as {Shown} and as {other.Shown}: equal names are one input. Give different inputs different names.");
        return true;
    }

    /// <summary>Equal in all that a reader sees.</summary>
    public bool Equals(UncertainInput? other) => other is not null && Name == other.Name && SaysTheSameAs(other);

    public override int GetHashCode() => HashCode.Combine(Name, Value, StandardUncertainty, DegreesOfFreedom);

    private string Shown => $"{NumberText.Plain(Value)} u {NumberText.Plain(StandardUncertainty)}";

    private bool SaysTheSameAs(UncertainInput other)
        => Value.Equals(other.Value) && StandardUncertainty.Equals(other.StandardUncertainty) && DegreesOfFreedom.Equals(other.DegreesOfFreedom);
}

/// <summary>How a result follows an input, to first order.</summary>
internal readonly record struct UncertainTerm(UncertainInput Input, double Sensitivity)
{
    public double Signed => Sensitivity * Input.StandardUncertainty;
}
