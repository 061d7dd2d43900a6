using Waywright.Publishing;

namespace Waywright.Tests.Publishing;

public sealed class ComparisonTests
{
    [Theory]
    [InlineData("Use R03.", "Use R03.", true, true)]
    [InlineData("Use R03.", "Use R04.", false, false)]
    [InlineData("Straight to 24.7 um (23.2 to 26.2).", "Straight to 24.8 um (23.1 to 26.2).", false, true)]
    [InlineData("Straight to 24.7 um (23.2 to 26.2).", "Straight to 25.7 um (23.2 to 26.2).", false, false)]
    [InlineData("Straight to 24.7 um.", "Straight to 24.7 um, at most.", false, false)]
    [InlineData("Use 7 screws, in holes 5, 7.", "Use 7 screws, in holes 5, 8.", false, false)]
    [InlineData("Send back R07.1.", "Send back R07.2.", false, false)]
    [InlineData("Off by 0.9 um.", "Off by 10.9 um.", false, false)]
    public void A_verdict_is_compared_letter_by_letter_and_with_another_seed_but_for_last_places(string recorded, string found, bool sameSeed, bool otherSeed)
    {
        Assert.Equal(sameSeed, Differences(otherSeed: false).Count == 0);
        Assert.Equal(otherSeed, Differences(otherSeed: true).Count == 0);

        IReadOnlyList<string> Differences(bool otherSeed) => new DecisionComparison(otherSeed).Differences([new Decision("rails", "notebooks/a.ipynb", recorded)], [new Decision("rails", "notebooks/a.ipynb", found)]);
    }

    [Fact]
    public void A_decision_that_another_notebook_made_is_a_difference()
        => Assert.Equal(
            ["decision rails: recorded of notebooks/a.ipynb, found of notebooks/b.ipynb"],
            new DecisionComparison(false).Differences([new Decision("rails", "notebooks/a.ipynb", "Use R03.")], [new Decision("rails", "notebooks/b.ipynb", "Use R03.")]));

    // u 2: with another seed numbers, ends and u itself may move by 0.4; without u by 2 %; the same seed gives the same numbers.
    [Theory]
    [InlineData(0.39, 0, 2, true)]
    [InlineData(0.41, 0, 2, false)]
    [InlineData(0, 0.39, 2, true)]
    [InlineData(0, 0.41, 2, false)]
    [InlineData(0, 0, 2.41, false)]
    public void With_another_seed_a_figure_agrees_within_a_fifth_of_its_uncertainty(double value, double high, double u, bool agrees)
    {
        Figure recorded = Of(14, 18, 2), found = Of(14 + value, 18 + high, u);
        Assert.Equal(agrees, new FigureComparison(otherSeed: true).Differences([recorded], [found]).Count == 0);
        Assert.NotEmpty(new FigureComparison(otherSeed: false).Differences([recorded], [found]));

        static Figure Of(double value, double high, double u) => new("rails/r03/side", "R03 side", value, null, "um", u, low: 10, high: high);
    }

    [Theory]
    [InlineData(101.9, true)]
    [InlineData(102.1, false)]
    public void With_another_seed_a_figure_without_uncertainty_agrees_within_two_percent(double found, bool agrees)
        => Assert.Equal(agrees, new FigureComparison(otherSeed: true).Differences([new Figure("cost", "cost", 100, null, "um")], [new Figure("cost", "cost", found, null, "um")]).Count == 0);

    [Fact]
    public void A_grade_is_compared_letter_by_letter_with_any_seed()
        => Assert.Single(new FigureComparison(otherSeed: true).Differences([new Figure("g", "grade", null, "gantry", "1")], [new Figure("g", "grade", null, "z", "1")]));
}
