using System;
using System.Collections.Generic;
using System.Linq;
using UnitsNet;

namespace Waywright;

/// <summary>A pair of belts in words: what to do, why, what cancels, what the model leaves out.</summary>
internal static class BeltPairText
{
    public static string Verdict(BeltPair pair)
    {
        var (a, b) = ($"`{pair.FirstName}`", $"`{pair.SecondName}`");
        var limit = $"{NumberText.Plain(pair.EqualWithin * 100)} % within which belts count as equal{(pair.EqualWithin == BeltPair.UsualLimit ? " (common practice)" : "")}";
        var action = pair.AreEqual switch
        {
            true => $"Leave both: {a} and {b} are equal. Their ratio is {Shown(pair.Ratio)}, inside the {limit}.",
            null => $"Undecided, measure again: {a} to {b} is {Shown(pair.Ratio)}, which straddles the {limit}. {Remedy(pair)}",
            _ => Tighten(pair, limit),
        };
        return string.Join(' ', new[] { action, Cancels(pair), BeltTension.LeftOut(pair.First.Span), pair.AreEqual == false ? BeltTension.Caution : "" }.Where(s => s.Length > 0));
    }

    private static string Tighten(BeltPair pair, string limit)
    {
        var isFirst = pair.Tighten == pair.FirstName;
        var (slack, tight) = isFirst ? (pair.First, pair.Second) : (pair.Second, pair.First);
        var other = isFirst ? pair.SecondName : pair.FirstName;
        var more = new Measured<Force>(tight.Tension.Si - slack.Tension.Si, UnitTable.Newton, "");
        var ratio = slack.Tension.Si / tight.Tension.Si;
        var by = more.Si.StandardUncertainty > 0 ? more.ToShortString() : $"{NumberText.Significant(more.Si.Value, 2)} N";
        return $"Tighten `{pair.Tighten}` by about {by}, then pluck both again: it is at {Shown(ratio)} of `{other}`, beyond the {limit}.";
    }

    private static string Cancels(BeltPair pair)
    {
        if (pair.Ratio.StandardUncertainty == 0)
            return $"{Sentence(pair.Cancelled, "cancels", "cancel")} No uncertainty was stated for the rest, so this rests on the values alone.".TrimStart();
        var left = pair.Ratio.Contributions.Where(c => c.Share > 0).Select(c => $"{c.Input} ({NumberText.Rounded(100 * c.Share, 0)} %)").ToArray();
        return (pair.Cancelled.Count > 0
            ? $"{Sentence(pair.Cancelled, "cancels", "cancel")} What is left is from {List(left)}."
            : $"Nothing cancels: the uncertainty is from {List(left)}.") + Asked(pair);
    }

    /// <summary>What may cancel and doesn't is asked for: only who measured can know.</summary>
    private static string Asked(BeltPair pair)
    {
        var open = new List<string>();
        if (!IsShared(pair, t => t.Span.Length.Si))
            open.Add("plucked in one fixture, so that the span cancels");
        if (!IsShared(pair, t => t.Span.Density.Si))
            open.Add("cut off one reel, so that the density cancels");
        return open.Count == 0 ? "" : $" Were both {string.Join(", and ", open)}? Then say so.";
    }

    private static bool IsShared(BeltPair pair, Func<BeltTension, Uncertain> part)
        => part(pair.First).StandardUncertainty == 0 || part(pair.First).Terms.Any(a => part(pair.Second).Terms.Any(b => a.Input.IsSameAs(b.Input)));

    /// <summary>What the largest share asks for.</summary>
    private static string Remedy(BeltPair pair)
    {
        var largest = pair.Ratio.Contributions[0];
        var next = IsOf(pair, largest.Input, t => t.Frequency.Si) ? double.IsInfinity(largest.DegreesOfFreedom) ? "read its note more finely" : "pluck it more often"
            : IsOf(pair, largest.Input, t => t.Span.Length.Si) ? "pluck both belts in one fixture, or measure the span better"
            : IsOf(pair, largest.Input, t => t.Span.Density.Si) ? "weigh a longer piece, or take both belts from one reel"
            : "know it better";
        return $"The largest share is the {largest.Input}: {next}.";
    }

    private static bool IsOf(BeltPair pair, string input, Func<BeltTension, Uncertain> part)
        => part(pair.First).Terms.Concat(part(pair.Second).Terms).Any(t => t.Input.Called == input);

    private static string Sentence(IReadOnlyList<string> names, string one, string many)
        => names.Count == 0 ? "" : $"The {List(names)} {(names.Count == 1 ? one : many)}.";

    private static string List(IReadOnlyList<string> names)
        => names.Count == 1 ? names[0] : $"{string.Join(", ", names.SkipLast(1))} and {names[^1]}";

    private static string Shown(Uncertain ratio) => ratio.StandardUncertainty > 0 ? ratio.ToShortString() : NumberText.Significant(ratio.Value, 3);
}
