using CsCheck;

namespace Waywright.Tests;

public sealed class UncertainTests
{
    private static readonly Gen<Uncertain> Inputs = Gen.Select(Gen.Int[0, 3], Gen.Double[0.5, 2]).Select((i, scale) => scale * Named(i));

    [Fact]
    public void An_input_carries_what_it_was_given()
    {
        var x = Uncertain.Input("tape", 180, 0.2, 4);
        Assert.Equal((180, 0.2, 4), (x.Value, x.StandardUncertainty, x.DegreesOfFreedom));
        Assert.Equal(new Contribution("tape", 0.2, 4, 1), Assert.Single(x.Contributions));
    }

    // JCGM 100:2008, 5.1.2: y = x1 + x2 of independent inputs, 3-4-5.
    [Fact]
    public void Independent_inputs_add_in_squares()
    {
        var sum = Uncertain.Input("a", 10, 3) + Uncertain.Input("b", 20, 4);
        Assert.Equal((30, 5), (sum.Value, sum.StandardUncertainty));
        Assert.Equal(["b", "a"], sum.Contributions.Select(c => c.Input));
        Assert.Equal([0.64, 0.36], sum.Contributions.Select(c => Math.Round(c.Share, 12)));
    }

    // JCGM 100:2008, 5.2.2, note 1: fully correlated inputs add linearly. Ten 1 kOhm resistors compared with one standard: u 1 Ohm, not 0.32 Ohm.
    [Fact]
    public void Ten_resistors_compared_with_one_standard_add_linearly()
    {
        var sum = Uncertain.Exact(0);
        for (var i = 0; i < 10; i++)
            sum += Uncertain.Input("standard", 1000, 0.1);
        Assert.Equal(1.0, sum.StandardUncertainty, 1e-12);
        Assert.Equal(10000, sum.Value);
    }

    [Fact]
    public void One_name_is_one_input_and_may_not_say_two_things()
    {
        var e = Assert.Throws<ArgumentException>(() => Uncertain.Input("tape", 180, 0.2) + Uncertain.Input("tape", 181, 0.2));
        Assert.Equal("The input 'tape' is met twice, as 180 u 0.2 and as 181 u 0.2: equal names are one input. Give different inputs different names.", e.Message);
        Assert.Throws<ArgumentException>(() => Uncertain.Input("tape", 180, 0.2) * Uncertain.Input("tape", 180, 0.3));
        Assert.Throws<ArgumentException>(() => Uncertain.Input("tape", 180, 0.2).CorrelationWith(Uncertain.Input("tape", 180, 0.2, 3)));
    }

    [Fact]
    public void What_is_subtracted_from_or_divided_by_itself_has_no_uncertainty()
        => Inputs.Sample(x =>
        {
            var (zero, one) = (x - x, x / x);
            Assert.Equal((0, 0), (zero.Value, zero.StandardUncertainty));
            Assert.Equal((1, 0), (one.Value, one.StandardUncertainty));
        });

    [Fact]
    public void Correlations_follow_from_what_is_shared()
        => Gen.Select(Inputs, Inputs, Inputs).Sample((x, y, z) =>
        {
            // u2(a + b) = u2(a) + u2(b) + 2 r u(a) u(b) (JCGM 100:2008, 5.2.2).
            var (a, b) = ((2 * x) + y, y - (3 * z));
            var expected = Square(a) + Square(b) + (2 * a.CorrelationWith(b) * a.StandardUncertainty * b.StandardUncertainty);
            Assert.Equal(expected, Square(a + b), 1e-9 * (Square(a) + Square(b)));
            Assert.Equal(a.CorrelationWith(b), b.CorrelationWith(a), 1e-12);
        });

    [Fact]
    public void The_order_of_a_sum_does_not_matter()
        => Gen.Select(Inputs, Inputs, Inputs).Sample((x, y, z) =>
        {
            var (left, right) = (x + y + z, z + (y + x));
            Assert.Equal(left.Value, right.Value, 1e-12 * Math.Abs(left.Value));
            Assert.Equal(left.StandardUncertainty, right.StandardUncertainty, 1e-12);
        });

    [Fact]
    public void Differences_give_the_same_as_rules_of_calculus()
        => Gen.Select(Inputs, Inputs).Sample((x, y) =>
        {
            var rules = ((x * y) + x.Sqrt()) / y.Pow(1.5);
            var differences = Uncertain.Of(v => ((v[0] * v[1]) + Math.Sqrt(v[0])) / Math.Pow(v[1], 1.5), [x, y]);
            Assert.Equal(rules.Value, differences.Value, 1e-12 * Math.Abs(rules.Value));
            Assert.Equal(rules.StandardUncertainty, differences.StandardUncertainty, 1e-6 * rules.StandardUncertainty);
        });

    [Fact]
    public void Scaling_scales_the_uncertainty()
        => Gen.Select(Inputs, Gen.Double[-1e6, 1e6]).Sample((x, c) =>
            Assert.Equal(Math.Abs(c) * x.StandardUncertainty, (c * x).StandardUncertainty, 1e-12 * Math.Abs(c) * x.StandardUncertainty));

    [Fact]
    public void Shares_add_to_one_and_stand_largest_first()
        => Gen.Select(Inputs, Inputs, Inputs).Sample((x, y, z) =>
        {
            var shares = ((x * y) + z).Contributions.Select(c => c.Share).ToArray();
            Assert.Equal(1, shares.Sum(), 1e-12);
            Assert.Equal(shares.OrderDescending(), shares);
        });

    [Fact]
    public void Given_sensitivities_are_used()
    {
        var y = Uncertain.Of(7, [Uncertain.Input("a", 1, 0.3), Uncertain.Input("b", 2, 0.2)], [-2, 4]);
        Assert.Equal((7.0, 1.0), (y.Value, y.StandardUncertainty));
        Assert.Equal([0.8, -0.6], y.Contributions.Select(c => c.Signed));
        Assert.Throws<ArgumentException>(() => Uncertain.Of(7, [y], [1, 2]));
    }

    [Fact]
    public void A_cancelled_input_stays_in_the_budget_with_no_share()
    {
        var (shared, own) = (Uncertain.Input("span", 0.18, 0.001), Uncertain.Input("note", 96, 1));
        var ratio = shared * own / shared;
        Assert.Equal(["note", "span"], ratio.Contributions.Select(c => c.Input));
        Assert.Equal([1.0, 0.0], ratio.Contributions.Select(c => c.Share));
    }

    [Fact]
    public void Nothing_infinite_or_undefined_comes_out()
    {
        Uncertain zero = 0, one = Uncertain.Input("a", 1, 0.1), none = Uncertain.Input("b", 0, 0.1);
        Assert.Throws<DivideByZeroException>(() => one / zero);
        Assert.Throws<ArithmeticException>(() => (one * 1e200) * (one * 1e200));
        Assert.Throws<ArgumentOutOfRangeException>(() => (-one).Sqrt());
        Assert.Throws<ArgumentOutOfRangeException>(none.Sqrt);
        Assert.Throws<ArgumentOutOfRangeException>(() => none.Pow(0.5));
        Assert.Throws<ArgumentOutOfRangeException>(() => (-one).Pow(1.5));
        Assert.Throws<ArithmeticException>(() => Uncertain.Of(v => 1 / (v[0] - 1), [one]));
        Assert.Equal(0, zero.Sqrt().Value);
        Assert.Equal((1, 0), (none.Pow(0).Value, none.Pow(0).StandardUncertainty));
    }

    [Fact]
    public void Numbers_that_are_none_are_refused()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => Uncertain.Exact(double.NaN));
        Assert.Throws<ArgumentOutOfRangeException>(() => Uncertain.Input("a", double.PositiveInfinity, 1));
        Assert.Throws<ArgumentOutOfRangeException>(() => Uncertain.Input("a", 1, -0.1));
        Assert.Throws<ArgumentOutOfRangeException>(() => Uncertain.Input("a", 1, double.NaN));
        Assert.Throws<ArgumentOutOfRangeException>(() => Uncertain.Input("a", 1, 1, 0.5));
        Assert.Throws<ArgumentException>(() => Uncertain.Input(" ", 1, 1));
    }

    [Fact]
    public void Very_small_and_very_large_uncertainties_keep_their_digits()
    {
        var tiny = Uncertain.Input("a", 1, 3e-200) + Uncertain.Input("b", 1, 4e-200);
        Assert.Equal(5e-200, tiny.StandardUncertainty, 1e-212);
        var huge = Uncertain.Input("a", 1, 3e200) + Uncertain.Input("b", 1, 4e200);
        Assert.Equal(5e200, huge.StandardUncertainty, 1e188);
    }

    [Fact]
    public void Equal_means_equal_in_value_inputs_and_sensitivities()
    {
        static Uncertain Make(double u) => 2 * Uncertain.Input("a", 1, u);
        Assert.Equal(Make(0.1), Make(0.1));
        Assert.Equal(Make(0.1).GetHashCode(), Make(0.1).GetHashCode());
        Assert.NotEqual(Make(0.1), Make(0.2));
        Assert.NotEqual(Make(0.1), Uncertain.Input("b", 2, 0.2));
    }

    private static Uncertain Named(int i) => Uncertain.Input($"input {i}", 1.5 + i, 0.01 * (i + 1), i == 0 ? 4 : double.PositiveInfinity);

    private static double Square(Uncertain x) => x.StandardUncertainty * x.StandardUncertainty;
}
