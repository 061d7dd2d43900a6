#:property RestorePackagesWithLockFile=false
#:property PublishAot=false
// Writes the invented demo batch: dotnet run datasets/demo/generate.cs -- OUTDIR
// No part of it was measured. No packages: a lock file would stand among the data, and publishing ahead of time would fetch a compiler.
//
// Same bytes on every machine: the draws come from SplitMix64 (Steele, Lea and Flood, OOPSLA 2014) with the seed below, draw k of a pass
// at a counter of its own; normal draws are sums of twelve uniform ones; + - * / and square roots are exact by IEEE 754. Only the wave of
// one rail needs Math.Sin, which may differ in its last digit: every truth and every reading is rounded to 0.1 um before the dial rounds it,
// and every force to 0.001 N before the gauge does.

using System.Globalization;
using System.Text;

if (args.Length != 1)
{
    Console.Error.WriteLine("expected one argument: the folder to write to");
    return 2;
}

Write("rails/rails.csv", Tables.Rails());
Write("rails/setups.json", Tables.Setups());
Write("rails/positions.json", Tables.Positions());
Write("rails/sweeps.csv", Tables.Sweeps());
Write("rails/drag.csv", Tables.Drag());
Write("belts/spans.csv", Tables.Spans());
Write("truth.json", Truth.Json());
return 0;

void Write(string name, string text)
{
    var path = Path.Combine(args[0], name);
    Directory.CreateDirectory(Path.GetDirectoryName(path)!);
    File.WriteAllText(path, text.ReplaceLineEndings("\n"), new UTF8Encoding(false));
}

/// <summary>What a face's free shape is made of; heights in um, + towards the dial, over the whole length.</summary>
sealed record Shape(double Bow, double S, double Kink = 0, double Wave = 0)
{
    public double HeightUm(double x)
    {
        var u = x / Bench.LengthMm;
        return (Bow * 4 * u * (1 - u))
            + (S * 6 * Math.Sqrt(3) * u * (1 - u) * (1 - (2 * u))) // greatest height 1, at u = (3 - sqrt 3)/6
            + (Kink * Math.Min(x / Bench.KinkMm, (Bench.LengthMm - x) / (Bench.LengthMm - Bench.KinkMm)))
            + (Wave * Math.Sin(2 * Math.PI * x / 60));
    }
}

/// <summary>A rail of the story; LeastTilt and MostTilt are how far out of level its passes were set, in um over the length.</summary>
sealed record Rail(string Name, double MassG, Setup Setup, Shape Side, Shape Top, string Grade, string Reason, string Note, double LeastTilt = 0, double MostTilt = 10)
{
    public int WidthMm => Setup.WidthMm;

    public double BendingStiffness(int face) => Setup.BendingStiffness(face);
}

/// <summary>One for each width of rail and dial: how far a rail bends belongs to the set-up.</summary>
sealed record Setup(string Id, int WidthMm, double MassG, string Instrument, double DivisionUm, string ReadTo, double StepUm, double ForceN)
{
    double HeightMm => WidthMm == 9 ? 6.5 : 8;

    /// <summary>E b h^3/12 of the full section with E = 206 GPa, in N m2, bent by a push on that face.</summary>
    public double BendingStiffness(int face) => face == 0
        ? 206e9 * HeightMm * WidthMm * WidthMm * WidthMm / 12 * 1e-12
        : 206e9 * WidthMm * HeightMm * HeightMm * HeightMm / 12 * 1e-12;
}

static class Bench
{
    public const ulong Seed = 320_025;
    public const double LengthMm = 320, PitchMm = 25, EndDistanceMm = 10, FirstSupportMm = 70, SecondSupportMm = 250;
    public const double KinkMm = 147.5, NoiseUm = 0.6, GreatestLayBowUm = 1, GreatestTextureUm = 0.5;
    public static readonly string[] Faces = ["side", "top"];
    public static readonly (string Pass, string Direction, string Lay)[] Passes = [("1", "forward", "A"), ("2", "back", "A"), ("3", "forward", "B")];
    public static readonly Setup Lever = new("bench", 9, 121, "lever indicator 0.001 mm", 1, "whole", 1, 0.2);
    public static readonly Setup Wide = Lever with { Id = "bench-wide", WidthMm = 12, MassG = 208 };
    public static readonly Setup Plunger = new("bench-plunger", 9, 121, "plunger indicator 0.01 mm", 10, "half", 5, 1);

    /// <summary>Midway between the 13 holes at 10, 35 ... 310 mm, and near both ends: never in a counterbore.</summary>
    public static readonly double[] StationsMm = [4, .. Enumerable.Range(0, 12).Select(i => 22.5 + (PitchMm * i)), 316];

    /// <summary>The plate's own line under the stand, within the 1.5 um of its certificate.</summary>
    public static readonly double[] GuideUm = [.. StationsMm.Select(x => Round(new Shape(-0.8, 0.35).HeightUm(x)))];

    public static readonly Rail[] Rails =
    [
        new("R01", 121, Lever, new(13, 3), new(18, -3), "gantry", "straight on both faces", "bag A"),
        new("R02", 122, Lever, new(47, -3), new(-22, 2), "z", "side bow between the gantry and the z limit", "bag A"),
        new("R03", 121, Lever, new(-17, 3), new(20, 2), "gantry", "straight; only its sweeps were out of level", "bag A - levelled in haste", 22, 28),
        new("R04", 121, Lever, new(-76, 1, Kink: 86), new(15, 2), "z", "side kink: too much over 100 mm though the whole length would pass", "bag A - someone pressed it over the bench edge"),
        new("R05", 208, Wide, new(7, 2), new(9, -2), "gantry", "straight on both faces", "bag B"),
        new("R06", 122, Lever, new(14, -2), new(8, 1, Wave: 5), "z", "top wave of 60 mm: no screw takes it out, and it is too much for the gantry", "bag A - carriage hums along it"),
        new("R07", 120, Plunger, new(-285, 15), new(35, 4), "return", "side bent far beyond every limit", "bag A - beyond the range of the lever indicator"),
        new("R08", 207, Wide, new(9, -2), new(92, 0.5), "gantry", "side straight; the screws will take the long top bow out", "bag B - daylight under its middle on the plate"),
        new("R09", 121, Lever, new(76, 3), new(12, -2), "measure again", "side fails z without reaching the limit to return it; top good", "bag A"),
        new("R10", 122, Lever, new(-14, -3), new(24, 2), "gantry", "straight on both faces", "bag A"),
        new("R11", 208, Wide, new(-44, 3), new(18, 2), "z", "side bow between the gantry and the z limit", "bag B"),
        new("R12", 209, Wide, new(10, 2), new(-13, 2), "gantry", "straight on both faces", "bag B"),
    ];

    public static double Round(double um) => (Math.Round(um * 10, MidpointRounding.ToEven) / 10) + 0.0;

    public static double[] TruthUm(int rail, int face)
    {
        var shape = face == 0 ? Rails[rail].Side : Rails[rail].Top;
        return [.. StationsMm.Select((x, i) => Round(shape.HeightUm(x) + Draw.Within(GreatestTextureUm, Draw.Key(rail, face, 5), i)))];
    }

    public static double LayBowUm(int rail, int face, int pass) => Round(Draw.Within(GreatestLayBowUm, Draw.Key(rail, face, pass < 2 ? 3 : 4), 0));
    public static double OffsetUm(int rail, int face, int pass) => Round(Draw.Within(20, Draw.Key(rail, face, pass), 0));

    public static double TiltUm(int rail, int face, int pass)
    {
        var draw = Draw.Within(1, Draw.Key(rail, face, pass), 1);
        return Round((Rails[rail].LeastTilt * Math.Sign(draw)) + ((Rails[rail].MostTilt - Rails[rail].LeastTilt) * draw));
    }

    public static double ReadingUm(int rail, int face, int pass, int station)
    {
        var (part, x) = (Rails[rail], StationsMm[station]);
        var stiffness = part.BendingStiffness(face); // the last digits of a reading: the rail bends under its weight and the tip's push
        var seen = TruthUm(rail, face)[station] - GuideUm[station]
            + new Shape(LayBowUm(rail, face, pass), 0).HeightUm(x)
            + Beam.SagUm(x, part.MassG * 9.81 / LengthMm, stiffness) - (part.Setup.ForceN * Beam.GiveUm(x, stiffness))
            + OffsetUm(rail, face, pass) + (TiltUm(rail, face, pass) * x / LengthMm)
            + (NoiseUm * Draw.Normal(Draw.Key(rail, face, pass), 2 + (12 * station)));
        return (Math.Round(Round(seen) / part.Setup.StepUm, MidpointRounding.ToEven) * part.Setup.StepUm) + 0.0;
    }
}

/// <summary>A uniform bar on two supports at equal distances from its ends: Euler-Bernoulli, closed forms; x in mm, stiffness in N m2.</summary>
static class Beam
{
    const double Length = Bench.LengthMm / 1000, Support = Bench.FirstSupportMm / 1000, Between = Length - (2 * Support);

    static double FromEnd(double xMm) => Math.Min(xMm, Bench.LengthMm - xMm) / 1000;

    /// <summary>How far 1 N at x pushes the bar down at x.</summary>
    public static double GiveUm(double xMm, double stiffness)
    {
        var (c, s) = (Support - FromEnd(xMm), FromEnd(xMm) - Support);
        return 1e6 * (c > 0 ? c * c * (Between + c) : s * s * (Between - s) * (Between - s) / Between) / (3 * stiffness);
    }

    /// <summary>Height of the bar at x under its own weight of w N/m, zero at the supports.</summary>
    public static double SagUm(double xMm, double w, double stiffness)
    {
        double Bent(double x) => w * ((Length / 12 * Math.Max(0, x - Support) * Math.Max(0, x - Support) * Math.Max(0, x - Support)) - (x * x * x * x / 24)
            + (((Length * Length * Length / 48) - (Length * Between * Between / 16)) * x));
        return 1e6 * (Bent(FromEnd(xMm)) - Bent(Support)) / stiffness;
    }
}

static class Draw
{
    public static ulong Key(int rail, int face, int slot) => (ulong)((((rail * 2) + face) * 8) + slot) * 256;

    /// <summary>Output number key + k + 1 of SplitMix64, as 53 bits in [0, 1).</summary>
    public static double Uniform(ulong key, int k)
    {
        unchecked
        {
            var z = Bench.Seed + ((key + (ulong)k + 1) * 0x9E3779B97F4A7C15);
            z = (z ^ (z >> 30)) * 0xBF58476D1CE4E5B9;
            z = (z ^ (z >> 27)) * 0x94D049BB133111EB;
            return ((z ^ (z >> 31)) >> 11) / 9007199254740992.0;
        }
    }

    public static double Within(double greatest, ulong key, int k) => greatest * ((2 * Uniform(key, k)) - 1);
    public static double Normal(ulong key, int k) => Enumerable.Range(k, 12).Sum(i => Uniform(key, i)) - 6;
}

/// <summary>A rail that carriages were pulled along. HumpMm is where the drag rises by HumpN, with the carriages named in HumpWith; WaveN is the height of a wave of 60 mm.</summary>
sealed record Pulled(string Rail, string[] Carriages, double HumpMm, double HumpN, string[] HumpWith, double WaveN, string Grade, string Reason);

static class Pulls
{
    public const double ForwardN = 0.82, BackN = 0.78, StartUpN = 1.5, ScatterN = 0.02, HumpHalfWidthMm = 12, GaugeN = 0.01;
    const int FirstKey = 32; // beyond those of rails and belts

    public static readonly bool[] Ways = [true, false]; // forward, back
    public static readonly double[] PlacesMm = [.. Enumerable.Range(0, 31).Select(i => 10.0 + (10 * i))];

    public static readonly Pulled[] Rails =
    [
        new("R01", ["K01", "K02"], 0, 0, [], 0, "gantry", "runs freely"),
        new("R06", ["K06", "K02"], 0, 0, [], 0.24, "z", "the wave of its top is felt as well"),
        new("R09", ["K09", "K02"], 150, 0.9, ["K09", "K02"], 0, "return", "binds at one place, both ways and with a second carriage"),
        new("R10", ["K10", "K02"], 230, 0.8, ["K10"], 0, "gantry", "the place moves with its own carriage"),
        new("R12", ["K12"], 90, 0.7, ["K12"], 0, "measure again", "a place seen with one carriage only"),
    ];

    public static double ForceN(int rail, int carriage, bool forward, int place)
    {
        var (part, x) = (Rails[rail], PlacesMm[place]);
        if (place == (forward ? 0 : PlacesMm.Length - 1))
            return StartUpN;
        var far = (x - part.HumpMm) / HumpHalfWidthMm;
        var hump = part.HumpWith.Contains(part.Carriages[carriage]) ? part.HumpN / ((1 + (far * far)) * (1 + (far * far))) : 0;
        var key = Draw.Key(FirstKey + (rail * 4) + (carriage * 2) + (forward ? 0 : 1), 0, 0);
        var felt = (forward ? ForwardN : BackN) + hump + (part.WaveN * Math.Sin(2 * Math.PI * x / 60)) + (ScatterN * Draw.Normal(key, 12 * place));
        return Math.Round(Math.Round(felt * 1000, MidpointRounding.ToEven) / 1000 / GaugeN, MidpointRounding.ToEven) * GaugeN;
    }
}

static class Belts
{
    public const double SpanMm = 180.2, DensityGPerM = 8.44, ScatterHz = 0.3, LeftN = 10, RightN = 8.8;

    /// <summary>The ideal string's f = sqrt(T/mu)/(2 L), and what one pluck adds.</summary>
    public static double PluckedHz(int belt, int pluck) => Bench.Round(
        (Math.Sqrt((belt == 0 ? LeftN : RightN) / (DensityGPerM / 1000)) / (2 * SpanMm / 1000))
        + (ScatterHz * Draw.Normal(Draw.Key(Bench.Rails.Length + belt, 0, 0), 12 * pluck)));
}

static class Tables
{
    const string Invented = "# Invented by datasets/demo/generate.cs: nothing here was measured.";

    public static string Text(double value, string format = "0.###") => value.ToString(format, CultureInfo.InvariantCulture);

    static string Lines(IEnumerable<string> lines) => string.Concat(lines.Select(line => line + "\n"));

    public static string Rails()
    {
        var rows = Bench.Rails.Select(rail => string.Join(',', rail.Name, Text(rail.WidthMm), Text(Bench.LengthMm), Text(Bench.PitchMm), Text(Bench.EndDistanceMm), Text(rail.MassG), rail.Note));
        return Lines([Invented, "rail,width_mm,length_mm,pitch_mm,end_distance_mm,mass_g,note", .. rows]);
    }

    public static string Sweeps()
    {
        var rows = from rail in Enumerable.Range(0, Bench.Rails.Length)
                   from face in Enumerable.Range(0, 2)
                   from pass in Enumerable.Range(0, 3)
                   from row in PassRows(rail, face, pass)
                   select row;
        return Lines([
            Invented,
            "# 0 mm is the end with the paint dot; + is material towards the dial; rows stand as they were read, so back passes run down.",
            "# Lay B: the rail was lifted off its supports and laid again.",
            "rail,face,pass,direction,position_mm,reading_um,setup,lay",
            .. rows]);
    }

    static IEnumerable<string> PassRows(int rail, int face, int pass)
    {
        var (name, direction, lay) = Bench.Passes[pass];
        var stations = Enumerable.Range(0, Bench.StationsMm.Length);
        return (direction == "back" ? stations.Reverse() : stations).Select(i => string.Join(',', Bench.Rails[rail].Name, Bench.Faces[face], name, direction,
            Text(Bench.StationsMm[i]), Text(Bench.ReadingUm(rail, face, pass, i)), Bench.Rails[rail].Setup.Id, lay));
    }

    public static string Drag()
    {
        var rows = from rail in Enumerable.Range(0, Pulls.Rails.Length)
                   from carriage in Enumerable.Range(0, Pulls.Rails[rail].Carriages.Length)
                   from forward in Pulls.Ways
                   from place in forward ? Enumerable.Range(0, Pulls.PlacesMm.Length) : Enumerable.Range(0, Pulls.PlacesMm.Length).Reverse()
                   let part = Pulls.Rails[rail]
                   // What a hand felt, where the wave is highest.
                   let note = part.WaveN > 0 && carriage == 0 && forward && place == 13 ? "hums under the hand" : ""
                   select $"{part.Rail},{part.Carriages[carriage]},{(forward ? "forward" : "back")},{Text(Pulls.PlacesMm[place])},{Text(Pulls.ForceN(rail, carriage, forward, place), "0.00")},{note}";
        return Lines([
            Invented,
            "# Carriages pulled along the rails by hand with a spring gauge, no stop from end to end; 0 mm is the end with the paint dot.",
            "# Each rail's own carriage bears its number; K02 was lent to the other 9 mm rails as the second one.",
            "rail,carriage,direction,position_mm,force_n,note",
            .. rows]);
    }

    public static string Setups() => $$"""
        {
          "note": "Invented by datasets/demo/generate.cs: nothing here was measured. The dial's stand slides on a granite plate; the rail lies face up on two supports on the same plate.",
          "setups": [
        {{string.Join(",\n", new[] { Bench.Lever, Bench.Wide, Bench.Plunger }.Select(Setup))}}
          ]
        }

        """;

    public static string Positions() => """
        {
          "note": "Invented by datasets/demo/generate.cs: the places of the benchtop gantry that want a rail. The two side rails are a pair; the cross rail carries the camera.",
          "positions": [
            { "name": "cross", "width_mm": 12, "length_mm": 320, "grade": "gantry", "face": "side", "weight": 2, "ends": ["left", "right"] },
            { "name": "left", "width_mm": 9, "length_mm": 320, "grade": "gantry", "face": "side", "pair": "right", "ends": ["front", "back"] },
            { "name": "right", "width_mm": 9, "length_mm": 320, "grade": "gantry", "face": "side", "pair": "left", "ends": ["front", "back"] },
            { "name": "lift", "width_mm": 9, "length_mm": 320, "grade": "z", "face": "side", "count": 2, "ends": ["bottom", "top"] }
          ]
        }

        """;

    static string Setup(Setup setup) => $$"""
            {
              "id": "{{setup.Id}}", "guide": "plate", "guide_straightness_um": 1.5, "guide_known_from": "certificate", "probe": "surface",
              "held": "two supports at {{Text(Bench.FirstSupportMm)}} mm, {{Text(Bench.SecondSupportMm)}} mm", "force_n": {{Text(setup.ForceN)}}, "temperature_c": 21,
              "rail": { "length_mm": {{Text(Bench.LengthMm)}}, "bending_stiffness_top_nm2": {{Text(setup.BendingStiffness(1), "0.0")}}, "bending_stiffness_side_nm2": {{Text(setup.BendingStiffness(0), "0.0")}}, "mass_kg_per_m": {{Text(setup.MassG / Bench.LengthMm, "0.000")}} },
              "instrument": { "name": "{{setup.Instrument}}", "division_um": {{Text(setup.DivisionUm)}}, "read_to": "{{setup.ReadTo}}" }
            }
        """;

    public static string Spans()
    {
        var rows = from belt in Enumerable.Range(0, 2)
                   from pluck in Enumerable.Range(0, 5)
                   select $"{(belt == 0 ? "left" : "right")},reel 1,bench fixture,180 mm u 0.3 mm,8.4 g/m u 0.1 g/m,{Text(Belts.PluckedHz(belt, pluck), "0.0")} Hz u 0.4 Hz";
        return Lines([Invented, "# One reel and one fixture for both belts; each row is one pluck.", "belt,reel,fixture,span,density,frequency", .. rows]);
    }
}

static class Straightness
{
    /// <summary>Minimum zone by trying the slope of every pair of stations: slow, and simple enough to trust.</summary>
    public static double MinimumZoneUm(double[] x, double[] z)
    {
        var stations = Enumerable.Range(0, x.Length);
        return stations.SelectMany(i => stations.Skip(i + 1).Select(j => (z[j] - z[i]) / (x[j] - x[i]))).Min(slope =>
        {
            var heights = x.Zip(z, (at, height) => height - (slope * at)).ToArray();
            return heights.Max() - heights.Min();
        });
    }

    /// <summary>The widest minimum zone of all windows of that length, both ends included, that hold four stations or more.</summary>
    public static double LocalUm(double[] x, double[] z, double windowMm)
    {
        var windows = x.Select((from, i) => i..(i + x.Skip(i).Count(at => at <= from + windowMm)));
        return windows.Where(w => w.End.Value - w.Start.Value >= 4).Max(w => MinimumZoneUm(x[w], z[w]));
    }
}

/// <summary>What screws in all holes leave of a shape, at every half millimetre: the shape less the natural cubic spline through its heights at the holes, straight beyond the end ones.</summary>
static class Mounted
{
    public static double ResidualUm(Shape shape)
    {
        double[] holes = [.. Enumerable.Range(0, 13).Select(i => Bench.EndDistanceMm + (Bench.PitchMm * i))], z = [.. holes.Select(shape.HeightUm)];
        var moment = new double[13]; // of curvature times the square of the pitch: m(i-1) + 4 m(i) + m(i+1) = 6 (second difference), by turns
        for (var turn = 0; turn < 200; turn++)
        {
            for (var i = 1; i < 12; i++)
                moment[i] = ((6 * (z[i - 1] - (2 * z[i]) + z[i + 1])) - moment[i - 1] - moment[i + 1]) / 4;
        }

        double Held(double x)
        {
            var i = Math.Clamp((int)Math.Floor((x - holes[0]) / Bench.PitchMm), 0, 11);
            var t = Math.Clamp((x - holes[i]) / Bench.PitchMm, 0, 1);
            var inside = (z[i] * (1 - t)) + (z[i + 1] * t) + ((((1 - t) * (1 - t) * (1 - t)) - (1 - t)) * moment[i] / 6) + (((t * t * t) - t) * moment[i + 1] / 6);
            var beyond = x < holes[0] ? x - holes[0] : x > holes[12] ? x - holes[12] : 0;
            return inside + (beyond / Bench.PitchMm * (z[i + 1] - z[i] + (beyond < 0 ? -moment[1] / 6 : moment[11] / 6)));
        }

        double[] places = [.. Enumerable.Range(0, 641).Select(i => i / 2.0)];
        return Bench.Round(Straightness.MinimumZoneUm(places, [.. places.Select(x => shape.HeightUm(x) - Held(x))]));
    }
}

static class Truth
{
    static string List(params IEnumerable<double> values) => "[" + string.Join(", ", values.Select(v => Tables.Text(v, "0.0##"))) + "]";

    public static string Json() => $$"""
        {
          "note": "Invented: what the generator started from. profile_um is the free face before guide, lay bow, weight, measuring force, offset, tilt, noise and division.",
          "generator": "datasets/demo/generate.cs", "seed": {{Bench.Seed}}, "noise_um": {{Tables.Text(Bench.NoiseUm)}},
          "stations_mm": {{List(Bench.StationsMm)}},
          "guide_um": {{List(Bench.GuideUm)}},
          "rails": [
        {{string.Join(",\n", Enumerable.Range(0, Bench.Rails.Length).Select(Rail))}}
          ],
          "drag": { "note": "grade: with the drag taken in", "forward_n": {{Tables.Text(Pulls.ForwardN)}}, "back_n": {{Tables.Text(Pulls.BackN)}}, "start_up_n": {{Tables.Text(Pulls.StartUpN)}}, "scatter_n": {{Tables.Text(Pulls.ScatterN)}}, "hump_half_width_mm": {{Tables.Text(Pulls.HumpHalfWidthMm)}}, "rails": [
        {{string.Join(",\n", Pulls.Rails.Select(Pulled))}}
          ] },
          "belts": { "span_mm": {{Tables.Text(Belts.SpanMm)}}, "density_g_per_m": {{Tables.Text(Belts.DensityGPerM)}}, "left_n": {{Tables.Text(Belts.LeftN)}}, "right_n": {{Tables.Text(Belts.RightN)}}, "verdict": "tighten the right a little" }
        }

        """;

    static string Pulled(Pulled rail) => $$"""
            { "rail": "{{rail.Rail}}", "carriages": [{{Names(rail.Carriages)}}], "hump_mm": {{Tables.Text(rail.HumpMm)}}, "hump_n": {{Tables.Text(rail.HumpN)}}, "hump_with": [{{Names(rail.HumpWith)}}], "wave_of_60_mm_n": {{Tables.Text(rail.WaveN)}}, "grade": "{{rail.Grade}}", "reason": "{{rail.Reason}}" }
        """;

    static string Names(string[] names) => string.Join(", ", names.Select(name => $"\"{name}\""));

    static string Rail(int rail) => $$"""
            {
              "rail": "{{Bench.Rails[rail].Name}}", "grade": "{{Bench.Rails[rail].Grade}}",
              "reason": "{{Bench.Rails[rail].Reason}}", "top_mounted_um": {{Tables.Text(Mounted.ResidualUm(Bench.Rails[rail].Top), "0.0")}},
              "faces": [
        {{Face(rail, 0, Bench.Rails[rail].Side)}},
        {{Face(rail, 1, Bench.Rails[rail].Top)}}
              ]
            }
        """;

    static string Face(int rail, int face, Shape shape) => $$"""
                {
                  "face": "{{Bench.Faces[face]}}",
                  "components_um": { "bow": {{Tables.Text(shape.Bow)}}, "s": {{Tables.Text(shape.S)}}, "kink_at_147.5_mm": {{Tables.Text(shape.Kink)}}, "wave_of_60_mm": {{Tables.Text(shape.Wave)}} },
                  "bending_stiffness_n_m2": {{Tables.Text(Bench.Rails[rail].BendingStiffness(face), "0.0")}}, "lay_bow_um": {{List(Bench.LayBowUm(rail, face, 0), Bench.LayBowUm(rail, face, 2))}},
                  "profile_um": {{List(Bench.TruthUm(rail, face))}},
                  "minimum_zone_um": {{Tables.Text(Straightness.MinimumZoneUm(Bench.StationsMm, Bench.TruthUm(rail, face)), "0.0#####")}}, "local_100_mm_um": {{Tables.Text(Straightness.LocalUm(Bench.StationsMm, Bench.TruthUm(rail, face), 100), "0.0#####")}},
                  "offset_um": {{List(Enumerable.Range(0, 3).Select(pass => Bench.OffsetUm(rail, face, pass)))}},
                  "tilt_um": {{List(Enumerable.Range(0, 3).Select(pass => Bench.TiltUm(rail, face, pass)))}}
                }
        """;
}
