using System.Globalization;
using Waywright.Tests.Reference;

namespace Waywright.Tests;

public sealed class TensionedBeamTests
{
    // Reference/belts/stiff_string_ratios.csv: pinned by Irvine's equation 2, clamped by the exact roots, to 8 digits.
    [Fact]
    public void Notes_agree_with_the_table_of_a_stiff_string()
    {
        var rows = ReferenceFile.Rows("belts/stiff_string_ratios.csv");
        Assert.Equal(33, rows.Count);
        foreach (var row in rows)
        {
            var (xi, n) = (ReferenceFile.Number(row[0]), (int)ReferenceFile.Number(row[1]));
            Assert.Equal(ReferenceFile.Number(row[3]), TensionedBeam.Ratio(n, xi, 0), 5.1e-9);
            // The table's third clamped note at xi 5 and 7 is its second one again (4.4785 and 3.5337 f0): there the table skipped a root, which SciPy's bracketing shows as well.
            var skipped = n == 3 && xi < 10;
            Assert.Equal(ReferenceFile.Number(row[4]) * n, skipped ? 2 * TensionedBeam.Ratio(2, xi, 2) : n * TensionedBeam.Ratio(n, xi, 2), 1.6e-8 * n);
        }
    }

    // SciPy 1.x brentq on 2 a b (1 / cosh a - cos b) + (a2 - b2) tanh a sin b = 0, computed beside this test.
    [Theory]
    [InlineData(5, 3, 2.7739473933544936)]
    [InlineData(7, 3, 2.114086035583388)]
    [InlineData(7, 1, 1.50053468205778)]
    [InlineData(50, 1, 1.0437403618087455)]
    public void Clamped_notes_agree_with_roots_by_bracketing(double xi, int n, double expected)
        => Assert.Equal(expected, TensionedBeam.Ratio(n, xi, 2), 1e-12);

    [Fact]
    public void Notes_agree_with_finite_elements_for_every_pair_of_ends()
    {
        DebianPython.RequireSciPy();
        (int N, double Xi, int Ends)[] cases = [.. from n in new[] { 1, 2, 5 } from xi in new[] { 3.0, 12, 40 } from ends in new[] { 0, 1, 2 } select (n, xi, ends)];
        var file = Path.Combine(Path.GetTempPath(), Path.GetRandomFileName());
        File.WriteAllLines(file, cases.Select(c => string.Create(CultureInfo.InvariantCulture, $"{c.N},{c.Xi},{c.Ends}")));
        var found = DebianPython.Run("belts/beam_notes_by_finite_elements.py", file);
        File.Delete(file);
        Assert.Equal(cases.Length, found.Length);
        Assert.All(cases.Zip(found), c => Assert.Equal(ReferenceFile.Number(c.Second), TensionedBeam.Ratio(c.First.N, c.First.Xi, c.First.Ends), 2e-6));
    }

    // A beam without tension: clamped 4.730041, clamped and pinned 3.926602 (roots of cos b cosh b = 1 and tan b = tanh b, any text on vibration).
    [Theory]
    [InlineData(2, 4.730040744862704)]
    [InlineData(1, 3.926602312047919)]
    [InlineData(0, Math.PI)]
    public void Without_tension_it_is_a_plain_beam(int ends, double root)
        => Assert.Equal(root * root / (2 * Math.PI), TensionedBeam.FrequencyHz(1, 0, 1, 1, 1, ends), 1e-13);

    // Each root satisfies its own equation to rounding, whatever the note and stiffness.
    [Fact]
    public void Roots_hold_to_twelve_digits_from_a_stiff_bar_to_a_limp_string()
    {
        foreach (var xi in new[] { 0.01, 0.5, 3, 20, 200, 2e4, 1e7 })
        {
            for (var n = 1; n <= 40; n++)
            {
                var b = TensionedBeam.Root(n, xi, 2);
                Assert.InRange(b, n * Math.PI, (n + 1) * Math.PI);
                var a = double.Hypot(xi, b);
                var tanh = Math.Tanh(a / 2);
                // The half equations of symmetric and antisymmetric notes, their sine and cosine form having no poles.
                var rest = n % 2 == 1 ? (a * tanh * Math.Cos(b / 2)) + (b * Math.Sin(b / 2)) : (a * Math.Sin(b / 2)) - (b * tanh * Math.Cos(b / 2));
                Assert.InRange(Math.Abs(rest) / a, 0, 1e-13 * n * 40);
            }
        }
    }

    // A pulley end is pinned at the tangent point: L. Kong and R. G. Parker, J. Appl. Mech. 2005; finite elements with contact, resolved to an element length at each end.
    [Fact]
    public void A_belt_on_pulleys_sounds_as_if_pinned_at_the_tangent_points()
    {
        DebianPython.RequireSciPy();
        foreach (var line in DebianPython.Run("belts/pulley_end_by_finite_elements.py", ""))
        {
            var found = line.Split(',').Select(ReferenceFile.Number).ToArray();
            var (xi, note, back, element) = (found[0], found[1], found[2], found[3]);
            Assert.Equal(TensionedBeam.Ratio(1, xi, 0), note, 2 * element);
            Assert.Equal(1, back, xi * element);
            Assert.True(TensionedBeam.Ratio(1, xi, 2) - note > 4 * element);
        }
    }

    // The same from the exact roots: clamped at the place of departure, sqrt(EI / T) behind the tangent point at each end, it differs from pinned by less than 12 / xi3.
    [Theory]
    [InlineData(20)]
    [InlineData(50)]
    [InlineData(200)]
    public void Clamped_where_it_leaves_the_pulleys_is_pinned_at_the_tangent_points_to_second_order(double xi)
        => Assert.Equal(TensionedBeam.Ratio(1, xi, 0), TensionedBeam.Ratio(1, xi + 2, 2) * xi / (xi + 2), 30 / (xi * xi * xi));

    [Fact]
    public void Numbers_out_of_range_are_refused()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => TensionedBeam.Ratio(0, 50, 2));
        Assert.Throws<ArgumentOutOfRangeException>(() => TensionedBeam.Ratio(1, 0, 2));
        Assert.Throws<ArgumentOutOfRangeException>(() => TensionedBeam.Ratio(1, double.NaN, 2));
        Assert.Throws<ArgumentOutOfRangeException>(() => TensionedBeam.Ratio(1, 50, 3));
        Assert.Throws<ArgumentOutOfRangeException>(() => TensionedBeam.FrequencyHz(1, 0, 0, 1, 1, 0));
        Assert.Throws<ArgumentOutOfRangeException>(() => TensionedBeam.FrequencyHz(1, 10, -1, 1, 1, 0));
        Assert.Throws<ArgumentOutOfRangeException>(() => TensionedBeam.FrequencyHz(1, 10, 0, 0, 1, 0));
        Assert.Throws<ArgumentOutOfRangeException>(() => TensionedBeam.FrequencyHz(1, 10, 0, 1, -1, 0));
    }
}
