using System.Globalization;
using Waywright.Notebooks;

namespace Waywright.Tests.Notebooks;

/// <summary>Pictures of invented rails and belts, as the views will ask for them.</summary>
internal static class SamplePictures
{
    public static readonly double[] Stations = Enumerable.Range(0, 14).Select(i => 10 + (i * 23.0)).ToArray();

    /// <summary>One rail: three passes over 14 stations, their means, lines, zone, contacts, screws, limit and interval.</summary>
    public static Picture Rail(string name = "R07", double bow = 14)
    {
        var heights = Heights(bow, 7);
        var readings = Enumerable.Range(1, 3).SelectMany(pass => Stations.Select((x, i) => new Point(x, heights[i] + (2.6 * Wobble(pass, i))))).ToArray();
        var x = Axis.Covering("position from the dot", "mm", [0, 320], 6).Reaching(-16, 392, new Interval(0, 320));
        var y = Axis.Covering("height", "µm", readings.Select(r => r.Y).Append(-26).Append(20)) with { Sign = "+ towards the dial" };
        var zone = new Interval(-5.2, 8.4);
        return new Picture($"Side profile of rail {name}", $"{name}: bowed towards the dial by about 14 µm in the middle; a noise floor of 5 µm.", x, y, new Panel(
            new BandLayer("minimum zone", Role.Zone, FixedList<double>.Copy([0, 320]), FixedList<Interval>.Copy([zone, new Interval(-3.1, 10.5)])),
            new DotLayer("single readings", Role.Faint, FixedList<Point>.Copy(readings), 4),
            new LineLayer("end points", Role.Context, Point.Of([Stations[0], Stations[^1]], [heights[0], heights[^1]]), Dash.Dotted),
            new LineLayer("least squares", Role.Fitted, Point.Of([0, 320], [1.1, 2.6]), Dash.Dashed),
            new DotLayer("stations, ± U", Role.Ink, Point.Of(Stations, heights)) { Up = FixedList<Interval>.Copy(heights.Select(h => Interval.Around(h, 2.9))) },
            new MarkerLayer("contacts", Role.Contact, Symbol.Diamond, Point.Of([Stations[1], Stations[6], Stations[12]], [heights[1], heights[6], heights[12]]), FixedList<string>.Copy(["61 %", "78 %", "55 %"]), Beside.Right),
            new TickLayer("screws", Role.Ink, FixedList<double>.Copy(Enumerable.Range(0, 13).Select(i => 10 + (i * 25.0)))),
            new BracketLayer("", Role.Limit, 334, new Interval(-13, 17), "limit 30 µm", Dash.Dashed, Beside: Beside.AboveRight),
            new BracketLayer("", Role.Ink, 346, new Interval(-13, 6), "STRt 8\nto 19 µm"),
            new BracketLayer("", Role.Context, -4, new Interval(-26, -21), "a perfect rail would read up to 5 µm here", OpensRight: true)));
    }

    /// <summary>Twelve rails on one scale, sorted by what to do next; the first leaves it.</summary>
    public static Picture Batch(string firstName = "R04")
    {
        var x = Axis.Covering("position from the dot", "mm", [0, 320], 3).Reaching(-8, 336, new Interval(0, 320));
        var y = Axis.Covering("height", "µm", [-20, 20], 4) with { Sign = "+ towards the dial" };
        (Symbol, Role, string)[] answers =
        [
            (Symbol.Triangle, Role.Undecided, "Measure again: 26 µm (19 to 34) straddles 30; use a 0.001 mm dial."),
            (Symbol.Diamond, Role.Contact, "Use for the gantry: 14 µm (8 to 19)."),
            (Symbol.Circle, Role.Fitted, "Use for Z: 38 µm (31 to 46)."),
            (Symbol.Cross, Role.Limit, "Return: 140 µm (128 to 151) is beyond 100."),
        ];
        var panels = Enumerable.Range(0, 12).Select(rail =>
        {
            var (symbol, role, note) = rail < 2 ? answers[0] : rail < 8 ? answers[1] : rail < 11 ? answers[2] : answers[3];
            var heights = Heights(rail == 11 ? 140 : 6 + (rail * 2), rail);
            var title = rail == 0 ? firstName : string.Create(CultureInfo.InvariantCulture, $"R{(rail * 5 % 12) + 1:00}");
            Layer[] layers =
            [
                new BandLayer("minimum zone", Role.Zone, FixedList<double>.Copy([0, 320]), FixedList<Interval>.Copy([new Interval(-6, 6 + rail), new Interval(-5, 7 + rail)])),
                new DotLayer("stations", Role.Ink, Point.Of(Stations, heights), 4) { Joined = true },
                new BracketLayer("limit", Role.Limit, 328, new Interval(-15, 15), "", Dash.Dashed),
            ];
            return new Panel(title, note, FixedList<Layer>.Copy(layers)) { Sign = (symbol, role) };
        });
        return new Picture("Side profiles of 12 rails", "Two rails are to be measured again, six will do for the gantry, three for Z, one goes back.", x, y, panels);
    }

    /// <summary>Tension over frequency for one span, with the plucked point and its interval.</summary>
    public static Picture Tension()
    {
        var frequencies = Enumerable.Range(0, 41).Select(i => 40 + (i * 2.5)).ToArray();
        double Newton(double hertz) => 4 * 0.0084 * 0.18 * 0.18 * hertz * hertz;
        var x = Axis.Covering("note", "Hz", frequencies);
        var y = Axis.Covering("tension", "N", [0, Newton(140)]);
        return new Picture("Tension of the left belt against its note", "A span of 180 mm that sounds at 96 Hz pulls with 10 N.", x, y, new Panel(
            new BandLayer("aim", Role.Zone, FixedList<double>.Copy([40, 140]), FixedList<Interval>.Copy([new Interval(11, 13), new Interval(11, 13)])),
            new LineLayer("T = 4 µ L² f²", Role.Fitted, Point.Of(frequencies, frequencies.Select(Newton).ToArray())),
            new RuleLayer("", Role.Limit, 18, "most that the bracket bears: 18 N", Beside: Beside.AboveRight),
            new DotLayer("left belt, ± U", Role.Ink, FixedList<Point>.Copy([new Point(96, Newton(96))]), 8) { Up = FixedList<Interval>.Copy([Interval.Around(Newton(96), 0.9)]), Across = FixedList<Interval>.Copy([Interval.Around(96, 3)]) },
            new TextLayer(new Point(96, Newton(96)), "96 Hz, 10.0 N ± 0.9 N", Beside.BelowRight)));
    }

    private static double[] Heights(double bow, int seed)
        => Stations.Select((x, i) => (bow * (1 - Math.Pow((x - 160) / 150, 2))) - (bow / 2) + (1.5 * Wobble(seed, i))).ToArray();

    // A fixed uneven pattern between -1 and 1: no random numbers, the same on every machine.
    private static double Wobble(int a, int b) => (((a * 37) + (b * 61) + (a * b * 13)) % 41 / 20.5) - 1;
}
