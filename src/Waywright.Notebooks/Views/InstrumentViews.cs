using System.Globalization;

namespace Waywright.Notebooks;

/// <summary>What a measuring tool is worth: its components, and what averages each out.</summary>
internal sealed class InstrumentView : View<Instrument>
{
    protected override string Verdict(Instrument result)
    {
        var all = result.Components();
        var u = Math.Sqrt(all.Sum(c => c.StandardUncertainty * c.StandardUncertainty));
        var largest = all.MaxBy(c => c.StandardUncertainty)!;
        return string.Create(CultureInfo.InvariantCulture, $"{result.Name}: one reading is good to a standard uncertainty of {u:G2} {result.Unit}. The largest part is {largest.Name}: {largest.Remedy}");
    }

    protected override string Text(Instrument result) => $"{Verdict(result)}\n{Table(result)}";

    protected override string Html(Instrument result) => Markup.View(Verdict(result), Markup.Table(Table(result), $"Parts of the uncertainty of {result.Name}"));

    private static TextTable Table(Instrument instrument)
    {
        var table = new TextTable("part", $"#standard uncertainty {instrument.Unit}", "what averages it out", "~remedy");
        foreach (var part in instrument.Components().OrderByDescending(c => c.StandardUncertainty))
            table.Add(part.Name, part.StandardUncertainty.ToString("G2", CultureInfo.InvariantCulture), Told(part.AveragesOut), part.Remedy);
        return table;
    }

    private static string Told(AveragesOut by) => by.ToString().ToLowerInvariant();
}

/// <summary>An instrument checked against known lengths.</summary>
internal sealed class CalibrationLineView : View<CalibrationLine>
{
    protected override string Verdict(CalibrationLine result)
    {
        var fits = result.IsConsistent switch
        {
            true => " The points agree with a straight line.",
            false => " The points don't agree with a straight line within their uncertainties: look for a bent scale or a misread point.",
            null => "",
        };
        return string.Create(CultureInfo.InvariantCulture, $"{Shown.First(result.Name)}: reading = {Shown.ToSpread(result.Intercept, 2 * result.InterceptUncertainty)} + {Shown.ToSpread(result.Slope, 2 * result.SlopeUncertainty)} x value, from {result.LowestX:G6} to {result.HighestX:G6}.{fits}");
    }

    protected override string Text(CalibrationLine result) => $"{Verdict(result)}\n{Table(result)}";

    protected override string Html(CalibrationLine result) => Markup.View(Verdict(result), Markup.Table(Table(result), "The calibration line (ISO/TS 28037)"));

    protected override IEnumerable<Figure> Figures(CalibrationLine result, string id)
    {
        yield return new Figure($"{id}/intercept", $"{result.Name}: intercept", result.Intercept, null, "1", result.InterceptUncertainty, method: "calibration line (ISO/TS 28037)", relativeTolerance: 1e-9, absoluteTolerance: 1e-6 * result.InterceptUncertainty);
        yield return new Figure($"{id}/slope", $"{result.Name}: slope", result.Slope, null, "1", result.SlopeUncertainty, method: "calibration line (ISO/TS 28037)", relativeTolerance: 1e-9, absoluteTolerance: 1e-6 * result.SlopeUncertainty);
    }

    private static TextTable Table(CalibrationLine line)
        => new TextTable("parameter", "#estimate", "#standard uncertainty")
            .Add("intercept", Shown.ToSpread(line.Intercept, 2 * line.InterceptUncertainty), Two(line.InterceptUncertainty))
            .Add("slope", Shown.ToSpread(line.Slope, 2 * line.SlopeUncertainty), Two(line.SlopeUncertainty))
            .Add("covariance", Two(line.Covariance), Shown.None);

    private static string Two(double value) => value.ToString("G2", CultureInfo.InvariantCulture);
}

/// <summary>A gauge study: how much of the scatter is the measuring.</summary>
internal sealed class GaugeStudyView : View<GaugeStudy>
{
    protected override string Verdict(GaugeStudy result)
        => string.Create(CultureInfo.InvariantCulture, $"Measuring scatters by {result.Gauge:G2} where the parts differ by {result.PartDeviation:G2} (standard deviations){(result.DistinctCategories is { } n ? $": enough to tell {n} classes of parts apart" : "")}.");

    protected override string Text(GaugeStudy result) => $"{Verdict(result)}\n{Table(result)}";

    protected override string Html(GaugeStudy result) => Markup.View(Verdict(result), Markup.Table(Table(result), "Analysis of variance"));

    private static TextTable Table(GaugeStudy study)
    {
        var table = new TextTable("source", "#degrees of freedom", "#sum of squares", "#mean square");
        foreach (var line in study.Lines)
            table.Add(line.Source, Shown.Count(line.DegreesOfFreedom), line.SumOfSquares.ToString("G4", CultureInfo.InvariantCulture), line.MeanSquare.ToString("G4", CultureInfo.InvariantCulture));
        return table;
    }
}

/// <summary>How likely a measured value is within its limits.</summary>
internal sealed class ConformityView : View<Conformity>
{
    protected override string Verdict(Conformity result)
        => string.Create(CultureInfo.InvariantCulture, $"Within its limits with a probability of {100 * result.Probability:0.#} % (measured {result.Value:G6}, standard uncertainty {result.StandardUncertainty:G3}).");

    protected override string Text(Conformity result) => Verdict(result);

    protected override string Html(Conformity result) => Markup.View(Verdict(result), Markup.Details("What it rests on", Markup.List("Probability of conformity, JCGM 106:2012, 7.")));
}

/// <summary>What accepting by measurement risks.</summary>
internal sealed class GlobalRiskView : View<GlobalRisk>
{
    protected override string Verdict(GlobalRisk result)
        => string.Create(CultureInfo.InvariantCulture, $"Of all parts, {100 * result.ConsumerRisk:0.##} % are bad and accepted, {100 * result.ProducerRisk:0.##} % good and turned away ({100 * result.Conforming:0.##} % are good).");

    protected override string Text(GlobalRisk result) => Verdict(result);

    protected override string Html(GlobalRisk result) => Markup.View(Verdict(result), Markup.Details("What it rests on", Markup.List("Global risks, JCGM 106:2012, 9.5.")));
}
