using System.Globalization;

namespace Waywright.Notebooks;

/// <summary>A pitch.</summary>
internal sealed class BeltPitchView : View<BeltPitch>
{
    protected override string Verdict(BeltPitch result) => Sentences.First(result.Verdict);

    protected override string Text(BeltPitch result) => $"{Verdict(result)}\n{Table(result)}\n{Sentences.Rest(result.Verdict)}";

    protected override string Html(BeltPitch result) => Markup.View(
        Verdict(result),
        FigureHtml.Of(BeltFitPicture.Pitch(result), "The measured pitch with its 95 % interval, and the pitches nearest to it with how likely each is."),
        Markup.Table(Table(result), "Pitches by likelihood"),
        Markup.Note(Sentences.Rest(result.Verdict)),
        Markup.Details("What it rests on", Markup.List($"Length over {Shown.Count(result.Pitches)} pitches: {result.Over.TakenAs}.", "A belt's own pitch is taken to be within 0.1 % of its nominal one unless said otherwise (common practice).", "All pitches and 'none of these' are taken as equally likely before the measurement.")));

    protected override IEnumerable<Figure> Figures(BeltPitch result, string id)
    {
        yield return FigureOf.Uncertain($"{id}/pitch", "pitch of the belt", result.PitchMm, "mm", "length over pitches");
        yield return new Figure($"{id}/kind", "pitch found", null, result.Found?.Name ?? "undecided", "1", method: "likelihood of nominal pitches, 99 %");
    }

    private static TextTable Table(BeltPitch pitch)
    {
        var table = new TextTable("pitch", "#mm", "#likely, %");
        foreach (var candidate in pitch.Candidates.Take(5))
            table.Add(candidate.Name, candidate.PitchMm?.ToString("0.000", CultureInfo.InvariantCulture) ?? Shown.None, Shown.Percent(candidate.Probability));
        return table;
    }
}

/// <summary>A density.</summary>
internal sealed class BeltDensityView : View<BeltDensity>
{
    protected override string Verdict(BeltDensity result) => $"The belt weighs {result.Density.ToShortString()}, {result.Status}.";

    protected override string Text(BeltDensity result) => $"{Verdict(result)}\n{Table(result)}\n{result.Verdict}\n{Budget(result)}";

    protected override string Html(BeltDensity result) => Markup.View(Verdict(result), Markup.Table(Table(result), "Density and how it was found"), Markup.Note(result.IsConsistent == false ? result.Verdict : result.Next), BudgetView.Html(Budget(result)));

    protected override IEnumerable<Figure> Figures(BeltDensity result, string id)
    {
        yield return FigureOf.Quantity($"{id}/density", "linear density", result.Density, "kg/m", result.Status);
        if (result.BendingStiffnessNm2 is { } bending)
            yield return FigureOf.Uncertain($"{id}/bending-stiffness", "bending stiffness", bending, "N.m2", result.Status);
    }

    private static UncertaintyBudget Budget(BeltDensity density) => new(density.Next, density.Density.Si, "kg/m");

    private static TextTable Table(BeltDensity density)
    {
        var table = new TextTable("quantity", "#value").Add("linear density", density.Density.ToShortString());
        if (density.BendingStiffnessNm2 is { } bending)
            table.Add("bending stiffness, N mm2", (1e6 * bending).ToShortString());
        if (density.ChiSquared is { } chi)
            table.Add("chi-squared of the readings", $"{chi.ToString("0.0", CultureInfo.InvariantCulture)} ({(density.IsConsistent == true ? "they agree" : "they don't agree")})");
        return table;
    }
}

/// <summary>A ladder of partials.</summary>
internal sealed class PartialsFitView : View<PartialsFit>
{
    protected override string Verdict(PartialsFit result) => Sentences.First(result.Verdict);

    protected override string Text(PartialsFit result) => $"{Verdict(result)}\n{Table(result)}";

    protected override string Html(PartialsFit result) => Markup.View(
        Verdict(result),
        FigureHtml.Of(BeltFitPicture.Ladder(result), "An ideal string would be level: the rise is the bending stiffness."),
        Markup.Table(Table(result), "Partials and their fit"),
        Markup.Note(string.Create(CultureInfo.InvariantCulture, $"Tension and stiffness are correlated by {result.Correlation:0.00}: what one is read too high, the other is read too low.")));

    protected override IEnumerable<Figure> Figures(PartialsFit result, string id)
    {
        yield return FigureOf.Quantity($"{id}/tension", "tension", result.Tension, "N", "fit of partials");
        yield return FigureOf.Uncertain($"{id}/bending-stiffness", "bending stiffness", result.BendingStiffnessNm2, "N.m2", "fit of partials");
    }

    private static TextTable Table(PartialsFit fit)
    {
        var table = new TextTable("#partial", "#note Hz", "#less the fitted Hz");
        for (var i = 0; i < fit.Numbers.Count; i++)
            table.Add(Shown.Count(fit.Numbers[i]), fit.NotesHz[i].ToString("0.00", CultureInfo.InvariantCulture), fit.ResidualsHz[i].ToString("+0.00;-0.00;0.00", CultureInfo.InvariantCulture));
        return table;
    }
}

/// <summary>Notes along the travel.</summary>
internal sealed class TravelFitView : View<TravelFit>
{
    protected override string Verdict(TravelFit result) => Sentences.First(result.Verdict);

    protected override string Text(TravelFit result) => $"{Verdict(result)}\n{Table(result)}\n{Sentences.Rest(result.Verdict)}";

    protected override string Html(TravelFit result) => Markup.View(
        Verdict(result),
        FigureHtml.Of(BeltFitPicture.Travel(result), "One tension is one straight line; its slope gives the tension, and no absolute length enters."),
        FigureHtml.Of(BeltFitPicture.TravelRest(result), "What the line leaves: a bow or a step here says that the tension changes along the travel."),
        Markup.Table(Table(result), "Places of the carriage"),
        Markup.Note(Sentences.Rest(result.Verdict)),
        Markup.Details("The line", Markup.List(
            $"T / mu {result.TensionOverDensity.ToShortString()} m2/s2; end offset {result.EndOffset.ToShortString()}; correlation {result.Correlation.ToString("0.00", CultureInfo.InvariantCulture)}.",
            result.ChiSquared is { } chi ? $"Chi-squared {chi.ToString("0.0", CultureInfo.InvariantCulture)} for {Shown.Count(result.NotesHz.Count - 2)} degrees of freedom." : "No uncertainties were stated: the scatter about the line gave them.",
            result.CurveT is { } t ? $"Curve over its uncertainty: {t.ToString("0.0", CultureInfo.InvariantCulture)}." : "Too few places to test for a curve.")));

    protected override IEnumerable<Figure> Figures(TravelFit result, string id)
    {
        yield return FigureOf.Uncertain($"{id}/tension-over-density", "tension over density", result.TensionOverDensity, "m2/s2", "line of periods over lengths");
        yield return FigureOf.Quantity($"{id}/end-offset", "end offset", result.EndOffset, "m", "line of periods over lengths");
        if (result.Tension is { } tension)
            yield return FigureOf.Quantity($"{id}/tension", "tension", tension, "N", "line of periods over lengths");
        yield return new Figure($"{id}/changes", "tension changes along the travel", null, result.IsChangingAlongTravel switch { true => "yes", false => "no", null => "too few places" }, "1", method: "chi-squared and curve, 95 %");
    }

    private static TextTable Table(TravelFit fit)
    {
        var table = new TextTable("#length mm", "#note Hz", "#against the line %");
        for (var i = 0; i < fit.NotesHz.Count; i++)
            table.Add(Shown.Mm(1000 * fit.LengthsM[i]), fit.NotesHz[i].ToString("0.00", CultureInfo.InvariantCulture), (100 * fit.ResidualShares[i]).ToString("+0.00;-0.00;0.00", CultureInfo.InvariantCulture));
        return table;
    }
}
