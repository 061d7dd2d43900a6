using System.Text;
using Waywright.Notebooks;
using Waywright.Publishing;

namespace Waywright.Tests;

public sealed class ExplorationTests
{
    // Reference/belts/stiff_string_ratios.csv: pinned over-reads by pi2 / xi2, so 5 % is at xi = pi / sqrt(0.05); clamped 4.22664 % at xi 100.
    [Fact]
    public void The_border_of_the_region_is_where_the_exact_notes_are_5_percent_off()
    {
        Assert.Equal(Math.PI / Math.Sqrt(0.05), ExplorePicture.XiOf(0.05, 0), 1e-8);
        Assert.Equal(100, ExplorePicture.XiOf(0.0422664, 2), 1e-3);
        Assert.Equal(0.0422664, ExplorePicture.Share(200, 10, 200.0 * 200 * 10 / 1e4, 2), 5.1e-8);
    }

    [Fact]
    public void Explorations_fit_a_page_and_say_what_to_do_first()
    {
        (Exploration Shown, string Begins)[] all =
        [
            (Exploration.Stiffness(180.mm, 10.N, 4e-5), "Pluck spans longer than 28 mm on two pulleys, 92 mm with one clamp, 171 mm between two"),
            (Exploration.Pluck(180.mm, 10.N, 20.kN, 900.mm), "Pluck less than 0.7 mm for 1 %"),
            (Exploration.Uncertainty(10.N, 8.4.g_per_m, 4e-5, 0.3.mm, 0.004), "Weigh more and pluck longer spans"),
        ];
        Assert.All(all, e =>
        {
            var html = CellOutputs.WithoutLive(Views.Html(e.Shown));
            Assert.InRange(Encoding.UTF8.GetByteCount(html), 1000, 30_000);
            Assert.Contains("\"slider\":", html, StringComparison.Ordinal);
            Assert.Contains("5 %", html, StringComparison.Ordinal);
            Assert.StartsWith(e.Begins, Views.Text(e.Shown), StringComparison.Ordinal);
        });
    }

    // Far from the demo's numbers the pictures still draw: every step has the same traces.
    [Theory]
    [InlineData(60, 2, 2e-4)]
    [InlineData(900, 200, 1e-6)]
    [InlineData(30, 0.5, 1e-2)]
    public void Any_belt_may_be_explored(double mm, double newton, double bending)
    {
        Assert.Contains("\"slider\":", Views.Html(Exploration.Stiffness(mm.mm, newton.N, bending)), StringComparison.Ordinal);
        Assert.Contains("\"slider\":", Views.Html(Exploration.Pluck(mm.mm, newton.N, 45.kN)), StringComparison.Ordinal);
        Assert.Contains("\"slider\":", Views.Html(Exploration.Uncertainty(newton.N, 8.4.g_per_m, bending, 1.mm, 0.01)), StringComparison.Ordinal);
    }

    [Fact]
    public void Numbers_that_are_none_are_refused()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => Exploration.Stiffness(0.mm, 10.N, 4e-5));
        Assert.Throws<ArgumentOutOfRangeException>(() => Exploration.Stiffness(180.mm, 10.N, 0));
        Assert.Throws<ArgumentOutOfRangeException>(() => Exploration.Pluck(180.mm, 0.N, 20.kN));
        Assert.Throws<ArgumentOutOfRangeException>(() => Exploration.Uncertainty(10.N, 8.4.g_per_m, 4e-5, 0.3.mm, 0));
    }
}
