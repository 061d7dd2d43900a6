namespace Waywright;

/// <summary>How an uncertain number is written: two significant digits of U = k u for 95 %, the value to the same place.</summary>
internal static class UncertainText
{
    private const double Coverage = 0.95;
    private const int DigitsOfU = 2;

    /// <summary><c>180.00 mm U 0.57 mm k 1.96 (95 %)</c>, a form that is also read; <c>180 mm</c> where there is no uncertainty.</summary>
    public static string Full(Uncertain x, Unit? unit)
    {
        if (x.StandardUncertainty == 0)
            return Exact(x.Value, unit);
        var interval = x.Expanded(Coverage);
        var decimals = Decimals(interval.U, unit);
        return $"{Number(x.Value, unit, decimals)}{Symbol(unit)} U {Number(interval.U, unit, decimals)}{Symbol(unit)} k {NumberText.Rounded(interval.CoverageFactor, 2)} (95 %)";
    }

    /// <summary><c>180.00 mm (179.43 to 180.57)</c>; <c>180 mm</c> where there is no uncertainty.</summary>
    public static string Short(Uncertain x, Unit? unit)
    {
        if (x.StandardUncertainty == 0)
            return Exact(x.Value, unit);
        var interval = x.Expanded(Coverage);
        var decimals = Decimals(interval.U, unit);
        return $"{Number(x.Value, unit, decimals)}{Symbol(unit)} ({Number(interval.Low, unit, decimals)} to {Number(interval.High, unit, decimals)})";
    }

    private static string Exact(double value, Unit? unit) => NumberText.Plain(Shown(value, unit)) + Symbol(unit);

    private static string Number(double value, Unit? unit, int decimals) => NumberText.Rounded(Shown(value, unit), decimals);

    private static int Decimals(double u, Unit? unit) => NumberText.Decimals(Shown(u, unit), DigitsOfU);

    private static double Shown(double value, Unit? unit) => unit?.FromSi(value) ?? value;

    private static string Symbol(Unit? unit) => unit is null ? "" : " " + unit.Symbol;
}
