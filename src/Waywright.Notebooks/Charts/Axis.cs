using System.Globalization;

namespace Waywright.Notebooks;

/// <summary>One axis: what it shows, in which unit, over which range.</summary>
internal sealed record Axis
{
    private Axis(string title, string unit, double low, double high, double step, FixedList<double> ticks)
        => (Title, Unit, Low, High, Step, Ticks) = (title, unit, low, high, step, ticks);

    public string Title { get; }

    public string Unit { get; }

    /// <summary>A word on the sign, shown once behind the unit: <c>+ towards the dial</c>.</summary>
    public string? Sign { get; init; }

    public double Low { get; private init; }

    public double High { get; private init; }

    /// <summary>The distance between ticks.</summary>
    public double Step { get; }

    public FixedList<double> Ticks { get; }

    public double Range => High - Low;

    /// <summary>Title, unit and sign as they stand on the axis.</summary>
    public string Label => (Unit.Length == 0 ? Title : $"{Title}, {Unit}") + (Sign is null ? "" : $" ({Sign})");

    /// <summary>Digits behind the point that a thousandth of the axis asks for: no finer numbers go into a figure.</summary>
    public int Decimals => Math.Clamp((int)Math.Ceiling(-Math.Log10(Range / 1000)), 0, 12);

    /// <summary>Digits behind the point of the tick labels.</summary>
    public int TickDecimals => Enumerable.Range(0, 12).First(d => d == 11 || Math.Abs(Math.Round(Step, d) - Step) < Step * 1e-6);

    /// <summary>What stands at the ticks in place of their numbers, where this is an axis of rows.</summary>
    public FixedList<string>? Names { get; private init; }

    public string[] TickLabels => Names?.ToArray() ?? Ticks.Select(t => Written(t, TickDecimals)).ToArray();

    /// <summary>From the tick at or below the lowest value to the tick at or above the highest, in about so many steps of 1, 2, 2.5 or 5 times a power of ten.</summary>
    /// <exception cref="ArgumentException">No value, or one that isn't finite.</exception>
    public static Axis Covering(string title, string unit, IEnumerable<double> values, int steps = 5)
    {
        var (low, high) = (double.PositiveInfinity, double.NegativeInfinity);
        foreach (var value in values)
            (low, high) = (Math.Min(low, Point.Finite(value)), Math.Max(high, value));
        if (low > high)
            throw new ArgumentException("An axis needs a value to cover.", nameof(values));
        if (high - low <= 1e-9 * Math.Max(Math.Abs(low), Math.Abs(high)))
        {
            var half = low == 0 ? 1 : Math.Abs(low) / 10;
            (low, high) = (low - half, high + half);
        }

        var step = NiceStep((high - low) / steps);
        var (first, last) = (Math.Floor((low / step) + 1e-9), Math.Ceiling((high / step) - 1e-9));
        var decimals = Math.Clamp(2 - (int)Math.Floor(Math.Log10(step)), 0, 15);
        var ticks = FixedList<double>.Copy(Enumerable.Range(0, (int)(last - first) + 1).Select(i => Math.Round((first + i) * step, decimals)));
        return new Axis(title, unit, ticks[0], ticks[^1], step, ticks);
    }

    /// <summary>A vertical axis of named rows, the first on top at the height of their number, the last at 1.</summary>
    /// <exception cref="ArgumentException">No name.</exception>
    public static Axis OfRows(string title, IEnumerable<string> names)
    {
        var rows = FixedList<string>.Copy(names);
        if (rows.Count == 0)
            throw new ArgumentException("An axis of rows needs a row.", nameof(names));
        return new Axis(title, "", 0.4, rows.Count + 0.7, 1, FixedList<double>.Copy(Enumerable.Range(0, rows.Count).Select(i => (double)(rows.Count - i)))) { Names = rows };
    }

    /// <summary>The same axis over another range, with ticks on a part of it only: room for brackets beside the data, or a scale that ends where the rail does.</summary>
    /// <exception cref="ArgumentException">The range isn't finite or has no length.</exception>
    public Axis Reaching(double low, double high, Interval? ticked = null)
    {
        if (!(Point.Finite(low) < Point.Finite(high)))
            throw new ArgumentException("An axis runs from low to high.", nameof(low));
        var (first, last) = ticked is { } part ? (part.Low, part.High) : (low, high);
        return new Axis(Title, Unit, low, high, Step, FixedList<double>.Copy(Ticks.Where(t => t >= first && t <= last))) { Sign = Sign };
    }

    /// <summary>A number of this axis as a label shows it: invariant, with a true minus sign.</summary>
    public static string Written(double value, int decimals)
        => (Math.Round(value, decimals) + 0.0).ToString("F" + decimals.ToString(CultureInfo.InvariantCulture), CultureInfo.InvariantCulture).Replace('-', '−');

    public bool Holds(double value) => value >= Low - (Range * 1e-9) && value <= High + (Range * 1e-9);

    // The nearest on a scale of ratios.
    private static double NiceStep(double wanted)
    {
        var decade = Math.Pow(10, Math.Floor(Math.Log10(wanted)));
        return decade * (wanted / decade) switch
        {
            < 1.41 => 1,
            < 2.24 => 2,
            < 3.54 => 2.5,
            < 7.07 => 5,
            _ => 10,
        };
    }
}
