using System;
using System.Collections.Generic;
using System.Linq;
using UnitsNet;

namespace Waywright;

/// <summary>
/// Two belts compared: T_A / T_B = (mu_A / mu_B) (L_A / L_B)2 (f_A / f_B)2. An input that both share (one reel's density, one fixture's span) cancels,
/// so the ratio is known far better than either tension.
/// </summary>
/// <remarks>
/// Equal means that the tighter pulls at most 5 % more than the slacker (common practice, no source); decided only if the ratio's 95 % interval
/// lies wholly on one side of the limit. Of stiffness and ends on equal spans only the difference between the tensions is left.
/// </remarks>
public sealed record BeltPair
{
    /// <summary>Common practice, no source.</summary>
    public const double UsualLimit = 0.05;

    private BeltPair(string firstName, BeltTension first, string secondName, BeltTension second, double equalWithin)
    {
        (FirstName, First, SecondName, Second, EqualWithin) = (firstName, first, secondName, second, equalWithin);
        Ratio = first.Tension.Si / second.Tension.Si;
        Difference = Quantity.FromSi<Force>(first.Tension.Si - second.Tension.Si, $"tension of {firstName} minus tension of {secondName}; shared inputs counted once");
        var interval = Ratio.Expanded();
        var (low, high) = (1 / (1 + equalWithin), 1 + equalWithin);
        AreEqual = interval.Low >= low && interval.High <= high ? true
            : interval.High < low || interval.Low > high ? false
            : null;
        Tighten = AreEqual != false ? null : Ratio.Value < 1 ? firstName : secondName;
        Cancelled = FixedList<string>.Copy(Ratio.Terms.Where(IsCancelled).Select(t => t.Input.Called));
    }

    /// <summary>Name of the first belt.</summary>
    public string FirstName { get; }

    /// <summary>The first belt, T_A.</summary>
    public BeltTension First { get; }

    /// <summary>Name of the second belt.</summary>
    public string SecondName { get; }

    /// <summary>The second belt, T_B.</summary>
    public BeltTension Second { get; }

    /// <summary>By how much the tighter may exceed the slacker and still count as equal: 0.05 is 5 %.</summary>
    public double EqualWithin { get; }

    /// <summary>T_A / T_B with its own uncertainty; its contributions are what did not cancel.</summary>
    public Uncertain Ratio { get; }

    /// <summary>T_A - T_B.</summary>
    public Measured<Force> Difference { get; }

    /// <summary>True or false if the ratio's 95 % interval lies wholly within or beyond the limit; null where it straddles it: undecided.</summary>
    public bool? AreEqual { get; }

    /// <summary>The belt to tighten; null if they are equal or undecided.</summary>
    public string? Tighten { get; }

    /// <summary>Inputs that both belts share and that drop out of the ratio.</summary>
    public IReadOnlyList<string> Cancelled { get; }

    /// <summary>What to do, why, what cancels and what doesn't.</summary>
    public string Verdict => BeltPairText.Verdict(this);

    /// <summary>Compares two belts of a log.</summary>
    /// <exception cref="ArgumentException">Both have the same name, or an input of the same name says different things in the two.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The limit is not between 0 and 1.</exception>
    public static BeltPair Compare(LoggedBelt first, LoggedBelt second, double equalWithin = UsualLimit)
    {
        ArgumentNullException.ThrowIfNull(first);
        ArgumentNullException.ThrowIfNull(second);
        return Compare(first.Tension, second.Tension, first.Belt, second.Belt, equalWithin);
    }

    /// <summary>Compares two belts. What both were built from (the same variable, or inputs of the same name) is one input.</summary>
    /// <exception cref="ArgumentException">Both have the same name, or an input of the same name says different things in the two.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The limit is not between 0 and 1.</exception>
    public static BeltPair Compare(BeltTension first, BeltTension second, string firstName = "A", string secondName = "B", double equalWithin = UsualLimit)
    {
        ArgumentNullException.ThrowIfNull(first);
        ArgumentNullException.ThrowIfNull(second);
        ArgumentException.ThrowIfNullOrWhiteSpace(firstName);
        ArgumentException.ThrowIfNullOrWhiteSpace(secondName);
        if (firstName == secondName)
            throw new ArgumentException($"Both belts are called '{firstName}'.", nameof(secondName));
        if (equalWithin is not (> 0 and < 1))
            throw new ArgumentOutOfRangeException(nameof(equalWithin), equalWithin, "The limit lies between 0 and 1, such as 0.05.");
        return new(firstName, Own(first, second, firstName), secondName, Own(second, first, secondName), equalWithin);
    }

    /// <summary>Of a shared input so much is left at most to say that it cancels: with stiffness the two tensions follow a span not quite alike.</summary>
    private const double MostLeft = 0.02;

    private bool IsCancelled(UncertainTerm term)
        => IsIn(First, term, out var first) && IsIn(Second, term, out var second) && Math.Abs(term.Sensitivity) <= MostLeft * Ratio.Value * Math.Min(first, second);

    private static bool IsIn(BeltTension belt, UncertainTerm term, out double relative)
    {
        relative = belt.Tension.Si.Terms.Where(t => t.Input.IsSameAs(term.Input)).Sum(t => Math.Abs(t.Sensitivity)) / belt.Tension.Si.Value;
        return belt.Tension.Si.Terms.Any(t => t.Input.IsSameAs(term.Input));
    }

    /// <summary>The belt with its own inputs named after it; those shared with the other keep their name.</summary>
    private static BeltTension Own(BeltTension belt, BeltTension other, string name)
    {
        if (belt.IsNoteSought)
            return belt;
        var own = belt.Span.With(Own(belt.Span.Length, other.Span.Length, $"span of belt {name}"), Own(belt.Span.Density, other.Span.Density, $"density of belt {name}"));
        return own.Tension(Own(belt.Frequency, other.Frequency, $"frequency of belt {name}"), belt.Partial);
    }

    private static Measured<TQuantity> Own<TQuantity>(Measured<TQuantity> mine, Measured<TQuantity> other, string name)
        where TQuantity : struct, IQuantity
        => mine.Si.Terms.Any(m => other.Si.Terms.Any(o => m.Input.IsSameAs(o.Input))) ? mine : mine.Called(name);
}
