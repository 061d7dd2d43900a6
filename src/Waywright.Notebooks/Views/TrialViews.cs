using System.Globalization;

namespace Waywright.Notebooks;

/// <summary>What a Monte Carlo gave.</summary>
internal sealed class MonteCarloResultView : View<MonteCarloResult>
{
    protected override string Verdict(MonteCarloResult result)
    {
        var interval = result.Symmetric();
        var stable = result.IsStable == false ? " Not stable yet: run more trials." : "";
        var half = (interval.High - interval.Low) / 2;
        return string.Create(CultureInfo.InvariantCulture, $"{Shown.ToSpread(result.Mean, half)}, between {Shown.ToSpread(interval.Low, half)} and {Shown.ToSpread(interval.High, half)} with 95 % (standard uncertainty {result.StandardUncertainty:G2}).{stable}");
    }

    protected override string Text(MonteCarloResult result) => $"{Verdict(result)}\n{Basis(result)}";

    protected override string Html(MonteCarloResult result) => Markup.View(Verdict(result), Markup.Details("How it was found", Markup.List(Basis(result))));

    protected override IEnumerable<Figure> Figures(MonteCarloResult result, string id)
    {
        var interval = result.Symmetric();
        yield return new Figure(id, id, result.Mean, null, "1", result.StandardUncertainty, null, null, interval.Low, interval.High, "Monte Carlo (JCGM 101:2008)", 1e-9, 1e-6 * result.StandardUncertainty);
    }

    private static string Basis(MonteCarloResult result) => string.Create(CultureInfo.InvariantCulture, $"{result.Trials} trials of {result.Inputs.Count} inputs, seed {result.Seed} (JCGM 101:2008).");
}

/// <summary>Whether linear propagation would have done.</summary>
internal sealed class GumValidationView : View<GumValidation>
{
    protected override string Verdict(GumValidation result)
        => string.Create(CultureInfo.InvariantCulture, $"Linear propagation {(result.Agrees ? "agrees with" : "is not good enough here: use")} the Monte Carlo (ends differ by {result.LowDifference:G2} and {result.HighDifference:G2}, tolerance {result.Tolerance:G2}).");

    protected override string Text(GumValidation result) => Verdict(result);

    protected override string Html(GumValidation result) => Markup.View(Verdict(result));
}

/// <summary>From where to where a value lies.</summary>
internal sealed class CoverageIntervalView : View<CoverageInterval>
{
    protected override string Verdict(CoverageInterval result) => string.Create(CultureInfo.InvariantCulture, $"{Shown.ToSpread(result.Low, (result.High - result.Low) / 2)} to {Shown.ToSpread(result.High, (result.High - result.Low) / 2)} with {100 * result.Coverage:0.#} %.");

    protected override string Text(CoverageInterval result) => Verdict(result);

    protected override string Html(CoverageInterval result) => Markup.View(Verdict(result));
}
