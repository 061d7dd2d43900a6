using System.Globalization;

namespace Waywright.Notebooks;

/// <summary>How figures are written where their uncertainty is not known yet.</summary>
internal static class Shown
{
    public const string None = "-";

    /// <summary>um to a tenth, to whole um off a dial with divisions of 10 um or more.</summary>
    public static string Um(double? um, Setup? setup = null)
        => um is not { } value ? None : Plain(value).ToString(setup is { DivisionUm: >= 10 } ? "0" : "0.0", CultureInfo.InvariantCulture);

    /// <summary>A limit in um, as it was set.</summary>
    public static string Limit(double? um) => um is { } value ? Mm(value) : None;

    /// <summary>um/m to a tenth.</summary>
    public static string Slope(double umPerM) => Plain(umPerM).ToString("0.0", CultureInfo.InvariantCulture);

    /// <summary>A number to the second significant digit of its spread (U, or the half of an interval).</summary>
    public static string ToSpread(double value, double spread)
    {
        if (!(spread > 0))
            return value.ToString("G6", CultureInfo.InvariantCulture);
        var decimals = Math.Clamp(1 - (int)Math.Floor(Math.Log10(spread)), 0, 12);
        return Math.Round(value, decimals).ToString("F" + decimals.ToString(CultureInfo.InvariantCulture), CultureInfo.InvariantCulture);
    }

    /// <summary>mm as it was given.</summary>
    public static string Mm(double mm) => mm.ToString("0.###", CultureInfo.InvariantCulture);

    public static string Count(int count) => count.ToString(CultureInfo.InvariantCulture);

    /// <summary>A share of one in whole per cent; neither 0 nor 100 unless it is.</summary>
    public static string Percent(double share) => share is > 0 and < 0.01 ? "< 1" : share is > 0.99 and < 1 ? "> 99" : (100 * share).ToString("0", CultureInfo.InvariantCulture);

    public static string First(string text) => text.Length == 0 ? text : char.ToUpperInvariant(text[0]) + text[1..];

    // A figure that rounds to zero is written without a minus.
    private static double Plain(double value) => Math.Abs(value) < 0.05 ? 0 : value;

    /// <summary>An estimate with its 95 % interval: <c>14.2 (12.1 to 16.3)</c>.</summary>
    public static string Estimate(UncertainFigure figure, Setup? setup = null) => $"{Um(figure.EstimateUm, setup)} ({Um(figure.LowUm, setup)} to {Um(figure.HighUm, setup)})";
}
