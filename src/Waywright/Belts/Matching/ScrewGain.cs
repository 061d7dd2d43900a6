using System;
using UnitsNet;

namespace Waywright;

/// <summary>
/// What a turn of a tensioner does, measured: gain = (T_after - T_before) / turns, from a note before and after a known amount. It takes in belt, frame and brackets at once, which EA alone
/// (<see cref="BeltStretch"/>) does not: that is for a first guess only.
/// </summary>
public sealed record ScrewGain
{
    private ScrewGain(BeltTension before, BeltTension after, Uncertain turns, Measured<Force>? frictionBand)
        => (Before, After, Turns, FrictionBand, NewtonPerTurn) = (before, after, turns, frictionBand, (after.Tension.Si - before.Tension.Si) / turns);

    /// <summary>Before the turn.</summary>
    public BeltTension Before { get; }

    /// <summary>After it, and after three runs from end to end.</summary>
    public BeltTension After { get; }

    /// <summary>How far it was turned; + tightens.</summary>
    public Uncertain Turns { get; }

    /// <summary>Half the spread of the tension between both directions of approach; null if it was not looked at.</summary>
    public Measured<Force>? FrictionBand { get; }

    /// <summary>Newton a turn.</summary>
    public Uncertain NewtonPerTurn { get; }

    /// <summary>Whether the gain's 95 % interval lies above 0.</summary>
    public bool IsProven => NewtonPerTurn.Expanded().Low > 0;

    /// <summary>The result in words.</summary>
    public string Verdict => IsProven
        ? $"A turn gives {NewtonPerTurn.ToShortString()} N.{(FrictionBand is null ? " Approach from both sides once, for the friction band." : "")}"
        : $"Turn further before you measure the gain: {NewtonPerTurn.ToShortString()} N a turn is not told apart from none.";

    /// <summary>The friction band from the same belt approached from both sides, the carriage stopped once coming from the left and once from the right: half of the difference.</summary>
    /// <param name="fromLeft">Stopped coming from the left.</param>
    /// <param name="fromRight">Stopped coming from the right.</param>
    public static Measured<Force> FrictionBandOf(BeltTension fromLeft, BeltTension fromRight)
    {
        ArgumentNullException.ThrowIfNull(fromLeft);
        ArgumentNullException.ThrowIfNull(fromRight);
        var half = (fromLeft.Tension.Si - fromRight.Tension.Si) / 2;
        return Quantity.FromSi<Force>(half.Value < 0 ? -half : half, "half of the difference between both directions of approach");
    }

    /// <summary>From a belt before and after a turn.</summary>
    /// <param name="before">Before.</param>
    /// <param name="after">After.</param>
    /// <param name="turns">How far, in turns, + tightens; a turn by eye is good to 0.03.</param>
    /// <param name="frictionBand">Half the spread between both directions of approach.</param>
    /// <exception cref="ArgumentException">No turn, or a band below 0.</exception>
    public static ScrewGain Measure(BeltTension before, BeltTension after, Uncertain turns, Measured<Force>? frictionBand = null)
    {
        ArgumentNullException.ThrowIfNull(before);
        ArgumentNullException.ThrowIfNull(after);
        ArgumentNullException.ThrowIfNull(turns);
        if (turns.Value == 0)
            throw new ArgumentException("The gain needs a turn that is not 0.", nameof(turns));
        if (frictionBand is { Si.Value: < 0 })
            throw new ArgumentException("A friction band is 0 or more.", nameof(frictionBand));
        return new(before, after, turns, frictionBand);
    }

    /// <summary>Turns from where a belt is to a wanted tension; at level within 10 % of it (common practice, no source).</summary>
    /// <param name="now">Where the belt is.</param>
    /// <param name="wanted">The wanted tension, above 0.</param>
    /// <exception cref="ArgumentOutOfRangeException">The wanted tension is not above 0.</exception>
    public TurnAdvice To(BeltTension now, Measured<Force> wanted)
    {
        ArgumentNullException.ThrowIfNull(now);
        ArgumentNullException.ThrowIfNull(wanted);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(wanted.Si.Value, nameof(wanted));
        var ratio = (now.Tension.Si / wanted.Si).Expanded();
        var level = TurnAdvice.LevelWithin;
        return Advise("the belt", wanted.Si - now.Tension.Si, ratio.Low >= 1 - level && ratio.High <= 1 + level ? $"at {wanted.ToShortString()} within {NumberText.Plain(100 * level)} %" : null);
    }

    /// <summary>Turns that bring the slacker of two belts to the tighter one; what both share counts once.</summary>
    /// <param name="pair">The two.</param>
    public TurnAdvice Match(BeltPair pair)
    {
        ArgumentNullException.ThrowIfNull(pair);
        var isFirst = pair.Ratio.Value < 1;
        var more = isFirst ? -pair.Difference.Si : pair.Difference.Si;
        return Advise($"`{(isFirst ? pair.FirstName : pair.SecondName)}`", more, pair.AreEqual == true ? $"equal to the other within {NumberText.Plain(100 * pair.EqualWithin)} %" : null);
    }

    private TurnAdvice Advise(string belt, Uncertain more, string? reached)
    {
        if (!IsProven)
            return new(belt, null, null, $"Turn further before you measure the gain: {NewtonPerTurn.ToShortString()} N a turn is not told apart from none.");
        var turns = more / NewtonPerTurn;
        var floor = Math.Max(more.Expanded().U, FrictionBand?.Si.Value ?? 0) / NewtonPerTurn.Value;
        var why = (FrictionBand?.Si.Value ?? 0) > more.Expanded().U ? "the friction band" : "what the readings can tell apart";
        if (reached is not null)
            return new(belt, turns, floor, $"Leave {belt}: it is {reached}.");
        if (Math.Abs(turns.Value) <= floor)
            return new(belt, turns, floor, $"Don't turn {belt} yet: {Amount(turns)} is below {why}, {NumberText.Significant(floor, 2)} turns. {(why[4] == 'f' ? "Free what rubs, or stop from the same side each time." : "Pluck more often, or measure better.")}");
        return new(belt, turns, floor, $"{(turns.Value > 0 ? "Tighten" : "Slacken")} {belt} by {Amount(turns)}, run the carriage from end to end three times, then pluck again. {BeltTension.Caution}");
    }

    private static string Amount(Uncertain turns)
    {
        var size = turns.Value < 0 ? -turns : turns;
        return $"{(size.StandardUncertainty > 0 ? size.ToShortString() : NumberText.Significant(size.Value, 2))} turns";
    }
}

/// <summary>How far to turn a tensioner.</summary>
/// <param name="Belt">Which belt.</param>
/// <param name="Turns">How far, + tightens; null where the gain is not known well enough.</param>
/// <param name="SmallestTurns">Below this no turn is advised: the larger of the friction band and the expanded uncertainty of what is missing, over the gain.</param>
/// <param name="Verdict">What to do.</param>
public sealed record TurnAdvice(string Belt, Uncertain? Turns, double? SmallestTurns, string Verdict)
{
    /// <summary>A belt is at its level within this share of the wanted tension: common practice, no source.</summary>
    public const double LevelWithin = 0.1;
}
