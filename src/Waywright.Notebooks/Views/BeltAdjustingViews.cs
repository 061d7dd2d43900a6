using System.Globalization;

namespace Waywright.Notebooks;

/// <summary>What a turn does.</summary>
internal sealed class ScrewGainView : View<ScrewGain>
{
    protected override string Verdict(ScrewGain result) => Sentences.First(result.Verdict);

    protected override string Text(ScrewGain result) => $"{Verdict(result)}\n{Table(result)}\n{Sentences.Rest(result.Verdict)}";

    protected override string Html(ScrewGain result) => Markup.View(Verdict(result), Markup.Table(Table(result), "The measured gain of a turn"), Markup.Note(Sentences.Rest(result.Verdict)));

    protected override IEnumerable<Figure> Figures(ScrewGain result, string id) => [FigureOf.Uncertain($"{id}/gain", "tension a turn", result.NewtonPerTurn, "N", "notes before and after a known turn")];

    private static TextTable Table(ScrewGain gain)
        => new TextTable("quantity", "#value")
            .Add("before", gain.Before.Tension.ToShortString())
            .Add("after", gain.After.Tension.ToShortString())
            .Add("turns between", gain.Turns.ToShortString())
            .Add("gain, N a turn", gain.NewtonPerTurn.ToShortString())
            .Add("friction band", gain.FrictionBand?.ToShortString() ?? "not looked at");
}

/// <summary>How far to turn.</summary>
internal sealed class TurnAdviceView : View<TurnAdvice>
{
    protected override string Verdict(TurnAdvice result) => Sentences.First(Plain(result));

    protected override string Text(TurnAdvice result) => $"{Verdict(result)}\n{Table(result)}\n{Sentences.Rest(Plain(result))}".TrimEnd();

    protected override string Html(TurnAdvice result) => Markup.View(Verdict(result), Markup.Table(Table(result), "Turns left"), Markup.Note(Sentences.Rest(Plain(result))));

    protected override IEnumerable<Figure> Figures(TurnAdvice result, string id)
        => result.Turns is { } turns ? [FigureOf.Uncertain($"{id}/turns", "turns left, + tightens", turns, "1", "missing tension over the measured gain")] : [];

    private static string Plain(TurnAdvice advice) => advice.Verdict.Replace("`", "", StringComparison.Ordinal);

    private static TextTable Table(TurnAdvice advice)
        => new TextTable("turns", "#how many")
            .Add("left, + tightens", advice.Turns?.ToShortString() ?? Shown.None)
            .Add("smallest worth turning", advice.SmallestTurns is { } least ? Shown.ToSpread(least, least) : Shown.None);
}

/// <summary>A tension by deflection.</summary>
internal sealed class DeflectionCheckView : View<DeflectionCheck>
{
    protected override string Verdict(DeflectionCheck result) => Sentences.First(result.Verdict);

    protected override string Text(DeflectionCheck result) => $"{Verdict(result)}\n{Table(result)}\n{Sentences.Rest(result.Verdict)}".TrimEnd();

    protected override string Html(DeflectionCheck result) => Markup.View(
        Verdict(result),
        result.Plucked is null ? "" : FigureHtml.Of(Both(result), "The same belt twice, by its note and by a push, each with its 95 % interval."),
        Markup.Table(Table(result), "A push and what it moves"),
        Markup.Note(Sentences.Rest(result.Verdict)),
        BudgetView.Html(new UncertaintyBudget("Measure the deflection against a straightedge across the span: it is the smallest number here.", result.Tension.Si, "N")));

    protected override IEnumerable<Figure> Figures(DeflectionCheck result, string id)
    {
        yield return FigureOf.Quantity($"{id}/tension", "tension by deflection", result.Tension, "N", "T = F L / (4 d)");
        if (result.Difference is { } difference)
            yield return FigureOf.Quantity($"{id}/difference", "tension by deflection less by note", difference, "N", "shared inputs counted once");
    }

    private static Picture Both(DeflectionCheck check)
    {
        var (push, note) = (check.Tension.Si, check.Plucked!.Tension.Si);
        var (a, b) = (BeltPicture.IntervalOf(push), BeltPicture.IntervalOf(note));
        var x = Axis.Covering("tension", "N", [a.Low, a.High, b.Low, b.High]);
        return new Picture("By push and by note", $"By push {check.Tension.ToShortString()}, by note {check.Plucked.Tension.ToShortString()}.", x, BeltPicture.NoTicks(0, 3), new Panel(
            BeltPicture.Row("by push", push, 2), BeltPicture.Name("by push", push, 2), BeltPicture.Row("by note", note, 1), BeltPicture.Name("by note", note, 1)))
        { PlotHeight = 110 };
    }

    private static TextTable Table(DeflectionCheck check)
    {
        var table = new TextTable("quantity", "#value", "~taken as")
            .Add("span", check.Span.Length.ToShortString(), check.Span.Length.TakenAs)
            .Add("push", check.Push.ToShortString(), check.Push.TakenAs)
            .Add("deflection", check.Deflection.ToShortString(), check.Deflection.TakenAs)
            .Add("tension by deflection", check.Tension.ToShortString(), check.Tension.TakenAs);
        return check.Plucked is { } note ? table.Add("tension by note", note.Tension.ToShortString(), note.Tension.TakenAs).Add("difference", check.Difference!.ToShortString(), check.Difference.TakenAs) : table;
    }
}

/// <summary>A drive and its pretension.</summary>
internal sealed class BeltDriveView : View<BeltDrive>
{
    protected override string Verdict(BeltDrive result) => Sentences.First(result.Verdict);

    protected override string Text(BeltDrive result) => $"{Verdict(result)}\n{Table(result)}\n{Sentences.Rest(result.Verdict)}";

    protected override string Html(BeltDrive result) => Markup.View(
        Verdict(result),
        FigureHtml.Of(DrivePicture.Travel(result), "Both sides of the belt while the carriage pulls with its peak force, over the travel; they meet the limits at its ends."),
        Markup.Table(Table(result), "Forces of the drive"),
        Markup.Note(Sentences.Rest(result.Verdict)));

    protected override IEnumerable<Figure> Figures(BeltDrive result, string id)
    {
        yield return FigureOf.Quantity($"{id}/pretension", "pretension", result.Pretension, "N", "set");
        yield return FigureOf.Quantity($"{id}/slack-minimum", "lowest tension over the travel", result.SlackMinimum, "N", result.SlackMinimum.TakenAs);
        yield return FigureOf.Quantity($"{id}/tight-maximum", "highest tension over the travel", result.TightMaximum, "N", result.TightMaximum.TakenAs);
        yield return FigureOf.Quantity($"{id}/shaft-load", "shaft load at rest", result.ShaftLoad, "N", result.ShaftLoad.TakenAs);
    }

    private static TextTable Table(BeltDrive drive)
        => new TextTable("quantity", "#value", "#limit")
            .Add("peak force on the carriage", drive.EffectiveForce.ToShortString(), Shown.None)
            .Add("pretension", drive.Pretension.ToShortString(), Shown.None)
            .Add("slack side, lowest", drive.SlackMinimum.ToShortString(), "above 0")
            .Add("tight side, highest", drive.TightMaximum.ToShortString(), Limit(drive.AllowableN))
            .Add("shaft load at rest", drive.ShaftLoad.ToShortString(), Limit(drive.ShaftLimitN))
            .Add("shaft load at the peak", drive.PeakShaftLoad.ToShortString(), Limit(drive.ShaftLimitN));

    private static string Limit(double? newton) => newton is { } n ? $"{n.ToString("0.#", CultureInfo.InvariantCulture)} N" : "ask";
}

/// <summary>A belt's way.</summary>
internal sealed class BeltPathView : View<BeltPath>
{
    protected override string Verdict(BeltPath result) => Sentences.First(result.Verdict);

    protected override string Text(BeltPath result) => $"{Verdict(result)}\n{Table(result)}\n{Sentences.Rest(result.Verdict)}".TrimEnd();

    protected override string Html(BeltPath result) => Markup.View(
        Verdict(result),
        FigureHtml.Of(DrivePicture.Way(result), "The belt's cord around its pulleys, numbered as it meets them."),
        Markup.Table(Table(result), "Pulleys and spans"),
        Markup.Note(Sentences.Rest(result.Verdict)));

    protected override IEnumerable<Figure> Figures(BeltPath result, string id) => [new Figure($"{id}/length", "length of the belt at its cord", result.LengthMm / 1000, null, "m", method: "tangents and arcs", relativeTolerance: 1e-9)];

    private static TextTable Table(BeltPath path)
    {
        var table = new TextTable("#pulley", "#teeth", "#pitch diameter mm", "#wrap deg", "#teeth in mesh", "#span to the next mm");
        for (var i = 0; i < path.Pulleys.Count; i++)
        {
            var p = path.Pulleys[i];
            table.Add(Shown.Count(i + 1), p.Teeth is { } z ? Shown.Count(z) : "smooth", Two(p.PitchDiameterMm), path.WrapsDeg[i].ToString("0.0", CultureInfo.InvariantCulture),
                path.TeethInMesh[i] is { } mesh ? mesh.ToString("0.0", CultureInfo.InvariantCulture) : Shown.None, Two(path.SpansMm[i]));
        }

        return table;
    }

    private static string Two(double mm) => mm.ToString("0.00", CultureInfo.InvariantCulture);
}

/// <summary>A kind of belt from the tables.</summary>
internal sealed class BeltKindView : View<BeltKind>
{
    protected override string Verdict(BeltKind result) => $"{result.Name}: a start from tables, to be edited and measured.";

    protected override string Text(BeltKind result) => $"{Verdict(result)}\n{Table(result)}";

    protected override string Html(BeltKind result) => Markup.View(Verdict(result), Markup.Table(Table(result), "What tables say"));

    private static TextTable Table(BeltKind kind)
        => new TextTable("quantity", "#value", "~status")
            .Add("pitch, mm", kind.PitchMm.ToString("0.###", CultureInfo.InvariantCulture), "nominal")
            .Add("density, g/m for each mm of width", Number(kind.DensityGPerMPerMm), kind.DensitySource)
            .Add("allowable tension, N for an inch of width", Number(kind.AllowableNPerInch), "SDP/SI D265, Table 3; narrow belts take less than their share: (b / 25.4 mm)^1.14, exponent from memory")
            .Add("stretch stiffness EA, N for each mm of width", Number(kind.StretchNPerMm), "makers' catalogues");

    private static string Number(double? value) => value?.ToString("0.###", CultureInfo.InvariantCulture) ?? "not tabled";
}
