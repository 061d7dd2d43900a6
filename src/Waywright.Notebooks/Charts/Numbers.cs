namespace Waywright.Notebooks;

/// <summary>Numbers of a figure, rounded to a thousandth of their axis; whole ones as integers, which are shorter.</summary>
internal static class Numbers
{
    public static object Rounded(double value, Axis axis) => Short(Math.Round(value, axis.Decimals));

    /// <summary>A whole number as an integer.</summary>
    public static object Short(double value) => Math.Abs(value) < 1e9 && Math.Floor(value) == value ? (object)(int)value : value;

    public static object[] Rounded(IEnumerable<double> values, Axis axis) => values.Select(v => Rounded(v, axis)).ToArray();

    public static object[] Pair(Axis axis) => [Rounded(axis.Low, axis), Rounded(axis.High, axis)];

    /// <summary>First value and step when the rounded values are evenly spaced, else null.</summary>
    public static (object First, object Step)? Even(IReadOnlyList<double> values, Axis axis)
    {
        if (values.Count < 3)
            return null;
        var (first, step) = (Math.Round(values[0], axis.Decimals), Math.Round(values[1] - values[0], axis.Decimals));
        for (var i = 0; i < values.Count; i++)
        {
            if (Math.Abs(values[i] - first - (i * step)) > axis.Range * 1e-9)
                return null;
        }

        return step == 0 ? null : (Rounded(first, axis), Rounded(step, axis));
    }
}
