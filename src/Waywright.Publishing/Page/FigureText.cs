using System.Globalization;

namespace Waywright.Publishing;

/// <summary>Figures as the page writes them: two significant digits of the uncertainty, the value to the same place (JCGM 100:2008, 7.2.6).</summary>
internal static class FigureText
{
    private const int MostDecimals = 9;

    /// <summary>The number; of a figure that has one.</summary>
    public static string Value(Figure figure) => Number(figure.Value!.Value, Decimals(Spread(figure)));

    /// <summary><c>± 2.1 (k = 2)</c>, <c>8 to 19</c>, or nothing.</summary>
    public static string Uncertainty(Figure figure)
    {
        if (figure is { Low: { } low, High: { } high })
            return $"{Number(low, Decimals((high - low) / 2))} to {Number(high, Decimals((high - low) / 2))}";
        var factor = figure.CoverageFactor is { } k ? string.Create(CultureInfo.InvariantCulture, $" (k = {k:0.##})") : " (k = 1)";
        return Spread(figure) is { } spread and > 0 ? $"± {Number(spread, Decimals(spread))}{factor}" : "";
    }

    private static double? Spread(Figure figure) => figure switch
    {
        { Low: { } low, High: { } high } => (high - low) / 2,
        _ => figure.ExpandedUncertainty ?? figure.StandardUncertainty,
    };

    // Decimals that leave two significant digits; null: there is no spread to go by.
    private static int? Decimals(double? spread)
    {
        if (spread is not > 0)
            return null;
        var rounded = double.Parse(spread.Value.ToString("E1", CultureInfo.InvariantCulture), CultureInfo.InvariantCulture);
        return 1 - (int)Math.Floor(Math.Log10(rounded) + 1e-9);
    }

    private static string Number(double value, int? decimals)
    {
        var text = decimals switch
        {
            null => value.ToString("G6", CultureInfo.InvariantCulture),
            > MostDecimals => value.ToString("E3", CultureInfo.InvariantCulture),
            >= 0 => value.ToString(FormattableString.Invariant($"F{decimals}"), CultureInfo.InvariantCulture),
            _ => (Math.Round(value / Math.Pow(10, -decimals.Value)) * Math.Pow(10, -decimals.Value)).ToString("G15", CultureInfo.InvariantCulture),
        };
        return text.AsSpan().ContainsAnyInRange('1', '9') ? text.Replace('-', '−') : text.TrimStart('-'); // no minus before zero
    }
}
