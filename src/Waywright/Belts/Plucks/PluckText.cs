using System;
using System.Linq;

namespace Waywright;

/// <summary>Takes and notes in words.</summary>
internal static class PluckText
{
    public static string Of(PluckTake take)
    {
        var usable = take.Plucks.Count(p => p.IsUsable);
        if (usable == 0)
            return $"Not usable: {First(take)}.{(take.Reasons.Count > 1 ? $" Also: {string.Join("; ", take.Reasons.Skip(1))}." : "")} Pluck again.";
        var some = usable < take.Plucks.Count ? $" {NumberText.Plain(usable)} of {NumberText.Plain(take.Plucks.Count)} plucks are usable: {string.Join("; ", take.Reasons)}." : "";
        return $"The span sounds {take.Frequency!.ToShortString()}, from {Plucks(usable)}.{some} {More(usable)}";
    }

    public static string Of(PluckNote note)
    {
        if (note.Frequency is null)
            return note.Disagreement is { } why ? $"Not usable: {why}." : $"Not usable: {First(note.Takes[0])}. Pluck again.";
        return $"The span sounds {note.Frequency.ToShortString()}, from {Plucks(note.UsedPlucks)} in {NumberText.Plain(note.Takes.Count)} {(note.Takes.Count == 1 ? "take" : "takes")}.{(note.Disagreement is { } other ? $" Left out: {other}." : "")} {More(note.UsedPlucks)}";
    }

    private static string First(PluckTake take) => take.Reasons.Count > 0 ? take.Reasons[0] : "no note was found";

    private static string Plucks(int count) => $"{NumberText.Plain(count)} {(count == 1 ? "pluck" : "plucks")}";

    private static string More(int usable) => usable < 3
        ? "Pluck three to five times: one pluck can't show how much they differ."
        : "Check the octave once: the note at another length of the span, or a known weight on its middle.";
}
