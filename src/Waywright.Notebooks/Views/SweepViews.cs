using System.Globalization;

namespace Waywright.Notebooks;

/// <summary>A face, its passes combined.</summary>
internal sealed class PooledSweepView : View<PooledSweep>
{
    protected override string Verdict(PooledSweep result) => Verdict(result, result.Uncertainty());

    protected override string Text(PooledSweep result)
    {
        var sure = result.Uncertainty();
        var interval = sure is null ? "" : $"\n{StraightnessUncertaintyView.Table(sure, result.Sweep.Setup)}\n{Next(result, sure)}\nAs read:";
        return $"{Verdict(result, sure)}{interval}\n{StraightnessFiguresView.Table(result.Straightness, result.Sweep.Setup)}\n{StraightnessFiguresView.Contacts(result.Straightness.MinimumZone)}\n{string.Join('\n', Repeats(result))}{SweepErrorsText.Of(result)}";
    }

    protected override string Html(PooledSweep result)
    {
        var sure = result.Uncertainty();
        var (free, budget) = (result.Hidden is null ? sure : null, sure?.Budget);
        var read = Markup.Table(StraightnessFiguresView.Table(result.Straightness, result.Sweep.Setup), $"Straightness of {result.Sweep.Name} about each reference line");
        return Markup.View(
            Verdict(result, sure),
            sure is null ? "" : $"<p>{Markup.Words(Next(result, sure, budget))}</p>",
            FigureHtml.Of(RailPicture.Of(result, sure: free), RailPicture.Caption(result, free?.Of(ReferenceLineKind.MinimumZone)), RailPicture.Data(result)),
            sure is null ? read : Markup.Table(StraightnessUncertaintyView.Table(sure, result.Sweep.Setup), $"Straightness of {result.Sweep.Name} with its 95 % interval") + Markup.Note(SweepErrorsText.LeftOut(result)) + Markup.Details("As read: height, depth, root mean square, slope", read),
            Markup.Details("How it was measured", Markup.List([SetupLine(result.Sweep), $"{Shown.First(Passes(result))} over {Shown.Count(result.Profile.Count)} stations.", .. Repeats(result), StraightnessFiguresView.Contacts(result.Straightness.MinimumZone)]) + Markup.Table(Alignment(result), "What alignment took off each pass")),
            SweepErrorsText.Corrections(result),
            Uncertain(result, sure, budget),
            Markup.Details("What it rests on", Markup.List(sure is null ? StraightnessFiguresView.Assumptions : [.. StraightnessFiguresView.Terms, .. UncertaintyText.Assumptions(sure)])));
    }

    protected override IEnumerable<Figure> Figures(PooledSweep result, string id)
        => StraightnessFiguresView.Of(result.Straightness, id).Concat(result.Uncertainty() is { } sure ? StraightnessUncertaintyView.Of(sure, id) : []);

    private static string Verdict(PooledSweep result, StraightnessUncertainty? sure)
    {
        if (result.Profile.Count < 3)
            return $"{Shown.First(result.Sweep.Name)}: sweep it at more stations. Two stations always lie on a line and say nothing about straightness.";
        var zone = result.Straightness.MinimumZone.Line;
        if (result.Hidden is { } hidden)
            return $"{Shown.First(result.Sweep.Name)}: not the free rail. {hidden} As read, STRt is {Shown.Um(zone.STRtUm, result.Sweep.Setup)} um about the minimum zone.";
        return sure is null
            ? $"{Shown.First(result.Sweep.Name)}: straight to {Shown.Um(zone.STRtUm, result.Sweep.Setup)} um (STRt about the minimum zone), from {Passes(result)} over {Shown.Count(result.Profile.Count)} stations."
            : UncertaintyText.Verdict(Shown.First(result.Sweep.Name), sure.Of(ReferenceLineKind.MinimumZone));
    }

    private static string Uncertain(PooledSweep pooled, StraightnessUncertainty? sure, IReadOnlyList<UncertaintyComponent>? budget)
    {
        const string heights = "What the heights are uncertain by";
        if (sure is not null)
        {
            var table = Markup.Table(BudgetPicture.Data("STRt", budget!), "What moves STRt, largest first");
            return Markup.Details("Where the uncertainty comes from", $"{table}<p>{heights}:</p>{SweepErrorsText.Errors(pooled)}") + StraightnessUncertaintyView.Contacted(sure);
        }


        return pooled.Errors is null ? "" : Markup.Details(heights, SweepErrorsText.Errors(pooled));
    }

    // Measuring a clamped rail better doesn't give the free one.
    private static string Next(PooledSweep pooled, StraightnessUncertainty sure, IReadOnlyList<UncertaintyComponent>? budget = null)
        => pooled.Hidden is null ? $"{UncertaintyText.Next(sure.Of(ReferenceLineKind.MinimumZone), budget ?? sure.Budget)} The figure is STRt about the minimum zone, from {Passes(pooled)} over {Shown.Count(pooled.Profile.Count)} stations."
            : "The intervals are those of the rail as it lay.";

    internal static string SetupLine(Sweep sweep)
        => sweep.Setup is { } setup ? $"Set-up {setup}."
            : sweep.SetupId is { } id ? $"Set-up '{id}' is named and no set-ups file was given, so the figures come without uncertainty."
            : "No set-up was given, so the figures come without uncertainty.";

    internal static string Scatter(PooledSweep pooled)
        => pooled.RepeatabilityUm is { } s
            ? $"A single reading repeats to {Shown.Um(s)} um (standard deviation, {Shown.Count(pooled.DegreesOfFreedom)} degrees of freedom), after each pass's own height and tilt were taken off."
            : "Nothing was repeated, so how well a reading repeats is not known.";

    /// <summary>What repeating showed: scatter, lays, neighbours.</summary>
    private static IEnumerable<string> Repeats(PooledSweep pooled)
    {
        yield return Scatter(pooled);
        if (pooled.Passes.Count > 1)
            yield return pooled.Lays.Verdict;
        if (pooled.Lag1 is { } lag)
            yield return $"Lag-1 correlation of the residuals {lag.ToString("0.00", CultureInfo.InvariantCulture)} (0 where neighbouring readings scatter independently; dirt, or a bow between lays, raises it).";
    }

    private static string Passes(PooledSweep pooled) => pooled.Passes.Count == 1 ? "1 pass" : $"{Shown.Count(pooled.Passes.Count)} passes";

    private static TextTable Alignment(PooledSweep pooled)
    {
        var table = new TextTable("pass", "direction", "lay", "#height um", "#tilt um/m");
        foreach (var pass in pooled.Passes)
            table.Add(pass.Pass.Pass, pass.Pass.Direction, pass.Pass.Lay, Shown.Um(pass.OffsetUm), Shown.Slope(pass.TiltUmPerM));
        return table;
    }
}

/// <summary>A face as read.</summary>
internal sealed class SweepView : View<Sweep>
{
    protected override string Verdict(Sweep result) => $"{Shown.First(result.Name)}: {Shown.Count(result.ReadingCount)} readings in {Shown.Count(result.Passes.Count)} {(result.Passes.Count == 1 ? "pass" : "passes")}.";

    protected override string Text(Sweep result) => $"{Verdict(result)}\n{Table(result)}";

    protected override string Html(Sweep result) => Markup.View(Verdict(result), Markup.Table(Table(result), "Passes as read"), Markup.Details("Set-up", Markup.List(PooledSweepView.SetupLine(result))));

    private static TextTable Table(Sweep sweep)
    {
        var table = new TextTable("pass", "direction", "lay", "#readings", "#from mm", "#to mm", "#lowest um", "#highest um");
        foreach (var pass in sweep.Passes)
        {
            table.Add(pass.Pass, pass.Direction, pass.Lay, Shown.Count(pass.PositionsMm.Count), Shown.Mm(pass.PositionsMm[0]), Shown.Mm(pass.PositionsMm[^1]),
                Shown.Um(pass.ReadingsUm.Min()), Shown.Um(pass.ReadingsUm.Max()));
        }

        return table;
    }
}

/// <summary>A file of sweeps as read.</summary>
internal sealed class SweepBatchView : View<SweepBatch>
{
    private const int Most = 40;

    protected override string Verdict(SweepBatch result)
        => result.Rails.Count == 0
            ? $"One bare profile of {Shown.Count(result.Sweeps.Sum(s => s.ReadingCount))} stations; figures come without uncertainty."
            : $"{Shown.Count(result.Rails.Count)} rails, {Shown.Count(result.Sweeps.Count)} faces, {Shown.Count(result.Sweeps.Sum(s => s.ReadingCount))} readings.";

    protected override string Text(SweepBatch result) => $"{Verdict(result)}\n{Table(result)}\nRead as: {result.ReadAs}.{Left(result)}";

    protected override string Html(SweepBatch result)
        => Markup.View(Verdict(result), Markup.Details("What was read", Markup.Table(Table(result), "Faces as read") + Markup.List([$"Read as: {result.ReadAs}.{Left(result)}", .. SetupLines(result)])));

    private static IEnumerable<string> SetupLines(SweepBatch batch) => batch.Sweeps.Select(PooledSweepView.SetupLine).Distinct();

    private static string Left(SweepBatch batch) => batch.Sweeps.Count > Most ? $" {Shown.Count(batch.Sweeps.Count - Most)} more faces are not listed." : "";

    private static TextTable Table(SweepBatch batch)
    {
        var table = new TextTable("face", "#passes", "#readings", "set-up");
        foreach (var sweep in batch.Sweeps.Take(Most))
            table.Add(sweep.Name, Shown.Count(sweep.Passes.Count), Shown.Count(sweep.ReadingCount), sweep.SetupId ?? Shown.None);
        return table;
    }
}
