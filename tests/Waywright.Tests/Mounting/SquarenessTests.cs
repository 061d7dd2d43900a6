using UnitsNet;

namespace Waywright.Tests.Mounting;

/// <summary>Frames whose corners lie on whole millimetres, so that every angle is known, and uncertainties worked out by hand.</summary>
public sealed class SquarenessTests
{
    private const double U = 0.3;

    [Fact]
    public void A_leaning_parallelogram_leans_by_what_its_corners_say()
    {
        // A (0, 0), B (400, 0), C (484, 288), D (84, 288): 84-288-300 is 12 times 7-24-25, so DA and BC are 300 and cos A is 84/300 = 0.28.
        // By the diagonals: (484^2 + 288^2 - 316^2 - 288^2) / (4 x 400 x 300) = 134400 / 480000 = 0.28 too.
        var frame = Of([(0, 0), (400, 0), (484, 288), (84, 288)]);
        var lean = 1000 * Math.Asin(0.28);
        Assert.Equal([-lean, lean, -lean, lean], frame.CornersMrad.Select(c => c.Value), Near(1e-9));
        Assert.Equal(-lean, frame.LeanMrad.Value, 1e-9);
        Assert.Equal(-lean / 1000 * 400, frame.OverSideMm(0).Value, 1e-9);
        Assert.True(frame is { Agrees: true, IsOutOfSquare: true, Leans: true });
    }

    [Fact]
    public void Equal_diagonals_alone_do_not_prove_a_frame_square()
    {
        // A (0, 0), B (400, 0), C (316, 288), D (84, 288): equal legs of 300, both diagonals sqrt(316^2 + 288^2), cos A = cos B = 0.28.
        var frame = Of([(0, 0), (400, 0), (316, 288), (84, 288)]);
        var lean = 1000 * Math.Asin(0.28);
        Assert.Equal(0, frame.DiagonalsMm.Value, 1e-9);
        Assert.Equal(0, frame.LeanMrad.Value, 1e-9);
        Assert.Equal([-lean, -lean, lean, lean], frame.CornersMrad.Select(c => c.Value), Near(1e-9));
        Assert.True(frame is { IsOutOfSquare: true, Leans: false });
    }

    [Fact]
    public void Any_convex_frame_gives_back_its_own_corners()
    {
        var random = new Random(7);
        for (var trial = 0; trial < 200; trial++)
        {
            (double X, double Y)[] at = [.. new (double X, double Y)[] { (0, 0), (400, 0), (400, 300), (0, 300) }.Select(p => (p.X + (60 * random.NextDouble()), p.Y + (60 * random.NextDouble())))];
            var frame = Of(at);
            for (var i = 0; i < 4; i++)
            {
                var (next, before) = (at[(i + 1) % 4], at[(i + 3) % 4]);
                var angle = Math.Atan2(before.Y - at[i].Y, before.X - at[i].X) - Math.Atan2(next.Y - at[i].Y, next.X - at[i].X);
                Assert.Equal(Math.IEEERemainder(angle - (Math.PI / 2), 2 * Math.PI), frame.CornersMrad[i].Value / 1000, 1e-9);
            }

            // Midlines from the middles of the sides.
            var (m, n) = ((at[1].X + at[2].X - at[0].X - at[3].X, at[1].Y + at[2].Y - at[0].Y - at[3].Y), (at[2].X + at[3].X - at[0].X - at[1].X, at[2].Y + at[3].Y - at[0].Y - at[1].Y));
            var midlines = Math.Atan2(n.Item2, n.Item1) - Math.Atan2(m.Item2, m.Item1);
            Assert.Equal(midlines - (Math.PI / 2), frame.LeanMrad.Value / 1000, 1e-9);
        }
    }

    [Fact]
    public void Uncertainties_of_a_3_4_5_frame_are_those_worked_out_by_hand()
    {
        // 400 x 300, diagonals 500, each length u 0.3 independent. Lengths that close obey dAC + dBD = 0.8 (dAB + dCD) + 0.6 (dBC + dDA) (the braced frame's own stress), so
        // u(miss) = u sqrt(1 + 1 + 2 x 0.64 + 2 x 0.36) = 2 u.
        // Lean: d cos = (2 x 500 dAC - 2 x 500 dBD) / (4 x 400 x 300): u = 1000 sqrt 2 u / 480000; the fit doesn't touch AC - BD.
        // Corner A: d cos = (400 dAB + 300 dDA - 500 dBD) / 120000: variance 500000 u2 / 120000^2; the fit takes off cov^2 / var(miss) = (1000 u2)^2 / (4 u2), a half: 500 u / 120000.
        var frame = Lengths(400, 300, 400, 300, 500, 500);
        Assert.Equal(2 * U, frame.MissMm.StandardUncertainty, 1e-9);
        Assert.Equal(1000 * 1000 * Math.Sqrt(2) * U / 480_000, frame.LeanMrad.StandardUncertainty, 1e-9);
        Assert.All(frame.CornersMrad, c => Assert.Equal(1000 * 500 * U / 120_000, c.StandardUncertainty, 1e-9));
        Assert.Equal(Math.Sqrt(2) * U, frame.DiagonalsMm.StandardUncertainty, 1e-9);
        Assert.Equal((1.0, false, false), (Math.Round(frame.Chance, 6), frame.IsOutOfSquare, frame.Leans));
    }

    [Fact]
    public void One_length_that_is_off_is_shared_out_and_its_chance_is_that_of_the_normal_distribution()
    {
        // BD read 1.2 mm short: a miss of +1.2 = 2 u(miss); two-sided normal tail at 2 is 4.55 % (JCGM 100 table G.1: 95.45 % within 2 sigma). By the hand rule above, each diagonal takes
        // a quarter of the miss, sides 0.2 and 0.15 of it with the other sign.
        var frame = Lengths(400, 300, 400, 300, 500, 498.8);
        Assert.Equal(1.2, frame.MissMm.Value, 1e-9);
        Assert.Equal(0.0455, frame.Chance, 5e-5);
        Assert.False(frame.Agrees);
        Assert.Equal([399.76, 299.82, 399.76, 299.82, 500.3, 499.1], frame.FittedMm, Near(0.003));
        Assert.True(Lengths(400, 300, 400, 300, 500, 499.2).Agrees);
    }

    [Fact]
    public void Fitted_lengths_close_and_corners_add_up_to_a_full_turn()
    {
        var frame = Lengths(401, 299.5, 400.2, 300.9, 500.4, 499);
        Assert.Equal(0, frame.CornersMrad.Sum(c => c.Value), 1e-9);
        Assert.Equal(0, frame.CornersMrad.Aggregate((a, b) => a + b).StandardUncertainty, 1e-9);
        var again = Lengths(frame.FittedMm[0], frame.FittedMm[1], frame.FittedMm[2], frame.FittedMm[3], frame.FittedMm[4], frame.FittedMm[5]);
        Assert.Equal(0, again.MissMm.Value, 1e-9);
    }

    [Fact]
    public void An_error_of_the_tape_s_zero_cancels_in_the_diagonals_and_the_errors_of_reading_do_not()
    {
        // Derivative of (AC2 - BD2) with respect to a length added to both is 2 (AC - BD): 0 for a square frame.
        var zero = 0.mm.WithUncertainty(2.mm);
        var with = Squareness.Of(At(400), At(300), At(400), At(300), At(500), At(500), zero);
        var without = Lengths(400, 300, 400, 300, 500, 500);
        Assert.Equal(without.LeanMrad.StandardUncertainty, with.LeanMrad.StandardUncertainty, 1e-9);
        Assert.Equal(without.DiagonalsMm.StandardUncertainty, with.DiagonalsMm.StandardUncertainty, 1e-9);
        // In the check it is 0.8 + 0.8 + 0.6 + 0.6 - 2 = 0.8 of the zero's error.
        Assert.Equal(Math.Sqrt((0.6 * 0.6) + (1.6 * 1.6)), with.MissMm.StandardUncertainty, 1e-9);
        // A hook that is 1 mm off is seen by the diagonals as no lean at all.
        Assert.Equal(0, Lengths(401, 301, 401, 301, 501, 501).LeanMrad.Value, 1e-9);
    }

    [Fact]
    public void Lengths_that_can_not_close_are_named()
    {
        Assert.Contains("The frame can't close: BC 300 mm and AB 400 mm together are no longer than AC 720 mm", Assert.Throws<ArgumentException>(() => Lengths(400, 300, 400, 300, 720, 500)).Message);
        // Both triangles over the diagonal that is too long: all of them at once.
        var both = Assert.Throws<ArgumentException>(() => Lengths(400, 300, 400, 300, 720, 500)).Message;
        Assert.Contains("CD 400 mm", both, StringComparison.Ordinal);
        Assert.Equal(3, both.Split("The frame can't close").Length);
        Assert.Contains("folds over", Assert.Throws<ArgumentException>(() => Of([(0, 0), (400, 0), (100, 100), (0, 300)])).Message);
        Assert.Contains("CD 0 mm is no length above 0", Assert.Throws<ArgumentException>(() => Lengths(400, 300, 0, 300, 500, 500)).Message);
        Assert.Contains("carry no uncertainty", Assert.Throws<ArgumentException>(() => Squareness.Of(400.mm, 300.mm, 400.mm, 300.mm, 500.mm, 500.mm)).Message);
    }

    [Fact]
    public void Lengths_that_share_an_input_are_as_correlated_as_it_makes_them()
    {
        // One scale error in all six, 0.1 % of each length: angles don't know about size, so it turns no corner and makes no miss.
        var scale = Uncertain.Input("scale of the tape", 1, 0.001);
        Uncertain[] read = [.. new[] { 400.0, 300, 400, 300, 500, 500 }.Select((mm, i) => Uncertain.Input("ABCDEF"[i..(i + 1)], mm, U))];
        var (with, without) = (SquarenessFrame.Of([.. read.Select(l => l * scale)]), SquarenessFrame.Of(read));
        Assert.Equal(U * 2, with.Miss().StandardUncertainty, 1e-9);
        Assert.Equal(without.Fitted().Corners().Select(c => c.StandardUncertainty), with.Fitted().Corners().Select(c => c.StandardUncertainty), Near(1e-12));
        // Of a length itself it is a part: 0.4 mm of 400.
        Assert.Equal(Math.Sqrt((U * U) + 0.16), with.Lengths[SquarenessFrame.AB].StandardUncertainty, 1e-9);
    }

    [Fact]
    public void Stated_uncertainties_hold_in_simulation()
    {
        var random = new Random(3);
        double Noisy(double value) => value + (U * Straightness.Sweeps.Gaussian(random));
        var frames = Enumerable.Range(0, 1000).Select(_ => Lengths(Noisy(400), Noisy(300), Noisy(400), Noisy(300), Noisy(500), Noisy(500))).ToArray();
        // Square frames: 5 of 100 lean by chance and 5 of 100 are called at odds; of 1,000 that share has a standard deviation of 0.7 %. All four corners together stay within 5 of 100.
        Assert.InRange(frames.Count(f => f.Leans) / 1000.0, 0.03, 0.07);
        Assert.InRange(frames.Count(f => !f.Agrees) / 1000.0, 0.03, 0.07);
        Assert.InRange(frames.Count(f => f.IsOutOfSquare) / 1000.0, 0.005, 0.065);
    }

    private static Squareness Of((double X, double Y)[] at)
    {
        return Lengths(Far(0, 1), Far(1, 2), Far(2, 3), Far(3, 0), Far(0, 2), Far(1, 3));

        double Far(int i, int j) => Math.Sqrt(((at[i].X - at[j].X) * (at[i].X - at[j].X)) + ((at[i].Y - at[j].Y) * (at[i].Y - at[j].Y)));
    }

    private static Squareness Lengths(double ab, double bc, double cd, double da, double ac, double bd) => Squareness.Of(At(ab), At(bc), At(cd), At(da), At(ac), At(bd));

    private static Measured<Length> At(double mm) => mm.mm.WithUncertainty(U.mm);

    private static Func<double, double, bool> Near(double within) => (a, b) => Math.Abs(a - b) <= within;
}
