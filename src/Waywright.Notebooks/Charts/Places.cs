namespace Waywright.Notebooks;

/// <summary>A place in a panel, in the units of its axes; finite.</summary>
internal readonly record struct Point
{
    public Point(double x, double y) => (X, Y) = (Finite(x), Finite(y));

    public double X { get; }

    public double Y { get; }

    /// <exception cref="ArgumentException">The lists differ in length, or a number isn't finite.</exception>
    public static FixedList<Point> Of(IReadOnlyList<double> x, IReadOnlyList<double> y)
    {
        if (x.Count != y.Count)
            throw new ArgumentException($"{x.Count} x for {y.Count} y", nameof(y));
        return FixedList<Point>.Copy(x.Zip(y, (a, b) => new Point(a, b)));
    }

    public static double Finite(double value)
        => double.IsFinite(value) ? value : throw new ArgumentException("A picture shows finite numbers only.", nameof(value));
}

/// <summary>From low to high along one axis.</summary>
internal readonly record struct Interval
{
    public Interval(double low, double high)
    {
        (Low, High) = (Point.Finite(low), Point.Finite(high));
        if (low > high)
            throw new ArgumentException("An interval's low end is above its high end.", nameof(low));
    }

    public double Low { get; }

    public double High { get; }

    public double Middle => (Low + High) / 2;

    public static Interval Around(double middle, double half) => new(middle - half, middle + half);
}

/// <summary>Where a word stands, seen from its point.</summary>
internal enum Beside
{
    Centre,
    Above,
    Below,
    Left,
    Right,
    AboveLeft,
    AboveRight,
    BelowLeft,
    BelowRight,
}

/// <summary>The two directions that a place beside a point is made of.</summary>
internal static class Besides
{
    /// <summary>-1 left, 0 centred, 1 right of the point.</summary>
    public static int Across(this Beside beside) => beside switch
    {
        Beside.Left or Beside.AboveLeft or Beside.BelowLeft => -1,
        Beside.Right or Beside.AboveRight or Beside.BelowRight => 1,
        _ => 0,
    };

    /// <summary>-1 below, 0 level with, 1 above the point.</summary>
    public static int Up(this Beside beside) => beside switch
    {
        Beside.Below or Beside.BelowLeft or Beside.BelowRight => -1,
        Beside.Above or Beside.AboveLeft or Beside.AboveRight => 1,
        _ => 0,
    };
}
