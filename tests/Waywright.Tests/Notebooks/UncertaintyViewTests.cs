using System.Globalization;
using System.Text;
using Waywright.Notebooks;

namespace Waywright.Tests.Notebooks;

/// <summary>What a reader is told of straightness and how sure it is.</summary>
public class UncertaintyViewTests
{
    private static readonly double[] X = [.. Enumerable.Range(0, 13).Select(i => 25.0 * i)];

    [Fact]
    public void The_verdict_says_the_estimate_first_then_its_interval_then_what_noise_does()
    {
        var sure = Bowed(20, "R07 side");
        var zone = sure.Of(ReferenceLineKind.MinimumZone);
        var verdict = First(sure);
        Assert.Matches(@"^R07 side: straight to \d+\.\d um \(\d+\.\d to \d+\.\d um at 95 %\); noise adds about \d\.\d um to what was read; the same set-up reads up to \d\.\d um on a perfectly straight rail\.$", verdict);
        foreach (var um in new[] { zone.EstimateUm, zone.LowUm, zone.HighUm })
            Assert.Contains(um.ToString("0.0", CultureInfo.InvariantCulture), verdict);
        Assert.StartsWith("STRt about the minimum zone: straight to ", First(zone), StringComparison.Ordinal);
        Assert.StartsWith("STRt of the worst 100 mm about the minimum zone: ", First(sure.Local(100)!), StringComparison.Ordinal);
    }

    [Fact]
    public void Digits_are_no_finer_than_a_tenth_of_the_half_interval()
        => Assert.Matches(@"^Profile: straight to \d\d um \(\d\d to \d\d um at 95 %\); noise adds", First(Bowed(40, "", scatter: 2.5)));

    [Fact]
    public void A_rail_that_noise_alone_could_have_read_is_not_said_to_have_a_straightness()
    {
        var sure = Bowed(0, "R02 side");
        Assert.False(sure.Of(ReferenceLineKind.MinimumZone).IsDistinguishable);
        Assert.Matches(@"^R02 side: not distinguishable from straight: read as \d\.\d+ um, and the same set-up reads up to \d\.\d um on a perfectly straight rail; at most \d\.\d+ um at 95 %\.$", First(sure));
        Assert.DoesNotContain("straight to", Views.Text(sure));
    }

    [Fact]
    public void The_record_keeps_estimate_uncertainty_and_interval_of_each_line_and_the_noise_floor()
    {
        var sure = Bowed(20, "R07 side");
        var figures = Views.Find(typeof(StraightnessUncertainty))!.Figures(sure, "x").ToArray();
        Assert.Equal(["x/minimum-zone-estimate", "x/least-squares-estimate", "x/end-points-estimate", "x/noise-floor"], figures.Select(f => f.Id));
        var zone = sure.Of(ReferenceLineKind.MinimumZone);
        Assert.Equal((zone.EstimateUm, zone.StandardUncertaintyUm, zone.LowUm, zone.HighUm), (figures[0].Value, figures[0].StandardUncertainty, figures[0].Low, figures[0].High));
        Assert.Equal(zone.NoiseFloorUm, figures[3].Value);
        Assert.All(figures, f =>
        {
            Assert.Equal(("um", 1e-9), (f.Unit, f.RelativeTolerance));
            Assert.Contains("2000 trials, seed 1, no filter", f.Method);
        });
        var one = Assert.Single(Views.Find(typeof(UncertainFigure))!.Figures(zone, "y"));
        Assert.Equal(("y", zone.EstimateUm, zone.LowUm), (one.Id, one.Value, one.Low));
    }

    [Fact]
    public void The_next_step_is_the_remedy_of_the_largest_component()
    {
        var bow = Array.ConvertAll(X, x => 2 * x * (300 - x) / 22_500);
        var shape = new ErrorShape("guide bench: bow", bow, double.PositiveInfinity, IsRectangular: true, AveragesOut.Nothing, "reverse the guide");
        var sure = StraightnessUncertainty.Of(Rail(20, "R07 side"), new ProfileErrors([.. X.Select(_ => 0.3)], 24, [shape]), trials: 2000);
        Assert.Contains("If you need it closer: reverse the guide (largest part of the uncertainty: guide bench).", Views.Html(sure));
        Assert.StartsWith("If you need it closer: reverse the guide", Views.Text(sure).Split('\n')[1], StringComparison.Ordinal);
        Assert.Contains("If you need it closer: take more passes", Views.Html(Bowed(20, "R07 side")));
        Assert.Contains("To know it better: take more passes", Views.Html(Bowed(0, "R07 side")));
    }

    [Fact]
    public void A_face_with_a_set_up_tells_estimate_and_interval_beside_what_was_read_and_names_what_is_left_out()
    {
        var face = Demo(withSetup: true);
        var zone = face.Uncertainty()!.Of(ReferenceLineKind.MinimumZone);
        Assert.Equal(UncertaintyText.Verdict("R01 side", zone), First(face));
        var text = Views.Text(face);
        Assert.Contains($"minimum zone   {Shown.Um(zone.EstimateUm),11}  {Shown.Um(zone.LowUm),12}  {Shown.Um(zone.HighUm),5}  {Shown.Um(face.Straightness.MinimumZone.Line.STRtUm),10}", text);
        Assert.DoesNotContain("hold no uncertainty", Views.Html(face));
        Assert.Contains("Not in the uncertainty, because the set-up doesn&#39;t state it: the dial&#39;s own error", Views.Html(face));
        var figures = Views.Find(typeof(PooledSweep))!.Figures(face, "x").ToArray();
        Assert.Equal((face.Straightness.MinimumZone.Line.STRtUm, zone.EstimateUm), (figures.Single(f => f.Id == "x/minimum-zone").Value, figures.Single(f => f.Id == "x/minimum-zone-estimate").Value));
    }

    [Fact]
    public void A_face_without_a_set_up_comes_without_uncertainty_and_says_so()
    {
        var face = Demo(withSetup: false);
        Assert.Matches(@"^R01 side: straight to \d+\.\d um \(STRt about the minimum zone\), from 3 passes over 14 stations\.$", First(face));
        var html = Views.Html(face);
        Assert.Contains("so the figures come without uncertainty", html);
        Assert.DoesNotContain("estimate", html);
        Assert.Equal(["x/end-points", "x/least-squares", "x/minimum-zone"], Views.Find(typeof(PooledSweep))!.Figures(face, "x").Select(f => f.Id));
    }

    [Fact]
    public void A_rail_that_is_not_free_is_told_so_and_its_interval_is_not_called_its_straightness()
    {
        var setups = File.ReadAllText(Repository.PathOf("datasets", "demo", "rails", "setups.json")).Replace("two supports at 70 mm, 250 mm", "screwed to base");
        var face = SweepBatch.Read(Repository.PathOf("datasets", "demo", "rails", "sweeps.csv"), SetupBook.Parse(setups, "setups.json")).Sweeps[0].Pool();
        Assert.NotNull(face.Hidden);
        Assert.StartsWith("R01 side: not the free rail.", First(face), StringComparison.Ordinal);
        Assert.DoesNotContain("largest part of the uncertainty", Views.Html(face));
        Assert.DoesNotContain("noise floor: ", Views.Html(face));
    }

    [Fact]
    public void Fragments_stay_below_thirty_kilobytes_and_names_are_text()
    {
        double[] x = [.. Enumerable.Range(0, 351).Select(i => (double)i)];
        var random = new Random(1);
        var dense = StraightnessUncertainty.Of(new Profile(x, Array.ConvertAll(x, _ => 20 * random.NextDouble()), "<b>R9</b> & top"), new ProfileErrors([.. x.Select(_ => 1.0)], 40, [Shape(x, "<i>guide</i>")]), trials: 1000);
        object[] shown = [dense, dense.Of(ReferenceLineKind.MinimumZone), Demo(withSetup: true), Bowed(20, "R07 side")];
        foreach (var result in shown)
        {
            Views.Html(result);
            var html = Views.Html(result);
            Assert.InRange(Encoding.UTF8.GetByteCount(html), 2_000, 30_000);
            Assert.DoesNotContain("<b>R9", html);
            Assert.DoesNotContain("<i>", html);
        }
    }

    private static string First(object result) => Views.Text(result).Split('\n')[0];

    private static ErrorShape Shape(double[] x, string name) => new(name, Array.ConvertAll(x, v => v * (350 - v) / 30_625), double.PositiveInfinity, IsRectangular: true, AveragesOut.Nothing, "reverse <i>it</i>");

    private static Profile Rail(double um, string name) => new(X, Array.ConvertAll(X, x => (um * x * (300 - x) / 22_500) + (0.4 * Math.Sin(x))), name);

    private static StraightnessUncertainty Bowed(double um, string name, double scatter = 0.6)
        => StraightnessUncertainty.Of(Rail(um, name), new ProfileErrors([.. X.Select(_ => scatter)], 24, []), trials: 2000);

    private static PooledSweep Demo(bool withSetup)
    {
        var setups = withSetup ? SetupBook.Read(Repository.PathOf("datasets", "demo", "rails", "setups.json")) : null;
        return SweepBatch.Read(Repository.PathOf("datasets", "demo", "rails", "sweeps.csv"), setups).Sweeps.Single(s => s.Name == "R01 side").Pool();
    }
}

[UnderCulture("de-DE")]
public sealed class UncertaintyViewTestsInGerman : UncertaintyViewTests;

[UnderCulture("fa-IR")]
public sealed class UncertaintyViewTestsInPersian : UncertaintyViewTests;
