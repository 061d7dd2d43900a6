namespace Waywright.Tests.Datasets;

/// <summary>The published tables against the figures printed with them and those kept in <c>expected.csv</c>.</summary>
public sealed class PublishedTableTests
{
    static readonly DataFolder Folder = DataFolder.Named("published");

    public static TheoryData<string> Tables => [.. Folder.Table("expected.csv").Rows.Select(row => row[0])];

    [Theory]
    [MemberData(nameof(Tables))]
    public void The_expected_figures_follow_from_the_table(string file)
    {
        // Source: expected.csv, computed with NumPy and SciPy three ways and printed to six decimals.
        var expected = Folder.Table("expected.csv").Rows.Single(row => row[0] == file);
        var (x, z) = Profile(file);
        Assert.Equal(expected[1], x.Length.ToString(System.Globalization.CultureInfo.InvariantCulture));
        Matches(expected[2..], Figures(x, z), 1e-6);
    }

    [Fact]
    public void The_tables_are_the_four_that_have_expected_figures() => Assert.Equal(4, Tables.Count);

    [Fact]
    public void The_laser_guide_slopes_are_the_printed_ones()
    {
        // Source: HP 5528A user's guide, October 1987, section 21, pages 21-3 to 21-6; printed to 0.01 um/m and 0.001 um.
        var (x1, z1) = Profile("laser_guide_axis1.csv");
        var (x2, z2) = Profile("laser_guide_axis2.csv");
        Assert.Equal(8.33, 1000 * AllPairs.EndPoints(x1, z1).Slope, 0.005);
        Assert.Equal(-18.44, 1000 * AllPairs.EndPoints(x2, z2).Slope, 0.005);
        var (slope, atZero) = AllPairs.LeastSquares(x2, z2);
        Assert.Equal(-17.42, 1000 * slope, 0.005);
        Assert.Equal(-0.591, atZero, 0.0005);
    }

    [Fact]
    public void The_worked_examples_deviate_from_the_end_point_line_as_printed()
    {
        // Sources: a Russian state machine-tool standard (number from memory: GOST 22267); lecture notes on the autocollimator (weak).
        var (x, z) = Profile("machine_tool_standard_example.csv");
        var (slope, atZero) = AllPairs.EndPoints(x, z);
        Assert.Equal([0, -1, -1, -1, 0], AllPairs.Deviations(x, z, slope, atZero).Select(d => Math.Round(d, 12)));

        (x, z) = Profile("autocollimator_lecture.csv");
        (slope, atZero) = AllPairs.EndPoints(x, z);
        var lecture = AllPairs.Deviations(x, z, slope, atZero);
        Assert.Equal(2, lecture.Max(), 1e-12);
        Assert.Equal(-1, lecture.Min(), 1e-12);
    }

    [Fact]
    public void The_analytic_figures_follow_from_their_formulas()
    {
        // Source: closed forms, printed to nine digits in analytic_checks.csv; the formula's own field holds commas, so fields count from the end.
        var rows = Folder.Table("analytic_checks.csv").Rows.Where(row => row[^7] != "inf").ToArray();
        Assert.Equal(8, rows.Length);
        foreach (var row in rows)
        {
            var x = Enumerable.Range(0, (int)DataFolder.Number(row[^7])).Select(i => i / (DataFolder.Number(row[^7]) - 1)).ToArray();
            var isBow = row[0].Contains("4x(1-x)", StringComparison.Ordinal);
            double[] z = [.. x.Select(at => isBow ? 4 * at * (1 - at) : Math.Sin(2 * Math.PI * at))];
            Matches(row[^6..], Figures(x, z), 1e-8);
        }
    }

    /// <summary>End-point range, then least-squares STRt, STRp, STRv, STRq, then the minimum zone.</summary>
    static double[] Figures(double[] x, double[] z)
    {
        var (endSlope, endAtZero) = AllPairs.EndPoints(x, z);
        var (slope, atZero) = AllPairs.LeastSquares(x, z);
        var least = AllPairs.Deviations(x, z, slope, atZero);
        return [AllPairs.Range(AllPairs.Deviations(x, z, endSlope, endAtZero)), AllPairs.Range(least), least.Max(), -least.Min(), Math.Sqrt(least.Average(d => d * d)), AllPairs.MinimumZone(x, z)];
    }

    static void Matches(string[] expected, double[] found, double tolerance)
    {
        Assert.Equal(expected.Length, found.Length);
        for (var i = 0; i < expected.Length; i++)
            Assert.Equal(DataFolder.Number(expected[i]), found[i], tolerance);
    }

    static (double[] X, double[] Z) Profile(string file)
    {
        var rows = Folder.Table(file).Rows;
        return ([.. rows.Select(row => DataFolder.Number(row[0]))], [.. rows.Select(row => DataFolder.Number(row[1]))]);
    }
}
