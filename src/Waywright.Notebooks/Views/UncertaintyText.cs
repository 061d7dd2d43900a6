using System.Globalization;

namespace Waywright.Notebooks;

/// <summary>How a figure of straightness with its interval is told.</summary>
internal static class UncertaintyText
{
    private const double RerunTolerance = 1e-9;

    /// <summary>The verdict on STRt of a face or profile.</summary>
    public static string Verdict(string name, UncertainFigure figure)
    {
        if (!figure.IsDistinguishable)
            return $"{name}: not distinguishable from straight: read as {Um(figure.ObservedUm, figure)} um, and the same set-up reads up to {Two(figure.NoiseFloorUm)} um on a perfectly straight rail; at most {Um(figure.HighUm, figure)} um at 95 %.";
        var noise = figure.NoiseShareUm >= 0.05 ? $"noise adds about {figure.NoiseShareUm.ToString(figure.NoiseShareUm < 9.95 ? "0.0" : "0", CultureInfo.InvariantCulture)} um to what was read; " : "";
        return $"{name}: straight to {Um(figure.EstimateUm, figure)} um ({Um(figure.LowUm, figure)} to {Um(figure.HighUm, figure)} um at 95 %); {noise}the same set-up reads up to {Two(figure.NoiseFloorUm)} um on a perfectly straight rail.";
    }

    /// <summary>Estimate and interval without unit; where noise alone may have read as much, the upper end only.</summary>
    public static string Short(UncertainFigure figure)
        => figure.IsDistinguishable ? $"{Um(figure.EstimateUm, figure)} ({Um(figure.LowUm, figure)} to {Um(figure.HighUm, figure)})" : $"at most {Um(figure.HighUm, figure)}";

    /// <summary>What to do to know it better: the remedy of the largest component; only if needed, once the figure is above the noise.</summary>
    public static string Next(UncertainFigure figure, IReadOnlyList<UncertaintyComponent> budget)
        => $"{(figure.IsDistinguishable ? "If you need it closer" : "To know it better")}: {budget[0].Remedy.TrimEnd('.')} (largest part of the uncertainty: {budget[0].Name}).";

    /// <summary>STRt of the worst 100 mm, about which line.</summary>
    public static string Name(UncertainFigure figure)
        => $"{figure.Parameter}{(figure.WindowMm is { } window ? $" of the worst {Shown.Mm(window)} mm" : "")} about the {LineOf(figure.Line)}";

    /// <summary>A line as it stands in a sentence.</summary>
    public static string LineOf(ReferenceLineKind kind) => kind switch
    {
        ReferenceLineKind.EndPoints => "end-point line",
        ReferenceLineKind.LeastSquares => "least-squares line",
        _ => "minimum zone",
    };

    /// <summary>A figure for the record: estimate, standard uncertainty, interval.</summary>
    public static Figure Kept(string id, string name, UncertainFigure figure, string method)
        => new(id, name, figure.EstimateUm, null, "um", figure.StandardUncertaintyUm, low: figure.LowUm, high: figure.HighUm, method: method, relativeTolerance: RerunTolerance, absoluteTolerance: RerunTolerance);

    /// <summary>What every interval rests on.</summary>
    public static IEnumerable<string> Assumptions(StraightnessUncertainty sure)
    {
        yield return string.Create(CultureInfo.InvariantCulture, $"{sure.Trials} simulations of what the heights are uncertain by, seed {sure.Seed}: the same seed gives the same figures.");
        yield return "Noise alone never reads zero. The estimate takes off what noise is taken to have added; the noise floor is what 95 of 100 sweeps of a perfectly straight rail stay below.";
        yield return "The interval holds the true figure in at least 95 of 100 sweeps if the set-up's statements hold; docs/methods.md derives it.";
        if (sure.Of(ReferenceLineKind.MinimumZone) is var zone)
            yield return $"Whatever the shape of the rail, STRt about the minimum zone lies between {Um(zone.GuaranteedLowUm, zone)} and {Um(zone.GuaranteedHighUm, zone)} um (read as, less and plus the noise floor).";
    }

    /// <summary>A size to two significant digits.</summary>
    public static string Two(double value)
    {
        if (!(value > 0))
            return "0";
        var decimals = Math.Clamp(1 - (int)Math.Floor(Math.Log10(value)), 0, 3);
        return Math.Round(value, decimals).ToString("F" + decimals.ToString(CultureInfo.InvariantCulture), CultureInfo.InvariantCulture);
    }

    // Digits no finer than a tenth of the interval's half.
    private static string Um(double um, UncertainFigure figure)
    {
        var half = (figure.HighUm - figure.LowUm) / 2;
        return um.ToString(half >= 2.5 ? "0" : half >= 0.25 || half == 0 ? "0.0" : "0.00", CultureInfo.InvariantCulture);
    }
}
