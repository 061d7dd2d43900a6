namespace Waywright.Notebooks;

/// <summary>Tension over the note of a span, and two belts on one axis.</summary>
internal static class BeltPicture
{
    private const int Steps = 40;

    public static Picture Tension(BeltTension belt, string name)
    {
        var (frequency, tension) = (belt.Frequency.Si, belt.Tension.Si);
        // The curve through the reading: T grows with the square of the note.
        double Newton(double hertz) => tension.Value * hertz * hertz / (frequency.Value * frequency.Value);
        var notes = Enumerable.Range(0, Steps + 1).Select(i => frequency.Value * (0.6 + (0.8 * i / Steps))).ToArray();
        var x = Axis.Covering("note of the span", "Hz", notes);
        var y = Axis.Covering("tension", "N", notes.Select(Newton));
        var (low, high) = Band(belt);
        var at = new Point(frequency.Value, tension.Value);
        return new Picture($"Tension over the note: {name}", $"{name}: {belt.Frequency.ToShortString()} gives {belt.Tension.ToShortString()}.", x, y, new Panel(
            new BandLayer("95 % from span and density", Role.Zone, FixedList<double>.Copy(notes), FixedList<Interval>.Copy(notes.Select(f => new Interval(Newton(f) * low, Newton(f) * high)))),
            new LineLayer("ideal string", Role.Fitted, Point.Of(notes, notes.Select(Newton).ToArray())),
            new DotLayer("this span", Role.Ink, FixedList<Point>.Copy([at]), 8) { Up = FixedList<Interval>.Copy([IntervalOf(tension)]), Across = FixedList<Interval>.Copy([IntervalOf(frequency)]) },
            new TextLayer(at, $"{belt.Frequency.ToShortString()}\n{belt.Tension.ToShortString()}", Beside.BelowRight)));
    }

    public static Picture Pair(BeltPair pair)
    {
        var (first, second) = (IntervalOf(pair.First.Tension.Si), IntervalOf(pair.Second.Tension.Si));
        var x = Axis.Covering("tension", "N", [first.Low, first.High, second.Low, second.High]);
        return new Picture("Both belts on one axis", $"{pair.FirstName} {pair.First.Tension.ToShortString()}, {pair.SecondName} {pair.Second.Tension.ToShortString()}.", x, NoTicks(0, 3), new Panel(
            Row(pair.FirstName, pair.First.Tension.Si, 2), Name(pair.FirstName, pair.First.Tension.Si, 2), Row(pair.SecondName, pair.Second.Tension.Si, 1), Name(pair.SecondName, pair.Second.Tension.Si, 1)))
        { PlotHeight = 120 };
    }

    public static Picture Ratio(BeltPair pair)
    {
        var ratio = IntervalOf(pair.Ratio);
        var equal = new Interval(1 - pair.EqualWithin, 1 + pair.EqualWithin);
        var x = Axis.Covering($"tension of {pair.FirstName} over {pair.SecondName}", "", [ratio.Low, ratio.High, equal.Low - 0.02, equal.High + 0.02]);
        return new Picture("Their ratio and the zone that counts as equal", $"Ratio {pair.Ratio.ToShortString()}; equal from {Shown.Mm(equal.Low)} to {Shown.Mm(equal.High)}.", x, NoTicks(0, 2), new Panel(
            new BandLayer("counts as equal", Role.Zone, FixedList<double>.Copy([equal.Low, equal.High]), FixedList<Interval>.Copy([new(0, 2), new(0, 2)])),
            Row("ratio, 95 %", pair.Ratio, 1), Name(pair.Ratio.ToShortString(), pair.Ratio, 1)))
        { PlotHeight = 90 };
    }

    /// <summary>What 95 % of the span's and the density's part leave, as factors on the curve.</summary>
    private static (double Low, double High) Band(BeltTension belt)
    {
        var relative = Math.Sqrt(Square(2 * belt.Span.Length.Si.StandardUncertainty / belt.Span.Length.Si.Value) + Square(belt.Span.Density.Si.StandardUncertainty / belt.Span.Density.Si.Value));
        return (1 - (1.96 * relative), 1 + (1.96 * relative));
    }

    private static double Square(double x) => x * x;

    private static Interval IntervalOf(Uncertain x)
    {
        if (x.StandardUncertainty == 0)
            return new Interval(x.Value, x.Value);
        var expanded = x.Expanded();
        return new Interval(expanded.Low, expanded.High);
    }

    private static DotLayer Row(string name, Uncertain x, double height) => new(name, Role.Ink, FixedList<Point>.Copy([new Point(x.Value, height)]), 8) { Across = FixedList<Interval>.Copy([IntervalOf(x)]) };

    private static TextLayer Name(string words, Uncertain x, double height) => new(new Point(x.Value, height), words, Beside.Above);

    private static Axis NoTicks(double low, double high) => Axis.Covering("", "", [low, high]).Reaching(low, high, new Interval(high + 1, high + 1));
}
