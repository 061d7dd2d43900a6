using System.Globalization;

namespace Waywright.Notebooks;

/// <summary>Where an uncertainty comes from: the remedy, then shares as bars.</summary>
internal sealed class BudgetView : View<UncertaintyBudget>
{
    public static string Html(UncertaintyBudget budget, string summary = "Where the uncertainty comes from")
        => Markup.Details(summary, $"<p>{Markup.Encode(budget.Remedy)}</p>{(budget.Lines.Count == 0 ? "" : Bars(budget))}");

    protected override string Verdict(UncertaintyBudget result) => result.Remedy;

    protected override string Text(UncertaintyBudget result) => result.ToString();

    protected override string Html(UncertaintyBudget result) => Markup.View(result.Remedy, result.Lines.Count == 0 ? "" : Bars(result));

    private static string Bars(UncertaintyBudget budget)
    {
        var rows = budget.Lines.Select(line =>
        {
            var share = (100 * line.Share).ToString("0", CultureInfo.InvariantCulture);
            return $"<tr><td>{Markup.Encode(line.Input)}</td><td class=\"ww-num\">{share} %</td><td><span class=\"ww-bar\" style=\"--share: {share}%\"></span></td></tr>";
        });
        return $"<table class=\"ww-table\"><thead><tr><th scope=\"col\">input</th><th scope=\"col\" class=\"ww-num\">share of the variance</th><th scope=\"col\">as a bar</th></tr></thead><tbody>{string.Concat(rows)}</tbody></table>";
    }
}

/// <summary>A number with its uncertainty.</summary>
internal sealed class UncertainView : View<Uncertain>
{
    protected override string Verdict(Uncertain result) => result.ToString();

    protected override string Text(Uncertain result) => result.ToString();

    protected override string Html(Uncertain result) => Markup.View(result.ToString());

    protected override IEnumerable<Figure> Figures(Uncertain result, string id) => [FigureOf.Uncertain(id, id, result, "1", "calculated")];
}

/// <summary>An expanded uncertainty.</summary>
internal sealed class ExpandedUncertaintyView : View<ExpandedUncertainty>
{
    protected override string Verdict(ExpandedUncertainty result)
        => string.Create(CultureInfo.InvariantCulture, $"{result.Value:G6}, U {result.U:G2} (k {result.CoverageFactor:0.00}, coverage {100 * result.Coverage:0.#} %)");

    protected override string Text(ExpandedUncertainty result) => Verdict(result);

    protected override string Html(ExpandedUncertainty result) => Markup.View(Verdict(result));
}

/// <summary>A quantity with its uncertainty, whatever its kind.</summary>
internal sealed class MeasuredView : IView
{
    public Type ResultType => typeof(Measured<>);

    public string Verdict(object result) => result.ToString()!;

    public string Html(object result) => Markup.View(Verdict(result));

    public string Text(object result) => Verdict(result);

    public IEnumerable<Figure> Figures(object result, string id) => [];
}
