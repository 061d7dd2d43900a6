namespace Waywright.Notebooks;

/// <summary>A sweep after mounting against its prediction.</summary>
internal sealed class MountedCheckView : View<MountedCheck>
{
    protected override string Verdict(MountedCheck result)
    {
        var place = $"{Shown.Mm(Math.Round(result.DepartureAtMm))} mm";
        var size = $"{result.DepartureUm.ToShortString()} um";
        return result.Departure switch
        {
            MountedDeparture.None => $"Leave it as it is: the mounted top is what was predicted, {Shown.Um(result.SweptUm)} um as swept and {Shown.Um(result.Predicted.ResidualUm)} predicted.",
            MountedDeparture.LooseScrew => $"Tighten the screw in hole {Hole(result)} and sweep again: the top stands {size} higher at {place} than predicted, about as it would without that screw. If it was tight, look for a chip under the rail there.",
            MountedDeparture.Chip => $"Take the rail up, clean rail and base near {place}, mount it and sweep again: something lifts it {size} there.",
            MountedDeparture.LowBase => $"Sweep the base near {place}: the top lies {(-result.DepartureUm).ToShortString()} um lower there than predicted, so the base is not as {Known(result)}.",
            MountedDeparture.BentBase => $"Sweep the base again as it stands now: the top is {(result.DepartureUm.Value < 0 ? (-result.DepartureUm).ToShortString() + " um more hollow" : size + " more crowned")} than predicted, so the base is not as {Known(result)}, or warmer or colder than then.",
            _ => $"Loosen the screws, clean, tighten in order and sweep again: the top departs from the prediction by {Shown.Um(result.LargestUm)} um at {Shown.Mm(result.LargestAtMm)} mm, and no single chip, screw or bow explains it.{(result.Predicted.Base is null ? " Sweep the base too: it was taken as flat." : "")}",
        };
    }

    protected override string Text(MountedCheck result) => $"{Verdict(result)}\n{Table(result)}\n{string.Join('\n', Notes(result))}";

    protected override string Html(MountedCheck result)
        => Markup.View(
            Verdict(result),
            FigureHtml.Of(MountedCheckPicture.Of(result), MountedCheckPicture.Caption(result)),
            Markup.Details("Station by station", Markup.Table(Table(result), "Swept less predicted")),
            Markup.Details("What it rests on", Markup.List(Notes(result))));

    protected override IEnumerable<Figure> Figures(MountedCheck result, string id)
    {
        const string method = "generalised least squares, height and tilt free";
        yield return new Figure($"{id}/holds", "Whether the mounted top is what was predicted", null, result.Holds ? "holds" : "departs", "1", method: method);
        yield return new Figure($"{id}/chance", "Chance that a mounting as predicted differs by as much", result.Chance, null, "1", method: method, relativeTolerance: 1e-6, absoluteTolerance: 1e-9);
        yield return new Figure($"{id}/swept", "Mounted top as swept", result.SweptUm, null, "um", method: "STRt, minimum zone", relativeTolerance: 1e-9, absoluteTolerance: 1e-9);
        if (!result.Holds)
            yield return FigureOf.Uncertain($"{id}/departure", $"Departure at {Shown.Mm(Math.Round(result.DepartureAtMm))} mm", result.DepartureUm, "um", method);
    }

    private static TextTable Table(MountedCheck check)
    {
        var table = new TextTable("#from the dot mm", "#swept less predicted um", "#u um", "~verdict");
        for (var i = 0; i < check.Difference.Count; i++)
        {
            var x = check.Difference.PositionsMm[i];
            table.Add(Shown.Mm(x), Shown.Um(check.Difference.HeightsUm[i]), Shown.Um(check.UncertaintyUm[i]), check.DepartingMm.Contains(x) ? "departs" : "within chance");
        }

        return table;
    }

    private static IEnumerable<string> Notes(MountedCheck check)
    {
        yield return $"Chance that a mounting as predicted differs by as much: {Shown.Percent(check.Chance)} %; below 5 % it counts as a departure. Looked at together: all stations (chi-squared), and the largest single one ({Shown.Um(check.StationLimit)} u).";
        yield return "The sweep's height and tilt are free. Uncertainties of both sweeps count, the free one carried through the same screws and contacts; what both share under one name cancels as far as it does.";
        yield return check.Predicted.Base is null ? "The base was not swept: the prediction takes it as flat, so its own shape shows here as a departure." : "The base's own sweep is in the prediction.";
        if (!check.Holds)
            yield return "A loose screw and a chip under it lift the rail in the same shape; only the size tells them apart. The cause named is the one that fits best, not a proof. A screw is tightened by hand to what its maker allows.";
    }

    private static string Known(MountedCheck check) => check.Predicted.Base is null ? "flat as it was taken for" : "it was swept";

    private static string Hole(MountedCheck check) => check.DepartureHole is { } hole ? Shown.Count(hole) : Shown.None;
}
