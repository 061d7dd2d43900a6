using UnitsNet;

namespace Waywright;

/// <summary>What holds an end of a free span, and so what its bending stiffness does to the note.</summary>
/// <remarks>
/// On a pulley the belt leaves tangentially with the pulley's curvature; its stiffness moves the place of departure back by sqrt(EI / T), which cancels what the
/// hold there adds, up to and including the second order: the end is as good as pinned at the tangent point of the geometry (L. Kong and R. G. Parker, Journal of Applied Mechanics 2005;
/// checked by finite elements with contact, Reference/belts/pulley_end_by_finite_elements.py). Teeth may hold it more: see <see cref="BeltSpan"/>.
/// </remarks>
public sealed record BeltEnd
{
    private BeltEnd(string kind, bool isClamped, bool isPulley, Measured<Length>? offset)
        => (Kind, IsClamped, IsPulley, Offset) = (kind, isClamped, isPulley, offset);

    /// <summary>A pulley: pinned at the tangent point. The default.</summary>
    public static BeltEnd Pulley { get; } = new("pulley", false, true, null);

    /// <summary>A clamp: held at its edge, where the belt can't turn; + sqrt(EI / T) / L in the note.</summary>
    public static BeltEnd Clamp { get; } = new("clamp", true, false, null);

    /// <summary><c>pulley</c>, <c>clamp</c> or <c>free-form</c>.</summary>
    public string Kind { get; }

    /// <summary>Any other end, of which nothing is known: somewhere between pinned and clamped.</summary>
    public static BeltEnd Unknown { get; } = new("free-form", false, false, null);

    /// <summary>Length to add to the span at this end, for <c>free-form</c>: positive where the end gives way, negative where it holds; null where none was given.</summary>
    public Measured<Length>? Offset { get; }

    internal bool IsClamped { get; }

    internal bool IsPulley { get; }

    internal bool IsUnknown => !IsClamped && !IsPulley && Offset is null;

    /// <summary>Any other end: pinned so much beyond the place up to which the span was measured. The offset comes from plucking at several places of the carriage (TravelFit) or from an estimate with its limits.</summary>
    /// <param name="offset">What it adds to the free length; negative where the end holds like a clamp.</param>
    public static BeltEnd FreeForm(Measured<Length> offset)
    {
        System.ArgumentNullException.ThrowIfNull(offset);
        return new("free-form", false, false, offset);
    }

    /// <summary>Two ends from a text: <c>pulley,clamp</c>, or <c>pulley,free-form 0.4 mm u 0.2 mm</c>.</summary>
    /// <param name="text">The two, separated by a comma.</param>
    /// <param name="name">What the text was given as, for messages.</param>
    /// <exception cref="InputException">Not two ends, or one of another kind.</exception>
    public static (BeltEnd First, BeltEnd Second) ReadPair(string text, string name)
    {
        System.ArgumentNullException.ThrowIfNull(text);
        var parts = text.Split(',', System.StringSplitOptions.TrimEntries);
        if (parts.Length != 2)
            throw Refused(name, text);
        return (One(parts[0], 1, name, text), One(parts[1], 2, name, text));
    }

    /// <inheritdoc/>
    public override string ToString() => Offset is { } offset ? $"{Kind} {offset.ToShortString()}" : Kind;

    private static BeltEnd One(string part, int number, string name, string text)
    {
        const string free = "free-form";
        if (part is "pulley")
            return Pulley;
        if (part is "clamp")
            return Clamp;
        if (part is free)
            return Unknown;
        return part.StartsWith(free + " ", System.StringComparison.Ordinal)
            ? FreeForm(Quantity.Length(part[free.Length..], number == 1 ? $"{name}, first end" : $"{name}, second end"))
            : throw Refused(name, text);
    }

    private static InputException Refused(string name, string text)
        => new(new InputProblem(name, null, null, ProblemList.Shown(text), "two ends, each pulley, clamp, or free-form with the length it adds, such as 'pulley,clamp' or 'pulley,free-form 0.4 mm u 0.2 mm'"));
}
