namespace Waywright.Notebooks;

/// <summary>A span with its note and tension.</summary>
internal sealed class BeltTensionView : View<BeltTension>
{
    protected override string Verdict(BeltTension result) => Sentences.First(result.Verdict);

    /// <summary>All but the verdict, as text.</summary>
    public static string Body(BeltTension belt) => $"{Table(belt)}\n{BeltEffectTable.Of(belt)}\n{belt.Budget}\n{Sentences.Rest(belt.Verdict)}";

    /// <summary>All but the verdict, as HTML.</summary>
    public static string[] Parts(BeltTension belt, string name = "the span") =>
    [
        FigureHtml.Of(BeltPicture.Tension(belt, name), $"{Shown.First(name)} at {belt.Frequency.ToShortString()} pulls with {belt.Tension.ToShortString()}; the tension grows with the square of the note."),
        Markup.Table(Table(belt), "The span, its note and its tension"),
        Markup.Table(BeltEffectTable.Of(belt), "What an ideal string leaves out"),
        Markup.Note(Sentences.Rest(belt.Verdict)),
        BudgetView.Html(belt.Budget),
        Markup.Details("What it rests on", Markup.List([belt.Tension.TakenAs.StartsWith("T = 4", StringComparison.Ordinal) || belt.Frequency.TakenAs.StartsWith("f = sqrt", StringComparison.Ordinal) ? "T = 4 µ L² f², first-order uncertainty (JCGM 100:2008, 5.1.2)." : "The exact notes of a tensioned beam, solved for the tension; first-order uncertainty (JCGM 100:2008, 5.1.2)."])),
    ];

    protected override string Text(BeltTension result) => $"{Verdict(result)}\n{Body(result)}";

    protected override string Html(BeltTension result) => Markup.View(Verdict(result), Parts(result));

    protected override IEnumerable<Figure> Figures(BeltTension result, string id)
    {
        yield return FigureOf.Quantity($"{id}/tension", "tension", result.Tension, "N", Method(result));
        yield return FigureOf.Quantity($"{id}/frequency", "note of the span", result.Frequency, "Hz", "plucked");
    }

    private static string Method(BeltTension belt) => belt.Span.BendingStiffnessNm2 is null ? "ideal string, T = 4 mu L^2 f^2" : $"tensioned beam, ends {belt.Span.First.Kind} and {belt.Span.Second.Kind}";

    private static TextTable Table(BeltTension belt)
        => new TextTable("quantity", "#value", "~taken as")
            .Add("free span", belt.Span.Length.ToShortString(), belt.Span.Length.TakenAs)
            .Add("linear density", belt.Span.Density.ToShortString(), belt.Span.Density.TakenAs)
            .Add("note", belt.Frequency.ToShortString(), belt.Frequency.TakenAs)
            .Add("tension", belt.Tension.ToShortString(), belt.Tension.TakenAs);
}

/// <summary>A belt of a log.</summary>
internal sealed class LoggedBeltView : View<LoggedBelt>
{
    protected override string Verdict(LoggedBelt result) => $"Belt {result.Belt} ({Plucks(result)}): {char.ToLowerInvariant(result.Tension.Verdict[0])}{Sentences.First(result.Tension.Verdict)[1..]}";

    protected override string Text(LoggedBelt result) => $"{Verdict(result)}\n{BeltTensionView.Body(result.Tension)}";

    protected override string Html(LoggedBelt result) => Markup.View(Verdict(result), BeltTensionView.Parts(result.Tension, $"belt {result.Belt}"));

    protected override IEnumerable<Figure> Figures(LoggedBelt result, string id) => Views.Find(typeof(BeltTension))!.Figures(result.Tension, id);

    private static string Plucks(LoggedBelt belt) => belt.Plucks == 1 ? "1 pluck" : $"{Shown.Count(belt.Plucks)} plucks";
}

/// <summary>A file of plucks.</summary>
internal sealed class BeltLogView : View<BeltLog>
{
    protected override string Verdict(BeltLog result) => $"{Shown.Count(result.Belts.Count)} {(result.Belts.Count == 1 ? "belt" : "belts")}, {Shown.Count(result.Belts.Sum(b => b.Plucks))} plucks.";

    protected override string Text(BeltLog result) => $"{Verdict(result)}\n{Table(result)}\nRead as: {result.ReadAs}.";

    protected override string Html(BeltLog result) => Markup.View(Verdict(result), Markup.Table(Table(result), "Belts as read"), Markup.Details("How it was read", Markup.List($"Read as: {result.ReadAs}.")));

    private static TextTable Table(BeltLog log)
    {
        var table = new TextTable("belt", "#plucks", "#scatter Hz", "#note", "#tension", "reel", "fixture");
        foreach (var belt in log.Belts)
        {
            table.Add(belt.Belt, Shown.Count(belt.Plucks), belt.ScatterHz is { } hz ? hz.ToString("0.00", System.Globalization.CultureInfo.InvariantCulture) : Shown.None,
                belt.Tension.Frequency.ToShortString(), belt.Tension.Tension.ToShortString(), belt.Reel ?? Shown.None, belt.Fixture ?? Shown.None);
        }

        return table;
    }
}

/// <summary>Two belts compared.</summary>
internal sealed class BeltPairView : View<BeltPair>
{
    protected override string Verdict(BeltPair result) => Sentences.First(Plain(result));

    protected override string Text(BeltPair result) => $"{Verdict(result)}\n{Table(result)}\n{Sentences.Rest(Plain(result))}";

    protected override string Html(BeltPair result) => Markup.View(
            Verdict(result),
            FigureHtml.Of(BeltPicture.Pair(result), "Both belts with their 95 % intervals: what they share makes these wide."),
            FigureHtml.Of(BeltPicture.Ratio(result), "Their ratio: what they share has cancelled, so it is known much better than either."),
            Markup.Table(Table(result), "Two belts and their ratio"),
            Markup.Note(Sentences.Rest(Plain(result))));

    protected override IEnumerable<Figure> Figures(BeltPair result, string id)
    {
        yield return FigureOf.Uncertain($"{id}/ratio", $"tension of {result.FirstName} over {result.SecondName}", result.Ratio, "1", "ratio of the tensions; what is shared cancels");
        yield return FigureOf.Quantity($"{id}/difference", $"tension of {result.FirstName} less {result.SecondName}", result.Difference, "N", "difference of the tensions");
        yield return new Figure($"{id}/equal", "equal within the limit", null, result.AreEqual switch { true => "yes", false => "no", null => "undecided" }, "1", method: "interval against the limit");
    }

    // The verdict marks the belts' names as code; a view has no need to.
    private static string Plain(BeltPair pair) => pair.Verdict.Replace("`", "", StringComparison.Ordinal);

    private static TextTable Table(BeltPair pair)
        => new TextTable("belt", "#tension", "#note")
            .Add(pair.FirstName, pair.First.Tension.ToShortString(), pair.First.Frequency.ToShortString())
            .Add(pair.SecondName, pair.Second.Tension.ToShortString(), pair.Second.Frequency.ToShortString())
            .Add($"{pair.FirstName} / {pair.SecondName}", pair.Ratio.ToShortString(), Shown.None);
}

/// <summary>A span without a note yet.</summary>
internal sealed class BeltSpanView : View<BeltSpan>
{
    protected override string Verdict(BeltSpan result) => $"A free span of {result.Length.ToShortString()} at {result.Density.ToShortString()}: pluck it and read its note.";

    protected override string Text(BeltSpan result) => $"{Verdict(result)}\nSpan {result.Length.TakenAs}; density {result.Density.TakenAs}.";

    protected override string Html(BeltSpan result) => Markup.View(Verdict(result), Markup.List($"Span: {result.Length.TakenAs}.", $"Density: {result.Density.TakenAs}."));
}
