namespace Waywright.Tests;

public sealed class NormalQuantileTests
{
    // Wichura, Applied Statistics 37 (1988) 477-484, printed test values of PPND16 (0.25, 0.001, 1e-20; from memory); the others SciPy 1.10 (Debian), special.ndtri, on both
    // sides of the places where the approximation changes (0.075, 0.925, exp -25).
    [Theory]
    [InlineData(1e-300, -37.0470962993612)]
    [InlineData(1e-20, -9.262340089798408)]
    [InlineData(1e-12, -7.034483825301131)]
    [InlineData(1e-10, -6.361340902404056)]
    [InlineData(0.001, -3.090232306167813)]
    [InlineData(0.0749, -1.4402382675279635)]
    [InlineData(0.0751, -1.4388253927525403)]
    [InlineData(0.25, -0.6744897501960817)]
    [InlineData(0.4, -0.2533471031357997)]
    [InlineData(0.6, 0.2533471031357997)]
    [InlineData(0.9249, 1.4388253927525403)]
    [InlineData(0.9251, 1.4402382675279635)]
    [InlineData(0.999, 3.090232306167813)]
    [InlineData(0.9999999999999999, 8.209536151601387)]
    public void The_quantile_agrees_with_another_library_to_fifteen_digits(double p, double expected)
        => Assert.Equal(expected, NormalQuantile.Of(p), Math.Abs(expected) * 1e-15);

    [Fact]
    public void The_middle_is_zero() => Assert.Equal(0, NormalQuantile.Of(0.5));

    [Theory]
    [InlineData(1)]
    [InlineData(7)]
    [InlineData(8)]
    [InlineData(500)]
    [InlineData(512)]
    public void Many_at_a_time_are_the_same_bits_as_one_by_one(int count)
    {
        var p = Enumerable.Range(0, count).Select(i => (i + 0.5) / count).Append(1e-15).Append(1 - 1e-15).TakeLast(count).ToArray();
        var z = (double[])p.Clone();
        NormalQuantile.Replace(z);
        Assert.Equal(p.Select(NormalQuantile.Of).Select(BitConverter.DoubleToInt64Bits), z.Select(BitConverter.DoubleToInt64Bits));
    }

    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    [InlineData(-0.1)]
    [InlineData(double.NaN)]
    public void What_is_no_probability_is_refused(double p) => Assert.Throws<ArgumentOutOfRangeException>(() => NormalQuantile.Of(p));
}
