using System.Globalization;
using CsCheck;

namespace Waywright.Tests;

public class NumberTests
{
    [Theory]
    [InlineData("0", 0)]
    [InlineData("-0.5", -0.5)]
    [InlineData("+12", 12)]
    [InlineData(" 12.5 ", 12.5)]
    [InlineData("1,5", 1.5)]
    [InlineData("1,500", 1.5)]
    [InlineData("1e3", 1000)]
    [InlineData("1.5E-3", 0.0015)]
    [InlineData(".5", 0.5)]
    [InlineData("5.", 5)]
    [InlineData("0.1", 0.1)]
    [InlineData("123456789012345678901234567890", 1.2345678901234568e29)]
    [InlineData("0.000000000000000000000000000001", 1e-30)]
    public void A_number_is_sign_digits_one_mark_exponent(string text, double expected)
    {
        Assert.True(Number.TryRead(text, out var value, out _));
        Assert.Equal(expected, value);
    }

    [Theory]
    [InlineData("")]
    [InlineData("   ")]
    [InlineData("-")]
    [InlineData(".")]
    [InlineData("abc")]
    [InlineData("12a")]
    [InlineData("1.2.3")]
    [InlineData("1.234,5")]
    [InlineData("1,234.5")]
    [InlineData("1 000")]
    [InlineData("1'000")]
    [InlineData("NaN")]
    [InlineData("Infinity")]
    [InlineData("-Infinity")]
    [InlineData("1e999")]
    [InlineData("1e")]
    [InlineData("0x10")]
    [InlineData("1d")]
    [InlineData("٣")]
    [InlineData("--1")]
    public void Anything_else_is_no_number(string text)
    {
        Assert.False(Number.TryRead(text, out var value, out _));
        Assert.Equal(0, value);
    }

    [Fact]
    public void Every_double_written_in_full_is_read_to_the_same_bits()
        => Gen.Double.Where(double.IsFinite).Sample(d =>
            Number.TryRead(d.ToString("R", CultureInfo.InvariantCulture), out var value, out _) && BitConverter.DoubleToInt64Bits(value) == BitConverter.DoubleToInt64Bits(d));

    [Fact]
    public void Short_decimals_are_read_as_the_runtime_reads_them()
        => Gen.Select(Gen.Int[-2_000_000_000, 2_000_000_000], Gen.Int[0, 15]).Sample((digits, decimals) =>
        {
            var text = ((decimal)digits / (decimal)Math.Pow(10, decimals)).ToString(CultureInfo.InvariantCulture);
            return Number.TryRead(text, out var value, out _) && value.Equals(double.Parse(text, CultureInfo.InvariantCulture));
        });
}
