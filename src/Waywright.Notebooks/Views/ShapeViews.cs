using System.Globalization;

namespace Waywright.Notebooks;

/// <summary>Bow, S and finer shapes of a profile.</summary>
internal sealed class ShapeModesView : View<ShapeModes>
{
    /// <summary>What the shapes rest on.</summary>
    private static readonly string[] Assumptions =
    [
        "Each shape is what no coarser one describes, over the stations that were measured; each station counts alike. A height is that over the straight line through the shape's own ends.",
        "+ rises towards the dial from the first station on: a bow with + is crowned. Turned end for end, bow and W keep their sign and the S changes it.",
        "Discrete orthogonal polynomials (Forsythe, 1957). U is for 95 %.",
    ];

    /// <summary>What a filter did to the heights, in words.</summary>
    public static string FilterOf(Profile profile) => profile.CutoffMm is { } cutoff ? $"Gaussian filter, cut-off {Shown.Mm(cutoff)} mm" : "no filter";

    public static string NameOf(Profile profile) => profile.Name.Length == 0 ? "Profile" : Shown.First(profile.Name);

    /// <summary>An amplitude with its interval, in um.</summary>
    public static string Height(Uncertain amplitude)
    {
        if (amplitude.StandardUncertainty == 0)
            return $"{Sign(amplitude.Value)}{Shown.Um(amplitude.Value)} um";
        var interval = amplitude.Expanded();
        return $"{Sign(amplitude.Value)}{Shown.ToSpread(amplitude.Value, interval.U)} um ({Shown.ToSpread(interval.Low, interval.U)} to {Shown.ToSpread(interval.High, interval.U)})";
    }

    public static TextTable Table(ShapeModes modes)
    {
        var table = new TextTable("shape", "#height um", "#U um", "#share %", "#left um");
        foreach (var mode in modes.Modes)
        {
            var u = mode.AmplitudeUm.StandardUncertainty == 0 ? double.NaN : mode.AmplitudeUm.Expanded().U;
            table.Add(
                mode.Name,
                double.IsNaN(u) ? Shown.Um(mode.AmplitudeUm.Value) : Shown.ToSpread(mode.AmplitudeUm.Value, u),
                double.IsNaN(u) ? Shown.None : Shown.ToSpread(u, u),
                (100 * mode.Share).ToString("0.0", CultureInfo.InvariantCulture),
                Shown.Um(mode.LeftUm));
        }

        return table;
    }

    protected override string Verdict(ShapeModes result)
    {
        var told = result.Modes.Where(m => m.IsClear != false).Select(m => $"{m.Name} {Height(m.AmplitudeUm)}").ToArray();
        var hidden = result.Modes.Where(m => m.IsClear == false).Select(m => m.Name).ToArray();
        var first = told.Length == 0 ? $"{NameOf(result.Profile)}: no shape can be told from zero" : $"{NameOf(result.Profile)}: {string.Join(", ", told)}";
        return hidden.Length == 0 || told.Length == 0 ? first + "." : $"{first}; {string.Join(", ", hidden)} can't be told from zero.";
    }

    protected override string Text(ShapeModes result) => $"{Verdict(result)}\n{Table(result)}\n{Rest(result)}";

    protected override string Html(ShapeModes result)
        => Markup.View(
            Verdict(result),
            FigureHtml.Of(ShapePictures.Of(result), $"{NameOf(result.Profile)} beside the sum of its shapes, which leaves {Shown.Um(result.LeftUm)} µm (root mean square)."),
            Markup.Table(Table(result), "Shapes of the profile"),
            Markup.Details("What it rests on", Markup.List([.. Assumptions, Rest(result)])));

    protected override IEnumerable<Figure> Figures(ShapeModes result, string id)
    {
        var method = $"discrete orthogonal polynomials, {FilterOf(result.Profile)}";
        return result.Modes.Select(m => FigureOf.Uncertain($"{id}/{m.Name.ToLowerInvariant().Replace(' ', '-')}", $"{NameOf(result.Profile)}: height of the {m.Name}", m.AmplitudeUm, "um", method))
            .Append(new Figure($"{id}/left", $"{NameOf(result.Profile)}: left beside the shapes", result.LeftUm, null, "um", method: method, relativeTolerance: 1e-9, absoluteTolerance: 1e-9));
    }

    private static string Rest(ShapeModes result)
        => result.Errors is null
            ? "No errors were given, so the heights come without uncertainty."
            : $"Uncertain by the scatter of the readings{string.Concat(result.Errors.Shapes.Take(6).Select(s => $", {s.Input}"))}{(result.Errors.Shapes.Count > 6 ? " and more" : "")}.";

    private static string Sign(double value) => value > 0 ? "+" : "";
}

/// <summary>One shape.</summary>
internal sealed class ShapeModeView : View<ShapeMode>
{
    protected override string Verdict(ShapeMode result)
        => string.Create(CultureInfo.InvariantCulture, $"{Shown.First(result.Name)} {ShapeModesView.Height(result.AmplitudeUm)}, {100 * result.Share:0.0} % of the squares about the line.");

    protected override string Text(ShapeMode result) => Verdict(result);

    protected override string Html(ShapeMode result) => Markup.View(Verdict(result));

    protected override IEnumerable<Figure> Figures(ShapeMode result, string id) => [FigureOf.Uncertain(id, $"height of the {result.Name}", result.AmplitudeUm, "um", "discrete orthogonal polynomials")];
}

/// <summary>Whether a profile is bent at one place.</summary>
internal sealed class KinkTestView : View<KinkTest>
{
    private const double SmallestChance = 0.001;

    protected override string Verdict(KinkTest result)
        => result.IsFound
            ? $"{ShapeModesView.NameOf(result.Profile)}: bent at about {Place(result.PositionMm)} mm ({Place(result.FromMm)} to {Place(result.ToMm)}) by {Angle(result)}, {Way(result)}; chance that noise alone looks like this: {Chance(result)}."
            : $"{ShapeModesView.NameOf(result.Profile)}: no single bend stands out; chance that noise alone looks like the clearest one: {Chance(result)}.";

    protected override string Text(KinkTest result) => $"{Verdict(result)}\n{string.Join('\n', Basis(result))}";

    protected override string Html(KinkTest result)
        => Markup.View(
            Verdict(result),
            FigureHtml.Of(ShapePictures.Of(result), Caption(result), ShapePictures.Data(result)),
            Markup.Details("What it rests on", Markup.List(Basis(result))));

    protected override IEnumerable<Figure> Figures(KinkTest result, string id)
    {
        var name = ShapeModesView.NameOf(result.Profile);
        var method = string.Create(CultureInfo.InvariantCulture, $"best single bend beside a smooth shape of order {result.SmoothOrder}");
        var p = result.ChanceOfNoise;
        yield return new Figure($"{id}/found", $"{name}: a single bend", null, result.IsFound ? "found" : "not found", "1", method: method);
        yield return new Figure($"{id}/chance", $"{name}: chance that noise alone looks like it", p, null, "1", method: string.Create(CultureInfo.InvariantCulture, $"{method}, {result.Trials} trials, seed {result.Seed}"),
            absoluteTolerance: (5 * Math.Sqrt(p * (1 - p) / result.Trials)) + (1.0 / result.Trials));
        if (!result.IsFound)
            yield break;
        yield return new Figure($"{id}/position", $"{name}: position of the bend", result.PositionMm, null, "mm", low: result.FromMm, high: result.ToMm, method: method, relativeTolerance: 1e-6);
        yield return FigureOf.Uncertain($"{id}/angle", $"{name}: angle of the bend", result.AngleUmPerM, "um/m", method);
    }

    private static string Caption(KinkTest result)
        => result.IsFound
            ? $"One bend at about {Place(result.PositionMm)} mm describes what a smooth shape does not. Drawn level with its least-squares line."
            : "A smooth shape describes the profile as well as one bend does. Drawn level with its least-squares line.";

    private static string[] Basis(KinkTest result) =>
    [
        string.Create(CultureInfo.InvariantCulture, $"The best single bend beside a smooth shape of order {result.SmoothOrder} (bow, S and so on), against the smooth shape alone; knees were tried at all stations and between them."),
        string.Create(CultureInfo.InvariantCulture, $"{result.Trials} trials with errors alone, seed {result.Seed}; a bend counts as found up to a chance of {100 * KinkTest.Level:0} % (common practice, no source), so of twenty straight faces one looks bent."),
        result.Errors is null ? "No errors were given: what the bent line leaves is all that is known of the scatter." : "Errors as given; a surface rougher than they say counts with its own roughness.",
        "Position and angle are intervals for 95 %. A bend that is barely found reads too sharp.",
    ];

    private static string Angle(KinkTest result)
    {
        var interval = result.AngleUmPerM.Expanded();
        var (size, u) = (Math.Abs(interval.Value) / 1000, interval.U / 1000);
        return $"{Shown.ToSpread(size, u)} um/mm ({Shown.ToSpread(size - u, u)} to {Shown.ToSpread(size + u, u)})";
    }

    private static string Way(KinkTest result) => result.AngleUmPerM.Value < 0 ? "standing out towards the dial" : "hollow, away from the dial";

    private static string Chance(KinkTest result)
        => result.ChanceOfNoise < SmallestChance ? "< 0.1 %" : string.Create(CultureInfo.InvariantCulture, $"{100 * result.ChanceOfNoise:G2} %");

    // A place is looked for with a rule.
    private static string Place(double mm) => Math.Round(mm).ToString("0", CultureInfo.InvariantCulture);
}

/// <summary>A profile beside the curves that describe it, level with its least-squares line.</summary>
internal static class ShapePictures
{
    private const int Steps = 60;
    private const int MostRows = 60;

    public static Picture Of(ShapeModes modes)
    {
        var line = StraightnessFigures.Of(modes.Profile).LeastSquares;
        var curve = Curve(modes.Profile, line, modes.HeightUm);
        return Draw(modes.Profile, line, $"{ShapeModesView.NameOf(modes.Profile)}: profile and the sum of its shapes", curve, new LineLayer("sum of the shapes", Role.Fitted, curve, Dash.Dashed));
    }

    public static Picture Of(KinkTest test)
    {
        var line = StraightnessFigures.Of(test.Profile).LeastSquares;
        var (smooth, bent) = (Curve(test.Profile, line, test.SmoothHeightUm), Curve(test.Profile, line, test.BentHeightUm, test.PositionMm));
        List<Layer> layers = [new LineLayer("smooth shape alone", Role.Context, smooth, Dash.Dotted)];
        if (test.IsFound)
        {
            var knee = new Point(test.PositionMm, test.BentHeightUm(test.PositionMm) - line.HeightUm(test.PositionMm));
            var word = $"{Math.Round(test.PositionMm).ToString("0", CultureInfo.InvariantCulture)} mm";
            layers.Add(new LineLayer("with one bend", Role.Fitted, bent, Dash.Dashed));
            layers.Add(new MarkerLayer("bend", Role.Contact, Symbol.Diamond, FixedList<Point>.Copy([knee]), FixedList<string>.Copy([word]), test.AngleUmPerM.Value < 0 ? Beside.Above : Beside.Below));
        }

        return Draw(test.Profile, line, $"{ShapeModesView.NameOf(test.Profile)}: profile with its best single bend", smooth.Concat(bent), [.. layers]);
    }

    /// <summary>Each station beside both curves; null where they are too many to read.</summary>
    public static TextTable? Data(KinkTest test)
    {
        if (test.Profile.Count > MostRows)
            return null;
        var table = new TextTable("#position mm", "#height um", "#from the smooth shape um", "#from the bent line um");
        for (var i = 0; i < test.Profile.Count; i++)
        {
            var (x, z) = (test.Profile.PositionsMm[i], test.Profile.HeightsUm[i]);
            table.Add(Shown.Mm(x), Shown.Um(z), Shown.Um(z - test.SmoothHeightUm(x)), Shown.Um(z - test.BentHeightUm(x)));
        }

        return table;
    }

    private static Picture Draw(Profile profile, ReferenceLine line, string name, IEnumerable<Point> curves, params Layer[] layers)
    {
        var stations = FixedList<Point>.Copy(profile.PositionsMm.Zip(profile.HeightsUm, (x, z) => new Point(x, z - line.HeightUm(x))));
        var reach = stations.Concat(curves).Max(p => Math.Abs(p.Y)) * 1.15;
        var y = Axis.Covering("height", "µm", [-reach, reach]) with { Sign = "+ towards the dial" };
        var x = Axis.Covering("position from the dot", "mm", [Math.Min(0, stations[0].X), stations[^1].X], 6);
        return new Picture(name, $"{name}, {Shown.Count(stations.Count)} stations.", x, y, new Panel([.. layers, new DotLayer("stations", Role.Ink, stations)]));
    }

    // A corner is drawn as one only if it is among the points.
    private static FixedList<Point> Curve(Profile profile, ReferenceLine line, Func<double, double> height, params IEnumerable<double> corners)
    {
        var (first, last) = (profile.PositionsMm[0], profile.PositionsMm[^1]);
        var places = Enumerable.Range(0, Steps + 1).Select(i => first + ((last - first) * i / Steps)).Concat(corners).Order();
        return FixedList<Point>.Copy(places.Select(x => new Point(x, height(x) - line.HeightUm(x))));
    }
}
