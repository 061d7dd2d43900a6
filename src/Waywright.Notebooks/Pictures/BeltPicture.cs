namespace Waywright.Notebooks;

/// <summary>Tension over the note of a span, and two belts on one axis.</summary>
internal static class BeltPicture
{
    private const int Steps = 40;

    public static Picture Tension(BeltTension belt, string name)
    {
        var (frequency, tension) = (belt.Frequency.Si, belt.Tension.Si);
        var curve = Curve(belt);
        double[] notes = [.. curve.Select(c => c.Hertz)];
        // The ideal string through the same span: T grows with the square of the note.
        double Ideal(double hertz) => belt.IdealN.Value * hertz * hertz / (frequency.Value * frequency.Value);
        var isIdeal = Math.Abs((belt.IdealN.Value / tension.Value) - 1) < 0.002;
        var x = Axis.Covering("note of the span", "Hz", notes);
        var y = Axis.Covering("tension", "N", [0, .. curve.Select(c => c.Newton + c.Half), .. isIdeal ? [] : notes.Select(Ideal)]);
        var at = new Point(frequency.Value, tension.Value);
        var layers = new List<Layer>
        {
            new BandLayer("95 % from span, density and ends", Role.Zone, FixedList<double>.Copy(notes), FixedList<Interval>.Copy(curve.Select(c => new Interval(c.Newton - c.Half, c.Newton + c.Half)))),
        };
        if (!isIdeal)
            layers.Add(new LineLayer("ideal string", Role.Limit, Point.Of(notes, notes.Select(Ideal).ToArray()), Dash.Dashed, 1.5));
        layers.Add(new LineLayer(isIdeal ? "ideal string" : "with stiffness and ends", Role.Fitted, Point.Of(notes, curve.Select(c => c.Newton).ToArray())));
        layers.Add(new DotLayer("this span", Role.Ink, FixedList<Point>.Copy([at]), 8) { Up = FixedList<Interval>.Copy([IntervalOf(tension)]), Across = FixedList<Interval>.Copy([IntervalOf(frequency)]) });
        layers.Add(new TextLayer(at, $"{belt.Frequency.ToShortString()}\n{belt.Tension.ToShortString()}", Beside.BelowRight));
        return new Picture($"Tension over the note: {name}", $"{name}: {belt.Frequency.ToShortString()} gives {belt.Tension.ToShortString()}.", x, y, new Panel(layers));
    }

    /// <summary>The span's own curve around the reading with what span, density and ends leave open; notes that no tension explains are left out.</summary>
    private static (double Hertz, double Newton, double Half)[] Curve(BeltTension belt)
    {
        var points = new List<(double Hertz, double Newton, double Half)>();
        for (var i = 0; i <= Steps; i++)
        {
            var hertz = belt.Frequency.Si.Value * (0.6 + (0.8 * i / Steps));
            try
            {
                var there = belt.Span.Tension(hertz.Hz, belt.Partial).Tension.Si;
                points.Add((hertz, there.Value, 1.96 * there.StandardUncertainty));
            }
            catch (InputException)
            {
                // Below what the stiffness alone gives there is no curve.
            }
        }

        return [.. points];
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

    public static Interval IntervalOf(Uncertain x)
    {
        if (x.StandardUncertainty == 0)
            return new Interval(x.Value, x.Value);
        var expanded = x.Expanded();
        return new Interval(expanded.Low, expanded.High);
    }

    public static DotLayer Row(string name, Uncertain x, double height) => new(name, Role.Ink, FixedList<Point>.Copy([new Point(x.Value, height)]), 8) { Across = FixedList<Interval>.Copy([IntervalOf(x)]) };

    public static TextLayer Name(string words, Uncertain x, double height) => new(new Point(x.Value, height), words, Beside.Above);

    public static Axis NoTicks(double low, double high) => Axis.Covering("", "", [low, high]).Reaching(low, high, new Interval(high + 1, high + 1));
}
