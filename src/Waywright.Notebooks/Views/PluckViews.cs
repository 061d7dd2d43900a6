using System.Globalization;

namespace Waywright.Notebooks;

/// <summary>A take.</summary>
internal sealed class PluckTakeView : View<PluckTake>
{
    protected override string Verdict(PluckTake result) => Sentences.First(result.Verdict);

    protected override string Text(PluckTake result) => $"{Verdict(result)}\n{PluckTables.Plucks([result])}\n{Sentences.Rest(result.Verdict)}";

    protected override string Html(PluckTake result) => Markup.View(Verdict(result), [.. PluckTables.Pictures(result), Markup.Table(PluckTables.Plucks([result]), "Plucks of the take"), Markup.Note(Sentences.Rest(result.Verdict)), PluckTables.Rests(result)]);

    protected override IEnumerable<Figure> Figures(PluckTake result, string id) => PluckTables.Figure(id, result.Frequency);
}

/// <summary>A note from takes.</summary>
internal sealed class PluckNoteView : View<PluckNote>
{
    protected override string Verdict(PluckNote result) => Sentences.First(result.Verdict);

    protected override string Text(PluckNote result) => $"{Verdict(result)}\n{PluckTables.Plucks(result.Takes)}\n{Sentences.Rest(result.Verdict)}";

    protected override string Html(PluckNote result)
    {
        var best = result.Takes.FirstOrDefault(t => t.IsUsable) ?? result.Takes[0];
        return Markup.View(Verdict(result), [.. PluckTables.Pictures(best), Markup.Table(PluckTables.Plucks(result.Takes), "Plucks of all takes"), Markup.Note(Sentences.Rest(result.Verdict)), PluckTables.Rests(best)]);
    }

    protected override IEnumerable<Figure> Figures(PluckNote result, string id) => PluckTables.Figure(id, result.Frequency);
}

/// <summary>What takes and notes show alike.</summary>
internal static class PluckTables
{
    /// <summary>The fit is found by steps: another processor may end a hundredth of its uncertainty aside.</summary>
    private const double RerunShareOfU = 0.01;

    public static TextTable Plucks(IReadOnlyList<PluckTake> takes)
    {
        var table = takes.Count > 1 ? new TextTable("take", "#at s", "#note Hz", "#U cents", "#partials", "~to be used") : new TextTable("#at s", "#note Hz", "#U cents", "#partials", "~to be used");
        foreach (var take in takes)
        {
            foreach (var pluck in take.Plucks)
            {
                var note = pluck.Frequency?.Si;
                string[] cells =
                [
                    Number(pluck.StartSeconds, "0.00"),
                    note is null ? Shown.None : Number(note.Value, "0.00"),
                    note is null ? Shown.None : Number(PluckCents.Of(note.Expanded().U, note.Value), "0.0"),
                    Shown.Count(pluck.Partials.Count),
                    pluck.IsUsable ? "yes" : $"no: {string.Join(", ", pluck.Reasons.Select(r => r.Split(':')[0]))}",
                ];
                table.Add(takes.Count > 1 ? [take.Source.Split('/')[^1], .. cells] : cells);
            }
        }

        return table;
    }

    public static IEnumerable<string> Pictures(PluckTake take)
    {
        yield return FigureHtml.Of(PluckPicture.Waveform(take), $"{take.Source.Split('/')[^1]}: the first 30 ms of a pluck are the finger; what follows is used until it is 25 dB down.");
        if (PluckPicture.Spectrum(take) is { } spectrum)
            yield return FigureHtml.Of(spectrum, "The note is the lowest rung of the ladder, also where it is weak or missing: the distance of the rungs gives it.");
    }

    public static string Rests(PluckTake take)
    {
        var best = take.Plucks.FirstOrDefault(p => p.IsUsable) ?? take.Plucks[0];
        var lines = new List<string>();
        if (best.Frequency is { } note)
            lines.Add(string.Create(CultureInfo.InvariantCulture, $"u {PluckCents.Of(note.Si.StandardUncertainty, note.Si.Value):0.00} cents of one pluck: {PluckCents.Of(best.FitUncertaintyHz, note.Si.Value):0.00} from noise and the partials' scatter, 1.5 because a real string's own note is no sharper, the rest from clock and change of pitch."));
        if (best.GlideCents != 0)
            lines.Add(string.Create(CultureInfo.InvariantCulture, $"The note starts {best.GlideCents:0.0} cents high and falls as the sound dies down: pluck more gently. The note given is that without amplitude."));
        if (best.RunnersUp.Count > 0)
            lines.Add(string.Create(CultureInfo.InvariantCulture, $"Next best notes: {string.Join(", ", best.RunnersUp.Select(r => string.Create(CultureInfo.InvariantCulture, $"{r.FrequencyHz:0.0} Hz ({100 * r.Strength:0} % as strong)")))}. Half the note is a quarter of the tension."));
        lines.Add(take.MainsHumHz is { } hum ? string.Create(CultureInfo.InvariantCulture, $"Mains hum of {hum:0.00} Hz was fitted to the quiet before the first pluck and taken out.") : "No mains hum was seen in the quiet before the first pluck, or there was no quiet.");
        return Markup.Details("What it rests on", Markup.List(lines));
    }

    public static IEnumerable<Figure> Figure(string id, Measured<UnitsNet.Frequency>? note)
    {
        if (note is null)
            yield break;
        var figure = FigureOf.Quantity($"{id}/frequency", "note of the span", note, "Hz", "damped partials of plucks");
        yield return new Figure(figure.Id, figure.Name, figure.Value, null, figure.Unit, figure.StandardUncertainty, figure.DegreesOfFreedom, figure.CoverageFactor, figure.Low, figure.High, figure.Method, 1e-9, RerunShareOfU * note.Si.StandardUncertainty);
    }

    private static string Number(double value, string format) => value.ToString(format, CultureInfo.InvariantCulture);
}
