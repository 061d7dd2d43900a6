using System.Globalization;

namespace Waywright.Notebooks;

/// <summary>Where the ideal formula misleads: maps and curves with a slider.</summary>
internal static class ExplorePicture
{
    /// <summary>Beyond this share of the tension the ideal formula is said to mislead.</summary>
    public const double Misleads = 0.05;

    private const int Steps = 32;

    // A hyperbola needs few points where they stand in even ratios; a view has room for 30 kB.
    private const int CurveSteps = 11;

    private static readonly double[] Levels = [0.01, 0.02, Misleads, 0.1];
    private static readonly string[] Panels = ["Two pulleys", "A pulley and a clamp", "Two clamps"];

    /// <summary>xi = L sqrt(T / EI) at which the ideal formula over-reads by a share: a map in one number.</summary>
    public static double XiOf(double share, int clamps)
    {
        var (low, high) = (0.5, 1e6);
        while (high / low > 1 + 1e-12)
        {
            var xi = Math.Sqrt(low * high);
            (low, high) = Math.Pow(TensionedBeam.Ratio(1, xi, clamps), 2) - 1 > share ? (xi, high) : (low, xi);
        }

        return Math.Sqrt(low * high);
    }

    /// <summary>Over span and tension: the region where the formula over-reads by more than 5 %, with lines of equal error.</summary>
    public static Picture Map(double spanMm, double newton, double bendingNmm2)
    {
        var x = Axis.Covering("free span", "mm", [0, Math.Max(400, 1.5 * spanMm)], 4);
        var y = Axis.Covering("tension", "N", [0, Math.Max(40, 2 * newton)], 4);
        var xis = Levels.Select(l => Enumerable.Range(0, 3).Select(c => XiOf(l, c)).ToArray()).ToArray();
        double[] bendings = [.. new[] { 0.25, 0.5, 1, 2, 4 }.Select(f => f * bendingNmm2)];
        return Slider.Picture("Bending stiffness of the belt", bendings.Select(b => $"{Three(b)} N mm²"), 2, bendings.Select(b => At(b)));

        Picture At(double bending) => new(
            "Where the ideal formula over-reads the tension",
            string.Create(CultureInfo.InvariantCulture, $"Bending stiffness {Three(bending)} N mm2; the span of {spanMm:0} mm at {newton:0.#} N reads {Percent(Share(spanMm, newton, bending, 0))} high on two pulleys, {Percent(Share(spanMm, newton, bending, 2))} between two clamps."),
            x,
            y,
            Enumerable.Range(0, 3).Select(clamps => new Panel(Panels[clamps], "", FixedList<Layer>.Copy(Layers(bending, clamps)))))
        { PlotHeight = 190 };

        IEnumerable<Layer> Layers(double bending, int clamps)
        {
            var edge = Curve(bending, xis[2][clamps]);
            yield return new BandLayer("more than 5 % high", Role.Undecided, FixedList<double>.Copy(edge.Select(p => p.X)), FixedList<Interval>.Copy(edge.Select(p => new Interval(y.Low, p.Y))));
            for (var i = 0; i < Levels.Length; i++)
            {
                var isEdge = Levels[i] == Misleads;
                yield return new LineLayer(isEdge ? "5 % high" : "1, 2, 10 % high", isEdge ? Role.Limit : Role.Context, FixedList<Point>.Copy(Curve(bending, xis[i][clamps])), isEdge ? Dash.Dashed : Dash.Solid, isEdge ? 2 : 1);
            }

            // On two pulleys the lines lie too close together for all their numbers.
            (int Level, double Height)[] numbered = clamps == 0 ? [(0, 0.88), (2, 0.62)] : [(0, 0.9), (1, 0.76), (2, 0.62)];
            foreach (var (level, height) in numbered)
            {
                var mm = xis[level][clamps] * Math.Sqrt(bending / (height * y.High));
                var atEdge = bending * Math.Pow(xis[level][clamps] / x.High, 2);
                var at = mm < 0.9 * x.High ? new Point(mm, height * y.High) : new Point(x.High, Math.Min(y.High, atEdge));
                yield return new TextLayer(at, atEdge > y.High ? "" : $"{Three(100 * Levels[level])} %", mm < 0.9 * x.High ? Beside.Right : Beside.BelowLeft);
            }

            yield return new DotLayer("this span", Role.Ink, FixedList<Point>.Copy([new Point(spanMm, newton)]), 9);
            yield return new TextLayer(new Point(spanMm, newton), $"reads {Percent(Share(spanMm, newton, bending, clamps))} high", spanMm < 0.7 * x.High ? Beside.AboveRight : Beside.AboveLeft);
        }

        // T = EI xi2 / L2, cut at the frame of the picture: from where it comes in at the top to where it leaves.
        Point[] Curve(double bending, double xi)
        {
            double Tension(double mm) => bending * xi * xi / (mm * mm);
            var from = Math.Min(x.High, Math.Max(x.Range / 400, xi * Math.Sqrt(bending / y.High)));
            return [new Point(x.Low, y.High), .. Enumerable.Range(0, CurveSteps + 1).Select(i => from * Math.Pow(x.High / from, (double)i / CurveSteps)).Select(mm => new Point(mm, Math.Min(y.High, Tension(mm))))];
        }
    }

    /// <summary>By how much the ideal formula over-reads, as a share of the tension.</summary>
    public static double Share(double spanMm, double newton, double bendingNmm2, int clamps)
        => Math.Pow(TensionedBeam.Ratio(1, spanMm * Math.Sqrt(newton / bendingNmm2), clamps), 2) - 1;

    /// <summary>What a hard pluck adds, over its amplitude.</summary>
    public static Picture Pluck(double spanMm, double newton, double stretchN, double? loopMm)
    {
        var x = Axis.Covering("amplitude in the middle of the span", "mm", [0, 3], 6);
        var y = Axis.Covering("tension reads high by", "%", [0, 20], 4);
        double[] tensions = [.. new[] { 0.25, 0.5, 1, 2, 4 }.Select(f => f * newton)];
        return Slider.Picture("Tension of the belt", tensions.Select(t => $"{Three(t)} N"), 2, tensions.Select(At));

        Picture At(double tension)
        {
            var layers = new List<Layer> { new BandLayer("more than 5 % high", Role.Undecided, FixedList<double>.Copy([x.Low, x.High]), FixedList<Interval>.Copy([new(5, y.High), new(5, y.High)])) };
            (double Mm, Dash Dash)[] spans = [(spanMm / 2, Dash.Dotted), (spanMm, Dash.Solid), (2 * spanMm, Dash.Dashed)];
            foreach (var (mm, dash) in spans)
            {
                double High(double a) => 100 * (Math.Pow(BeltModel.PluckFactor(stretchN * Math.Pow(Math.PI * a, 2) / (4 * tension * mm * (loopMm ?? mm))), 2) - 1);
                // Up to where the line leaves the picture.
                var reach = 3.0;
                for (var (low, step) = (0.0, 0); step < 40 && High(3) > y.High; step++)
                    (low, reach) = High((low + reach) / 2) > y.High ? (low, (low + reach) / 2) : ((low + reach) / 2, reach);
                layers.Add(new LineLayer($"span {Three(mm)} mm", mm == spanMm ? Role.Fitted : Role.Context, FixedList<Point>.Copy(Enumerable.Range(0, Steps + 1).Select(i => reach * i / Steps).Select(a => new Point(a, Math.Min(y.High, High(a))))), dash, mm == spanMm ? 2.5 : 1.5));
            }

            layers.Add(new RuleLayer("", Role.Limit, 5, "above this line the ideal formula misleads", Beside: Beside.AboveRight));
            return new Picture("What a hard pluck adds", $"At {Three(tension)} N.", x, y, new Panel(layers)) { PlotHeight = 240 };
        }
    }

    /// <summary>U of the tension over the free span, and what it is made of.</summary>
    public static Picture Uncertainty(double newton, double bendingNmm2, double densityGPerM, double spanUMm, double noteUShare)
    {
        var x = Axis.Covering("free span", "mm", [0, 500], 5);
        var y = Axis.Covering("U of the tension (k = 2)", "%", [0, 20], 4);
        double[] weighed = [0.25, 0.5, 1, 2, 4, 8];
        double[] spans = [.. Enumerable.Range(0, Steps + 1).Select(i => 60 + (440.0 * i / Steps))];
        return Slider.Picture("Belt weighed in one go", weighed.Select(w => $"{Three(w)} m"), 2, weighed.Select(At));

        Picture At(double metres)
        {
            var density = 1000 * 0.001 * Math.Sqrt(2 / 12.0) / (densityGPerM * metres);
            (string Name, Dash Dash, Role Role, Func<double, double> Share)[] parts =
            [
                ("density", Dash.DashDot, Role.Contact, _ => density), ("span", Dash.Dashed, Role.Context, mm => 2 * spanUMm / mm), ("note", Dash.Dotted, Role.Context, _ => 2 * noteUShare),
                ("teeth on two pulleys", Dash.Dashed, Role.Fitted, mm => 4 * Math.Sqrt(bendingNmm2 / newton) / mm / Math.Sqrt(3)),
            ];
            double Total(double mm) => 200 * Math.Sqrt(parts.Sum(p => Math.Pow(p.Share(mm), 2)));
            var layers = new List<Layer> { new BandLayer("more than 5 %", Role.Undecided, FixedList<double>.Copy([x.Low, x.High]), FixedList<Interval>.Copy([new(5, y.High), new(5, y.High)])) };
            layers.AddRange(parts.Select(p => new LineLayer(p.Name, p.Role, Point.Of(spans, [.. spans.Select(mm => Math.Min(y.High, 200 * p.Share(mm)))]), p.Dash, 1.5)));
            layers.Add(new LineLayer("all together", Role.Ink, Point.Of(spans, [.. spans.Select(mm => Math.Min(y.High, Total(mm)))]), Dash.Solid, 2.5));
            return new Picture("What limits the tension", $"With {Three(metres)} m weighed.", x, y, new Panel(layers)) { PlotHeight = 260 };
        }
    }

    public static string Three(double value) => value.ToString("G3", CultureInfo.InvariantCulture);

    public static string Percent(double share) => $"{(100 * share).ToString(share < 0.01 ? "0.00" : share < 0.1 ? "0.0" : "0", CultureInfo.InvariantCulture)} %";
}
