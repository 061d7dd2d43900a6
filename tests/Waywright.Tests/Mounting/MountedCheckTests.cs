using System.Text;
using Waywright.Notebooks;

namespace Waywright.Tests.Mounting;

/// <summary>A sweep after mounting against its prediction, with faults that are known because they were put there.</summary>
public class MountedCheckTests
{
    private const double Stiffness = 42.4;

    private static readonly ScrewPattern Screws = ScrewPattern.Every(350, 20, 5).EveryOther();
    private static readonly double[] Stations = [.. Enumerable.Range(0, 18).Select(i => 5 + (20.0 * i))];

    // Invented: a bow of 60 um with a wave of 8.
    private static readonly Profile Free = new(Stations, [.. Stations.Select(x => (60 * 4 * x * (350 - x) / 122_500) + (8 * Math.Sin(x / 30)))], "R04 top");
    private static readonly MountedShape Predicted = MountedShape.Of(Free, Screws, Stiffness);
    private static readonly ProfileErrors Errors = Scatter(0.8);

    [Fact]
    public void Sound_mountings_are_called_at_odds_in_no_more_than_five_of_a_hundred()
    {
        // 1,000 simulated mountings: free and mounted sweeps with scatter of 0.8 um and one common bow of the guide; 5 % has a standard deviation of 0.7 %.
        var random = new Random(7);
        double Noise() => 0.8 * Straightness.Sweeps.Gaussian(random);
        var guide = new ErrorShape("bow of the guide", [.. Stations.Select(x => 3 * 4 * x * (350 - x) / 122_500)], double.PositiveInfinity, false, AveragesOut.Nothing, "reverse the guide");
        var errors = new ProfileErrors([.. Stations.Select(_ => 0.8)], double.PositiveInfinity, [guide]);
        var checks = Enumerable.Range(0, 1000).Select(_ =>
        {
            var bow = Straightness.Sweeps.Gaussian(random);
            var free = new Profile(Stations, [.. Free.HeightsUm.Select((z, i) => z + Noise() + (bow * guide.HeightsUm[i]))]);
            var swept = new Profile(Stations, [.. Stations.Select((x, i) => Predicted.HeightUm(x) + Noise() + (bow * guide.HeightsUm[i]) + 40 + (0.3 * x))]);
            return MountedCheck.Of(MountedShape.Of(free, Screws, Stiffness), swept, errors, errors);
        }).ToArray();
        Assert.InRange(checks.Count(c => !c.Holds) / 1000.0, 0.015, 0.06);
        // Chi-squared of 18 stations less a line: mean 16, standard deviation sqrt(32) / sqrt(1000) = 0.18.
        Assert.Equal(16, checks.Average(c => c.ChiSquared), 0.7);
    }

    [Fact]
    public void Height_and_tilt_of_the_sweep_are_free()
    {
        var check = Check(x => 500 - (0.7 * x));
        Assert.True(check.Holds);
        Assert.Equal(0, check.ChiSquared, 1e-9);
        Assert.All(check.Difference.HeightsUm, d => Assert.Equal(0, d, 1e-9));
    }

    [Fact]
    public void The_chances_are_those_of_chi_squared_and_student_tables()
    {
        // One station 4.0 um off, independent errors of 1 um: by hand the line takes h = 1/n + (x - mean)^2 / Sxx of it. Station 9 at 165 mm, mean 175, Sxx = 400 x 18 (18^2 - 1) / 12 = 193800.
        var leverage = (1.0 / 18) + (100.0 / 193_800);
        var check = MountedCheck.Of(Predicted, Swept(x => x == 165 ? 4 : 0), Scatter(1));
        Assert.Equal(16 * (1 - leverage), check.ChiSquared, 1e-9);
        Assert.Equal(4 * (1 - leverage), check.LargestUm, 1e-9);
        Assert.Equal(Math.Sqrt(1 - leverage), check.UncertaintyUm[8], 1e-9);
        // Largest: 3.886 sigma, two-sided normal 1.02e-4, times 18 stations, times 2 for both figures: 0.0037 (normal tables).
        Assert.Equal(0.0037, check.Chance, 0.0001);
        Assert.False(check.Holds);
        Assert.Equal([165], check.DepartingMm);
    }

    [Fact]
    public void A_screw_that_was_left_loose_is_found_by_its_hole()
    {
        // Invented: a local bump of 30 um at hole 9, which its screw presses down.
        var bumped = new Profile(Stations, [.. Stations.Select(x => 30 * Math.Exp(-Math.Pow((x - 165) / 25, 2)))], "R05 top");
        var predicted = MountedShape.Of(bumped, Screws, Stiffness);
        var loose = MountedShape.Of(bumped, Screws.InHoles([.. Screws.Holes.Where(h => h != 9)]), Stiffness);
        Assert.True(loose.HeightUm(165) - predicted.HeightUm(165) > 4, "the case is only one if the rail rises there");
        var check = MountedCheck.Of(predicted, new Profile(Stations, [.. Stations.Select(loose.HeightUm)]), Scatter(0.4));
        Assert.Equal((MountedDeparture.LooseScrew, 9), (check.Departure, check.DepartureHole!.Value));
        Assert.StartsWith("Tighten the screw in hole 9 and sweep again", Views.Text(check), StringComparison.Ordinal);
    }

    [Fact]
    public void A_chip_under_a_screw_or_between_two_is_found_with_its_size()
    {
        // Under hole 5 (85 mm), 25 um: MathNet's natural spline through the screws with that one raised.
        var raised = MathNet.Numerics.Interpolation.CubicSpline.InterpolateNatural(Screws.ScrewsMm, Screws.Holes.Select(h => h == 5 ? 25.0 : 0));
        var check = Check(raised.Interpolate);
        Assert.Equal((MountedDeparture.Chip, 5, 85.0), (check.Departure, check.DepartureHole!.Value, check.DepartureAtMm));
        Assert.Equal(25, check.DepartureUm.Value, check.DepartureUm.Expanded().U);
        Assert.StartsWith("Take the rail up, clean rail and base near 85 mm", Views.Text(check), StringComparison.Ordinal);
        var low = Check(x => -raised.Interpolate(x));
        Assert.Equal(MountedDeparture.LowBase, low.Departure);
        Assert.StartsWith("Sweep the base near 85 mm: the top lies 25", Views.Text(low), StringComparison.Ordinal);
    }

    [Fact]
    public void A_base_that_is_bowed_otherwise_than_it_was_swept_is_told_from_a_chip()
    {
        var check = Check(x => -12 * 4 * x * (350 - x) / 122_500);
        Assert.Equal((MountedDeparture.BentBase, 175.0), (check.Departure, check.DepartureAtMm));
        Assert.Equal(-12, check.DepartureUm.Value, 1e-6);
        Assert.Matches("^Sweep the base again as it stands now: the top is 12\\.\\d* .* um more hollow", Views.Text(check));
    }

    [Fact]
    public void What_no_single_cause_explains_is_said_to_be_so()
    {
        var check = Check(x => 10 * Math.Sin(x / 9));
        Assert.Equal((MountedDeparture.Unexplained, false), (check.Departure, check.IsExplained));
        Assert.StartsWith("Loosen the screws, clean", Views.Text(check), StringComparison.Ordinal);
    }

    [Fact]
    public void A_coarse_free_sweep_makes_the_prediction_as_uncertain_as_it_is()
    {
        // A rigid base swept with u 2 um at each screw carries just that to the top there: u of a station at a screw is sqrt(0.8^2 + 2^2) less what the line takes.
        var under = new Profile(Screws.ScrewsMm, [.. Screws.ScrewsMm.Select(_ => 0.0)], "base");
        var shape = MountedShape.Of(new Profile(Stations, [.. Stations.Select(_ => 0.0)]), Screws, Stiffness, under);
        var check = MountedCheck.Of(shape, new Profile(Stations, [.. Stations.Select(_ => 0.0)]), Errors, null, Scatter(2, Screws.ScrewsMm.Count));
        Assert.InRange(check.UncertaintyUm[8], 0.85 * Math.Sqrt(4.64), Math.Sqrt(4.64));
        Assert.InRange(Check(_ => 0).UncertaintyUm[8], 0.85 * 0.8, 0.8);
    }

    [Fact]
    public void What_does_not_fit_is_named_together()
    {
        var off = new Profile([0, 100, 200, 400], [0, 0, 0, 0]);
        var message = Assert.Throws<ArgumentException>(() => MountedCheck.Of(Predicted, off, Scatter(0, 3), Scatter(1, 2), Scatter(1, 2))).Message;
        Assert.Contains("The sweep has stations from 0 to 400 mm: they must lie on the rail, from 0 to 350 mm. The sweep has 4 places: at least 5 are needed. Errors of 3 stations don't fit the sweep of 4.", message);
        Assert.Contains("The sweep's errors say 0 um at a station: no reading is exact. Errors of 2 stations don't fit the free sweep of 18. Errors of a base are given, but the prediction was made without one.", message);
    }

    [Fact]
    public void Both_curves_are_drawn_in_less_than_thirty_kilobytes()
    {
        Views.Html(Check(_ => 0));
        var html = Views.Html(Check(x => 20 * Math.Exp(-Math.Pow((x - 85) / 20, 2))));
        Assert.InRange(Encoding.UTF8.GetByteCount(html), 2_000, 30_000);
        Assert.All(["predicted", "swept", "departs", "what chance explains"], name => Assert.Contains(name, html));
    }

    private static MountedCheck Check(Func<double, double> off) => MountedCheck.Of(Predicted, Swept(off), Errors, Errors);

    private static Profile Swept(Func<double, double> off) => new(Stations, [.. Stations.Select(x => Predicted.HeightUm(x) + off(x))], "R04 mounted");

    private static ProfileErrors Scatter(double u, int stations = 18) => new([.. Enumerable.Repeat(u, stations)], double.PositiveInfinity, []);
}

[UnderCulture("de-DE")]
public sealed class MountedCheckTestsInGerman : MountedCheckTests;
