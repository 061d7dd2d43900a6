using System.Globalization;
using System.Text;
using Waywright.Tests.Straightness;

namespace Waywright.Tests;

/// <summary>Grades that shared trials settle are those that each rail's own trials give.</summary>
public class SharedTrialsTests
{
    private const int Trials = 2000;

    private static readonly double[] Stations = [4, .. Enumerable.Range(0, 12).Select(i => 22.5 + (25.0 * i)), 316];

    private static readonly SetupBook Book = SetupBook.Parse(
        """
        {"setups":[{"id":"bench","guide":"plate","guide_straightness_um":1.5,"guide_known_from":"certificate","probe":"surface","held":"two supports at 70 mm, 250 mm",
        "instrument":{"name":"lever indicator","division_um":1,"read_to":"whole"}}]}
        """,
        "setups.json");

    // Sides and tops of all sizes, many of them close to a limit; some stations are read fewer times than others. No lays: they are pooled over the batch.
    private static string Rows(int rail)
    {
        var random = new Random(rail);
        var text = new StringBuilder();
        double[] near = [30, 60, 100, 5, 80, 200];
        var (side, top, wave) = (near[rail % near.Length] + (4 * Sweeps.Gaussian(random)), 60 * Sweeps.Gaussian(random), rail % 3 == 0 ? 5 * Sweeps.Gaussian(random) : 0);
        foreach (var (face, bow, ripple) in new[] { ("side", side, 0.3 * wave), ("top", top, wave) })
        {
            for (var pass = 1; pass <= 3; pass++)
            {
                foreach (var x in Stations.Where((_, i) => pass < 3 || i != rail % 14))
                {
                    var u = x / 320;
                    text.Append(CultureInfo.InvariantCulture, $"R{rail:00},{face},{pass},forward,{x},{Math.Round((bow * 4 * u * (1 - u)) + (ripple * Math.Sin(2 * Math.PI * x / 75)) + (0.7 * Sweeps.Gaussian(random)))}\n");
                }
            }
        }

        return text.ToString();
    }

    private static GradedBatch Grade(IEnumerable<int> rails, Func<RailStock.Rail, ScrewPattern>? screws = null)
        => SweepBatch.Parse("rail,face,pass,direction,position_mm,reading_um\n" + string.Concat(rails.Select(Rows)), "s.csv", Book)
            .Grade(stock: Holes.Of(rails.Select(r => string.Create(CultureInfo.InvariantCulture, $"R{r:00}"))), screws: screws, trials: Trials);

    // By the figures that are told, and nothing else.
    private static string Expected(GradedRail rail)
    {
        UncertainFigure Told(string feature) => rail.Features.Single(f => f.Feature == feature).Figure!;
        foreach (var grade in GradeRules.Starting.Grades)
        {
            if (grade.Limits.Where(l => l.Feature != RailFeature.Drag).All(l => Told(l.Feature) is var f && f.NoiseFloorUm <= l.Limit && f.UpperBoundUm(0.95) <= l.Limit))
                return grade.Grade;
        }

        return Told(RailFeature.Side) is { NoiseFloorUm: <= 100 } side && side.LowerBoundUm(0.95) > 100 ? GradedBatch.Return : GradedBatch.MeasureAgain;
    }

    [Fact]
    public void Each_rail_gets_the_grade_that_its_own_figures_prove()
    {
        var graded = Grade(Enumerable.Range(0, 60));
        Assert.All(graded.Rails, r => Assert.Equal(Expected(r), r.Grade));
        Assert.Equal(4, graded.Counts.Count);
    }

    [Fact]
    public void A_rail_on_three_screws_gets_the_grade_that_contact_in_each_trial_proves_and_is_told_what_would_settle_it()
    {
        var graded = Grade(Enumerable.Range(0, 18), rail => ScrewPattern.Every(rail).OfCount(3));
        Assert.All(graded.Rails, r => Assert.Equal(Expected(r), r.Grade));
        Assert.Contains(graded.Rails, r => r.Next.Contains("more screws", StringComparison.OrdinalIgnoreCase));
    }

    [Fact]
    public void What_the_shared_bounds_prove_a_figure_s_own_bounds_prove_and_they_are_wider()
    {
        var shelf = new TrialShelf(1, Trials, 1, default);
        foreach (var rail in Enumerable.Range(0, 12))
        {
            var faces = SweepBatch.Parse("rail,face,pass,direction,position_mm,reading_um\n" + Rows(rail), "s.csv", Book).Pool();
            var features = RailFeatures.Of("R", faces[0], faces[1], new RailScrews(Holes.Of("R"), ScrewPattern.Every), null, shelf);
            foreach (var feature in features.All)
            {
                var (quick, figure) = (feature.Quick(feature.Source!, feature.Read!.Value)!, feature.Figure!);
                Assert.True(quick.FloorUm >= figure.NoiseFloorUm);
                foreach (var level in new[] { 0.9, 0.95, 0.99 })
                {
                    // Where the quick bounds would settle it, a hair inside the figure's own bounds, they don't.
                    Assert.False(quick.IsWithin(figure.UpperBoundUm(level) * 0.999, level));
                    Assert.False(quick.IsBeyond(figure.LowerBoundUm(level) + 0.001, level));
                }
            }
        }
    }

    [Fact]
    public void Neither_the_order_of_rails_nor_the_company_of_others_makes_a_difference()
    {
        var together = Grade(Enumerable.Range(0, 20));
        var backwards = Grade(Enumerable.Range(0, 20).Reverse());
        Assert.Equal(together.Rails.Select(Told), backwards.Rails.Select(Told));
        foreach (var rail in new[] { 0, 7, 13 })
            Assert.Equal(Told(together.Find(string.Create(CultureInfo.InvariantCulture, $"R{rail:00}"))!), Told(Grade([rail]).Rails.Single()));
    }

    [Fact]
    public void A_figure_of_a_large_batch_is_the_same_whenever_it_is_asked_for()
    {
        var rail = Grade(Enumerable.Range(0, 52)).Rails[0];
        var (first, second) = (Figures(rail), Figures(rail));
        Assert.Equal(first, second);

        static double[] Figures(GradedRail rail)
        {
            GC.Collect();
            return [.. rail.Features.Select(f => f.Figure!.HighUm)];
        }
    }

    [Fact]
    public void All_that_is_told_of_a_large_batch_rail_by_rail_simulates_each_figure_once()
    {
        var graded = Grade(Enumerable.Range(0, 52));
        Assert.All(graded.Rails.SelectMany(r => r.Features), f => Assert.Equal(0, f.Simulations));
        foreach (var rail in graded.Rails)
        {
            Told(rail);
            // A collection in the midst of a rail takes nothing that the rest of it needs.
            GC.Collect();
            Told(rail);
        }

        Assert.NotEmpty(graded.Margins);
        Assert.All(graded.Rails.SelectMany(r => r.Features), f => Assert.Equal(1, f.Simulations));
    }

    private static string Told(GradedRail rail)
        => FormattableString.Invariant($"{rail.Rail} {rail.Grade} {rail.Reason} {rail.Next} {rail.Confidence} {string.Join(" ", rail.States)} {string.Join(" ", rail.Features.Select(f => FormattableString.Invariant($"{f.Figure!.LowUm:R} {f.Figure.EstimateUm:R} {f.Figure.HighUm:R}")))}");
}
