namespace Waywright.Tests;

public sealed class GaugeStudyTests
{
    // AIAG, Measurement Systems Analysis: ten parts, three appraisers, three trials; sums of squares and mean squares as printed, further digits computed.
    [Fact]
    public void The_ten_part_study_comes_out_as_printed()
    {
        var study = GaugeStudy.Of([.. UncertaintyFile.Rows("aiag_msa_10x3x3.csv").Select(r => (r[0], r[1], UncertaintyFile.Number(r[3])))]);
        var printed = UncertaintyFile.Rows("aiag_anova_results.csv");
        Assert.Equal(printed.Select(r => r[0]), study.Lines.Select(l => l.Source));
        foreach (var (row, line) in printed.Zip(study.Lines))
        {
            Assert.Equal(UncertaintyFile.Number(row[1]), line.DegreesOfFreedom);
            Assert.Equal(UncertaintyFile.Number(row[2]), line.SumOfSquares, 1e-12);
            Assert.Equal(UncertaintyFile.Number(row[4]), line.SumOfSquares, 0.00051);
            if (row[5].Length > 0)
                Assert.Equal(UncertaintyFile.Number(row[5]), line.MeanSquare, 0.51 * UncertaintyFile.LastDigit(row[5]));
        }

        // F(18, 60) = 0.434: a chance of 97 % (printed, from memory 0.974), so pooled.
        Assert.Equal(0.974, study.InteractionProbability, 0.0005);
        // From the printed mean squares: sqrt(0.0400), sqrt((1.584 - 0.0400) / 30), sqrt((9.818 - 0.0400) / 9).
        Assert.Equal(0.200, study.Repeatability, 0.0005);
        Assert.Equal(0.2269, study.Reproducibility, 0.0005);
        Assert.Equal(1.0423, study.PartDeviation, 0.0005);
        Assert.Equal(0.3024, study.Gauge, 0.0005);
        Assert.Equal(1.0853, study.TotalDeviation, 0.0005);
        Assert.Equal(4, study.DistinctCategories);
    }

    // Part 2 reads lower for appraiser B only: an interaction that repeats of 0.01 can't explain.
    [Fact]
    public void A_real_interaction_is_kept_apart()
    {
        (string, string, double)[] readings =
        [
            ("1", "A", 10.00), ("1", "A", 10.01), ("2", "A", 12.00), ("2", "A", 12.01), ("3", "A", 14.00), ("3", "A", 14.01),
            ("1", "B", 10.00), ("1", "B", 10.01), ("2", "B", 11.00), ("2", "B", 11.01), ("3", "B", 14.00), ("3", "B", 14.01),
        ];
        var study = GaugeStudy.Of(readings);
        Assert.True(study.InteractionProbability < 1e-6);
        Assert.Equal(5, study.Lines.Count);
        Assert.Equal(0.01 / Math.Sqrt(2), study.Repeatability, 1e-9);
        // Interaction mean square 1/3 with 2 degrees of freedom, by hand: cell deviations +/-1/6, -/+1/3, +/-1/6, two readings each.
        Assert.Equal(1.0 / 3, study.Lines[2].MeanSquare, 1e-9);
        Assert.Equal(Math.Sqrt(((1.0 / 3) - 0.00005) / 2), study.Reproducibility, 1e-9);
    }

    [Fact]
    public void A_gauge_without_scatter_has_none()
    {
        var study = GaugeStudy.Of([("1", "A", 1), ("1", "A", 1), ("2", "A", 2), ("2", "A", 2), ("1", "B", 1), ("1", "B", 1), ("2", "B", 2), ("2", "B", 2)]);
        Assert.Equal((0, 0), (study.Gauge, study.Reproducibility));
        Assert.Null(study.DistinctCategories);
    }

    [Fact]
    public void Studies_with_holes_are_refused()
    {
        Assert.Throws<ArgumentException>(() => GaugeStudy.Of([("1", "A", 1), ("1", "A", 1), ("2", "A", 2), ("2", "A", 2)]));
        Assert.Throws<ArgumentException>(() => GaugeStudy.Of([("1", "A", 1), ("2", "A", 2), ("1", "B", 1), ("2", "B", 2)]));
        Assert.Throws<ArgumentException>(() => GaugeStudy.Of([("1", "A", 1), ("1", "A", 1), ("2", "A", 2), ("2", "A", 2), ("1", "B", 1), ("1", "B", 1), ("2", "B", 2)]));
        Assert.Throws<ArgumentException>(() => GaugeStudy.Of([("1", "A", double.NaN)]));
        Assert.Throws<ArgumentException>(() => GaugeStudy.Of([]));
    }
}
