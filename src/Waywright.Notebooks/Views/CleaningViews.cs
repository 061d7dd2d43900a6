namespace Waywright.Notebooks;

/// <summary>A batch after the cleaning chain: what to look at, then each step.</summary>
internal sealed class CleanedBatchView : View<CleanedBatch>
{
    private const int MostNotes = 30;

    protected override string Verdict(CleanedBatch result)
    {
        var (changed, flagged) = (Readings(result, s => s.Changed), Readings(result, s => s.Flagged));
        var doubts = Doubts(result).Count();
        string[] looks = [.. flagged > 0 ? [$"the {CleaningStepView.Count(flagged, "flagged reading")}"] : Array.Empty<string>(), .. doubts > 0 ? [$"the {CleaningStepView.Count(doubts, "note")}"] : Array.Empty<string>()];
        var look = $"Look at {string.Join(" and ", looks)} below before you combine the passes";
        if (changed == 0)
            return looks.Length == 0 ? "Go on to combine the passes: nothing was changed and nothing stands out." : $"{look}; nothing was changed.";
        return looks.Length == 0 ? $"Check the {CleaningStepView.Count(changed, "reading")} that cleaning changed, then combine the passes." : $"{look}; {CleaningStepView.Count(changed, "reading")} {(changed == 1 ? "was" : "were")} changed.";
    }

    protected override string Text(CleanedBatch result)
        => $"{Verdict(result)}\n{Steps(result)}{string.Concat(result.Steps.Where(s => s.Changed.Count + s.Flagged.Count > 0).Select(s => $"\n{Shown.First(s.Name)}:\n{CleaningStepView.Readings(s)}"))}{string.Concat(Doubts(result).Take(MostNotes).Select(n => $"\n{n}"))}";

    protected override string Html(CleanedBatch result)
        => Markup.View(
            Verdict(result),
            Markup.Table(Steps(result), "Steps of the cleaning chain"),
            string.Concat(result.Steps.Where(s => s.Changed.Count + s.Flagged.Count > 0).Select(s => Markup.Details($"{Shown.First(s.Name)}: the readings", CleaningStepView.Table(s)))),
            Doubts(result).Any() ? Markup.List(Doubts(result).Take(MostNotes)) : "",
            Markup.Details("What was seen face by face", Markup.List(Notes(result))),
            Markup.Details("What the chain may change", Markup.List(Rules(result.Options))));

    protected override IEnumerable<Figure> Figures(CleanedBatch result, string id)
        => result.Steps.Where(s => s.Name is not ("retrace" or "drift")).SelectMany(s => new[]
        {
            new Figure($"{id}/{s.Name}/changed", $"readings that the step {s.Name} changed", s.Changed.Count, null, "1", method: "cleaning chain"),
            new Figure($"{id}/{s.Name}/flagged", $"readings that the step {s.Name} flagged", s.Flagged.Count, null, "1", method: "cleaning chain"),
        });

    private static int Readings(CleanedBatch batch, Func<CleaningStep, IReadOnlyList<CleanedReading>> of) => batch.Steps.Sum(s => of(s).Count);

    /// <summary>What a step could not settle: retrace and drift have notes on each face.</summary>
    private static IEnumerable<string> Doubts(CleanedBatch batch) => batch.Steps.Where(s => s.Name is not ("retrace" or "drift")).SelectMany(s => s.Notes);

    private static TextTable Steps(CleanedBatch batch)
    {
        var table = new TextTable("step", "#changed", "#flagged", "~found");
        foreach (var step in batch.Steps)
            table.Add(step.Name, Shown.Count(step.Changed.Count), Shown.Count(step.Flagged.Count), step.Found);
        return table;
    }

    private static IEnumerable<string> Notes(CleanedBatch batch)
    {
        var notes = batch.Steps.Where(s => s.Name is "retrace" or "drift").SelectMany(s => s.Notes).ToArray();
        return notes.Length > MostNotes ? notes[..MostNotes].Append($"{Shown.Count(notes.Length - MostNotes)} more are in the steps' notes.") : notes;
    }

    private static string[] Rules(CleaningOptions options) =>
    [
        options.TurnUm is { } turn ? $"Roll-over: jumps of about a turn, {Shown.Mm(turn)} um, are taken out." : "Roll-over: not looked for (TurnUm, one turn of the pointer in um, was not given).",
        options.FlipMirrored ? "Sign: passes that mirror the others are flipped." : "Sign: passes that mirror the others are flagged (FlipMirrored flips them).",
        $"Spikes: beyond {Shown.Mm(options.SpikeLimit)} standard deviations by Hampel's rule, {(options.DropSpikes ? "dropped" : "flagged (DropSpikes drops them)")}.",
        "Retrace and drift: told, never changed. Drift along a pass is tilt, which straightness doesn't see.",
    ];
}

/// <summary>One step.</summary>
internal sealed class CleaningStepView : View<CleaningStep>
{
    private const int Most = 40;

    public static string Count(int count, string what) => $"{Shown.Count(count)} {what}{(count == 1 ? "" : "s")}";

    public static TextTable Readings(CleaningStep step)
    {
        var table = new TextTable("face", "pass", "#position mm", "#before um", "#after um", "~why");
        foreach (var r in step.Changed.Concat(step.Flagged).Take(Most))
        {
            var after = r.AfterUm is not { } um ? "dropped" : um == r.BeforeUm ? "as it was" : Shown.Um(um);
            table.Add(r.Rail is null ? "profile" : $"{r.Rail} {(r.Face == RailFace.Top ? "top" : "side")}", r.Pass, Shown.Mm(r.PositionMm), Shown.Um(r.BeforeUm), after, r.Why);
        }

        return table;
    }

    public static string Table(CleaningStep step)
    {
        var left = step.Changed.Count + step.Flagged.Count - Most;
        return Markup.Table(Readings(step), $"Readings of the step {step.Name}") + (left > 0 ? Markup.Note($"{Shown.Count(left)} more are in the step's lists.") : "");
    }

    protected override string Verdict(CleaningStep result) => $"{Shown.First(result.Name)}: {char.ToLowerInvariant(result.Found[0])}{result.Found[1..]}";

    protected override string Text(CleaningStep result) => $"{Verdict(result)}{(result.Changed.Count + result.Flagged.Count > 0 ? $"\n{Readings(result)}" : "")}{string.Concat(result.Notes.Take(Most).Select(n => $"\n{n}"))}";

    protected override string Html(CleaningStep result)
        => Markup.View(
            Verdict(result),
            result.Changed.Count + result.Flagged.Count > 0 ? Table(result) : "",
            result.Notes.Count > 0 ? Markup.Details("Face by face", Markup.List(result.Notes.Take(Most))) : "");
}
