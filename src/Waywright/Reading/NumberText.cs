using System;
using System.Globalization;

namespace Waywright;

/// <summary>Number to text, the way back of <see cref="Number"/>: a decimal point, no group separators, no negative zero, in every culture.</summary>
internal static class NumberText
{
    /// <summary>Up to ten significant digits, no trailing zeros: a number that somebody wrote, given back.</summary>
    public static string Plain(double value) => (value + 0.0).ToString("G10", CultureInfo.InvariantCulture);

    /// <summary>Rounded to a decimal place; negative places round to tens, hundreds and so on.</summary>
    public static string Rounded(double value, int decimals)
    {
        if (decimals < 0)
        {
            var step = Math.Pow(10, -decimals);
            return Positive((Math.Round(value / step) * step).ToString("F0", CultureInfo.InvariantCulture));
        }

        return Positive(value.ToString("F" + decimals.ToString(CultureInfo.InvariantCulture), CultureInfo.InvariantCulture));
    }

    /// <summary>Rounded to significant digits, zeros kept, never an exponent.</summary>
    public static string Significant(double value, int digits) => Rounded(value, Decimals(value, digits));

    /// <summary>The decimal place at which a number shows so many significant digits after rounding (0.0996 rounds to 0.10, not 0.100).</summary>
    public static int Decimals(double value, int digits)
    {
        if (value == 0)
            return 0;
        var size = Math.Abs(value);
        var decimals = digits - 1 - (int)Math.Floor(Math.Log10(size));
        return Math.Round(size * Math.Pow(10, decimals)) >= Math.Pow(10, digits) ? decimals - 1 : decimals;
    }

    private static string Positive(string text) => text.StartsWith('-') && text.AsSpan().IndexOfAnyInRange('1', '9') < 0 ? text[1..] : text;
}
