using System.Globalization;

namespace Waywright.Notebooks;

/// <summary>A fitted straight line.</summary>
internal sealed class LineFitView : View<LineFit>
{
    protected override string Verdict(LineFit result)
        => string.Create(CultureInfo.InvariantCulture, $"y = {Shown.ToSpread(result.Intercept, 2 * result.InterceptUncertainty)} + {Shown.ToSpread(result.Slope, 2 * result.SlopeUncertainty)} x, residual standard deviation {result.ResidualDeviation:G3} ({result.DegreesOfFreedom} degrees of freedom).");

    protected override string Text(LineFit result) => $"{Verdict(result)}\n{Table(result)}";

    protected override string Html(LineFit result) => Markup.View(Verdict(result), Markup.Table(Table(result), "The line's parameters"));

    protected override IEnumerable<Figure> Figures(LineFit result, string id)
    {
        yield return Parameter("intercept", result.Intercept, result.InterceptUncertainty);
        yield return Parameter("slope", result.Slope, result.SlopeUncertainty);

        Figure Parameter(string name, double value, double u)
            => new($"{id}/{name}", name, value, null, "1", u, result.DegreesOfFreedom > 0 ? result.DegreesOfFreedom : null, method: "straight line by least squares", relativeTolerance: 1e-9, absoluteTolerance: 1e-6 * u);
    }

    private static TextTable Table(LineFit fit)
        => new TextTable("parameter", "#estimate", "#standard uncertainty")
            .Add("intercept", Shown.ToSpread(fit.Intercept, 2 * fit.InterceptUncertainty), Two(fit.InterceptUncertainty))
            .Add("slope", Shown.ToSpread(fit.Slope, 2 * fit.SlopeUncertainty), Two(fit.SlopeUncertainty));

    private static string Two(double value) => value.ToString("G2", CultureInfo.InvariantCulture);
}
