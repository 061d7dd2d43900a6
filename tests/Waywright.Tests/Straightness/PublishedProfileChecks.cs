using System.Globalization;
using Waywright.Tests.Reference;

namespace Waywright.Tests.Straightness;

/// <summary>Sources: Reference/straightness/README.md.</summary>
public abstract class PublishedProfileChecks
{
    // Six decimals are given.
    private const double SixDecimals = 5.1e-7;

    [Fact]
    public void The_class_runs_in_a_culture_that_writes_no_decimal_point()
        => Assert.NotEqual(".", CultureInfo.CurrentCulture.NumberFormat.NumberDecimalSeparator);

    [Theory]
    [InlineData("laser_guide_axis1.csv")]
    [InlineData("laser_guide_axis2.csv")]
    [InlineData("machine_tool_standard_example.csv")]
    [InlineData("autocollimator_lecture.csv")]
    public void The_figures_about_all_three_lines_are_those_of_three_other_routes(string file)
    {
        var figures = StraightnessFigures.Of(ReferenceFile.Profile("straightness/" + file));
        var row = ReferenceFile.Rows("straightness/results.csv").Single(fields => fields[0] == file);
        double[] ours =
        [
            figures.Profile.Count,
            figures.EndPoints.STRtUm,
            figures.LeastSquares.STRtUm,
            figures.LeastSquares.STRpUm,
            figures.LeastSquares.STRvUm,
            figures.LeastSquares.STRqUm,
            figures.MinimumZone.Line.STRtUm,
        ];
        for (var i = 0; i < ours.Length; i++)
            Assert.Equal(ReferenceFile.Number(row[i + 1]), ours[i], SixDecimals);
    }

    [Theory]
    // HP 5528A user's guide, pp. 21-3 to 21-6, printed to two decimals.
    [InlineData("laser_guide_axis1.csv", 8.33)]
    [InlineData("laser_guide_axis2.csv", -18.44)]
    public void The_end_point_line_has_the_printed_slope(string file, double slopeUmPerM)
        => Assert.Equal(slopeUmPerM, StraightnessFigures.Of(ReferenceFile.Profile("straightness/" + file)).EndPoints.SlopeUmPerM, 0.005);

    [Fact]
    public void The_least_squares_line_of_the_second_laser_axis_is_the_printed_one()
    {
        // HP 5528A user's guide, p. 21-6: -17.42 um/m and -0.591 um.
        var line = StraightnessFigures.Of(ReferenceFile.Profile("straightness/laser_guide_axis2.csv")).LeastSquares;
        Assert.Equal(-17.42, line.SlopeUmPerM, 0.005);
        Assert.Equal(-0.591, line.HeightAtZeroUm, 0.0005);
    }

    [Fact]
    public void The_end_point_deviations_of_the_machine_tool_example_are_whole_micrometres()
    {
        // The standard's appendix prints 0 -1 -1 -1 0 um.
        var figures = StraightnessFigures.Of(ReferenceFile.Profile("straightness/machine_tool_standard_example.csv"));
        var deviations = figures.Profile.PositionsMm.Zip(figures.Profile.HeightsUm, (x, z) => z - figures.EndPoints.HeightUm(x));
        Assert.Equal([0.0, -1.0, -1.0, -1.0, 0.0], deviations);
        Assert.Equal((0.0, 1.0), (figures.EndPoints.STRpUm, figures.EndPoints.STRvUm));
        // A zone with a flat bottom: all three in the middle touch the lower boundary.
        Assert.Equal(1.0, figures.MinimumZone.Line.STRtUm);
        Assert.Equal([(0, ZoneSide.Upper), (1, ZoneSide.Lower), (2, ZoneSide.Lower), (3, ZoneSide.Lower), (4, ZoneSide.Upper)], figures.MinimumZone.Contacts.Select(c => (c.Station, c.Side)));
    }

    [Fact]
    public void The_lecture_profile_stands_two_above_and_one_below_its_end_point_line()
    {
        // Lecture notes: 3 um, +2/-1.
        var line = StraightnessFigures.Of(ReferenceFile.Profile("straightness/autocollimator_lecture.csv")).EndPoints;
        Assert.Equal((3.0, 2.0, 1.0), (Math.Round(line.STRtUm, 12), Math.Round(line.STRpUm, 12), Math.Round(line.STRvUm, 12)));
    }

    [Fact]
    public void Two_parallel_edges_of_the_second_laser_axis_give_one_zone_whose_contacts_are_all_named()
    {
        // Two pairs of parallel hull edges tie (computed): four stations touch, not three.
        var zone = StraightnessFigures.Of(ReferenceFile.Profile("straightness/laser_guide_axis2.csv")).MinimumZone;
        Assert.True(zone.Contacts.Count >= 4, string.Join(", ", zone.Contacts));
        Assert.Equal(zone.LowestSlopeUmPerM, zone.HighestSlopeUmPerM);
    }

    [Fact]
    public void Bow_and_s_curve_have_their_closed_form_figures()
    {
        foreach (var row in ReferenceFile.Rows("straightness/analytic_checks.csv"))
        {
            // In the limit of many stations the figures of 20,001 are within 1e-4 of the closed form.
            var limit = row[1] == "inf";
            var n = limit ? 20_001 : int.Parse(row[1], CultureInfo.InvariantCulture);
            Func<double, double> shape = row[0].StartsWith("bow", StringComparison.Ordinal) ? x => 4 * x * (1 - x) : x => Math.Sin(2 * Math.PI * x);
            var figures = StraightnessFigures.Of(Sampled(shape, n));
            double[] ours =
            [
                figures.EndPoints.STRtUm,
                figures.LeastSquares.STRtUm,
                figures.LeastSquares.STRpUm,
                figures.LeastSquares.STRvUm,
                figures.LeastSquares.STRqUm,
                figures.MinimumZone.Line.STRtUm,
            ];
            for (var i = 0; i < ours.Length; i++)
                Assert.Equal(ReferenceFile.Number(row[i + 2]), ours[i], limit ? 1e-4 : 6e-9);
        }
    }

    [Fact]
    public void The_best_line_to_x_squared_is_x_less_an_eighth()
    {
        // Textbook example of best uniform approximation on [0, 1]: x - 1/8 with error 1/8, touching at 0, 1/2 and 1.
        var zone = StraightnessFigures.Of(Sampled(x => x * x, 11)).MinimumZone;
        Assert.Equal(1000, zone.Line.SlopeUmPerM, 1e-12);
        Assert.Equal(-0.125, zone.Line.HeightAtZeroUm, 1e-15);
        Assert.Equal(0.125, zone.Line.STRpUm, 1e-15);
        Assert.Equal([(0, ZoneSide.Upper), (5, ZoneSide.Lower), (10, ZoneSide.Upper)], zone.Contacts.Select(c => (c.Station, c.Side)));
    }

    private static Profile Sampled(Func<double, double> shape, int n)
    {
        var x = Enumerable.Range(0, n).Select(i => i / (n - 1.0)).ToArray();
        return new Profile(x, Array.ConvertAll(x, at => shape(at)));
    }
}

[UnderCulture("de-DE")]
public sealed class PublishedProfileChecksInGerman : PublishedProfileChecks;

[UnderCulture("tr-TR")]
public sealed class PublishedProfileChecksInTurkish : PublishedProfileChecks;

[UnderCulture("fa-IR")]
public sealed class PublishedProfileChecksInPersian : PublishedProfileChecks;
