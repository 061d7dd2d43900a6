using System.Runtime.InteropServices;
using System.Security.Cryptography;

namespace Waywright.Tests;

public sealed class RandomDrawsTests
{
    // An independent program in Python, from the formulas of Salmon et al. and the addresses stated in RandomDraws; Gaussian by SciPy 1.10, special.ndtri.
    [Theory]
    [InlineData(1UL, 0u, 0L, 0.8946847163350925, 1.251833426235645)]
    [InlineData(1UL, 0u, 1L, 0.7112680765766944, 0.5570930630842974)]
    [InlineData(1UL, 0u, 8L, 0.6632735729794398, 0.42141392306237746)]
    [InlineData(20260101UL, 3u, 1001L, 0.9133163833052379, 1.3614635864238591)]
    [InlineData(0xFEDCBA9876543210UL, 7u, 8589934597L, 0.23497521129247623, -0.7225597200818418)]
    public void A_draw_is_found_by_its_seed_input_and_trial(ulong seed, uint input, long trial, double uniform, double gaussian)
    {
        var draws = new RandomDraws(seed);
        Span<double> two = stackalloc double[2];
        draws.Uniform(input, trial - (trial % 2), two);
        Assert.Equal(uniform, two[(int)(trial % 2)]);
        draws.Gaussian(input, trial - (trial % 2), two);
        Assert.Equal(gaussian, two[(int)(trial % 2)], 2e-16 * 4);
    }

    [Fact]
    public void Streams_and_parts_are_further_numbers()
    {
        Span<double> two = stackalloc double[2];
        new RandomDraws(1, stream: 2).Uniform(0, 4, two, part: 1);
        Assert.Equal(0.4855801893053956, two[0]); // The same Python program.
    }

    // Recorded here with 512-bit vectors; the same with 256-bit ones and with none, which is what the test is for.
    [Fact]
    public void Draws_are_the_same_bits_on_every_machine()
    {
        var values = new double[512];
        var bits = new byte[8 * 512 * 64];
        for (var batch = 0; batch < 64; batch++)
        {
            new RandomDraws(20260101).Gaussian((uint)(batch % 3), batch * 512, values);
            MemoryMarshal.AsBytes(values.AsSpan()).CopyTo(bits.AsSpan(batch * 8 * 512));
        }

        Assert.Equal("6ECF2D199140D94EE91CEE746671F40E", Convert.ToHexString(SHA256.HashData(bits))[..32]);
    }

    [Fact]
    public void Where_a_run_begins_and_how_long_it_is_does_not_matter()
    {
        var draws = new RandomDraws(7);
        var whole = new double[512];
        draws.Gaussian(2, 1000, whole);
        foreach (var (start, length) in new[] { (0, 1), (2, 3), (6, 8), (100, 412), (510, 2) })
        {
            var part = new double[length];
            draws.Gaussian(2, 1000 + start, part);
            Assert.Equal(whole[start..(start + length)], part);
        }
    }

    [Fact]
    public void Uniform_draws_fill_all_places_alike_and_know_nothing_of_each_other()
    {
        const int count = 1 << 18;
        const int places = 1 << 10;
        var draws = new RandomDraws(20260101);
        var columns = new double[3][];
        for (uint input = 0; input < 3; input++)
        {
            columns[input] = new double[count];
            for (var from = 0; from < count; from += 512)
                draws.Uniform(input, from, columns[input].AsSpan(from, 512));
        }

        foreach (var column in columns)
        {
            var counts = new int[places];
            foreach (var u in column)
                counts[(int)(u * places)]++;
            var chiSquared = counts.Sum(c => Math.Pow(c - (count / places), 2) / (count / places));
            // Mean 1023, deviation sqrt(2 * 1023) = 45.2.
            Assert.InRange(chiSquared, 1023 - (4 * 45.2), 1023 + (4 * 45.2));
            Assert.InRange(Correlation(column[1..], column[..^1]), -4 / Math.Sqrt(count), 4 / Math.Sqrt(count));
        }

        Assert.InRange(Correlation(columns[0], columns[1]), -4 / Math.Sqrt(count), 4 / Math.Sqrt(count));
        Assert.InRange(Correlation(columns[1], columns[2]), -4 / Math.Sqrt(count), 4 / Math.Sqrt(count));
    }

    [Fact]
    public void What_has_no_address_is_refused()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => new RandomDraws(1).Uniform(0, 1, new double[2]));
        Assert.Throws<ArgumentOutOfRangeException>(() => new RandomDraws(1).Uniform(0, -2, new double[2]));
        Assert.Throws<ArgumentOutOfRangeException>(() => new RandomDraws(1).Uniform(0, 0, new double[513]));
    }

    private static double Correlation(double[] a, double[] b)
        => a.Zip(b, (x, y) => (x - 0.5) * (y - 0.5)).Average() * 12;
}
