using System;
using System.Globalization;
using System.Numerics;
using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;

namespace Waywright;

/// <summary>Which sign stands before the decimals.</summary>
internal enum DecimalMark
{
    /// <summary>The number has no decimals, so it says nothing.</summary>
    None,

    /// <summary><c>1.5</c></summary>
    Point,

    /// <summary><c>1,5</c></summary>
    Comma,
}

/// <summary>
/// Text to number, strictly: a sign, digits, one decimal mark, an exponent; finite. No group separators, so <c>1,500</c> is one and a half,
/// and the mark that was met is handed back for the file to be held to.
/// </summary>
internal static class Number
{
    // 10^0 .. 10^22 are exact doubles: with a mantissa below 2^53 one division or product is correctly rounded (Clinger 1990).
    private static readonly double[] Powers = [1e0, 1e1, 1e2, 1e3, 1e4, 1e5, 1e6, 1e7, 1e8, 1e9, 1e10, 1e11, 1e12, 1e13, 1e14, 1e15, 1e16, 1e17, 1e18, 1e19, 1e20, 1e21, 1e22];

    public const string Expected = "a number such as 12.5";

    /// <summary>Reads the whole text as one number.</summary>
    /// <param name="text">Blanks around the number are allowed.</param>
    /// <param name="value">The number; 0 when false is returned.</param>
    /// <param name="mark">The decimal mark that was met.</param>
    public static bool TryRead(ReadOnlySpan<char> text, out double value, out DecimalMark mark)
    {
        text = text.Trim();
        var read = ReadPrefix(text, out value, out mark);
        if (read > 0 && read == text.Length)
            return true;
        value = 0;
        return false;
    }

    /// <summary>Reads a number from the start of the text; returns how many characters it took, 0 for none.</summary>
    public static int ReadPrefix(ReadOnlySpan<char> text, out double value, out DecimalMark mark)
    {
        value = 0;
        mark = DecimalMark.None;
        var at = 0;
        var negative = at < text.Length && text[at] == '-';
        if (at < text.Length && text[at] is ('-' or '+'))
            at++;
        var digits = 0;
        var decimals = 0;
        long mantissa = 0;
        for (; at < text.Length; at++)
        {
            var c = text[at];
            if (char.IsAsciiDigit(c))
            {
                if (digits < 18)
                    mantissa = (mantissa * 10) + (c - '0');
                digits++;
                decimals += mark == DecimalMark.None ? 0 : 1;
            }
            else if (c is '.' or ',' && mark == DecimalMark.None)
            {
                mark = c == '.' ? DecimalMark.Point : DecimalMark.Comma;
            }
            else
            {
                break;
            }
        }

        if (digits == 0)
            return 0;
        var exponent = ReadExponent(text, ref at);
        // A second mark or a digit group would continue here: '1.234,5' is no number.
        if (at < text.Length && text[at] is '.' or ',')
            return 0;
        if (exponent is 0 && digits <= 18 && mantissa < 1L << 53 && decimals < Powers.Length)
            value = (negative ? -1.0 : 1.0) * mantissa / Powers[decimals];
        else if (!TryReadSlowly(text[..at], mark, out value))
            return 0;
        return at;
    }

    /// <summary>
    /// The short way for what nearly every cell holds, <c>[-]digits[mark digits]</c> of at most 15 digits: the same double as by <see cref="ReadPrefix"/>.
    /// Returns where the number ends, or -1 for a number of any other form.
    /// </summary>
    /// <param name="text">A row.</param>
    /// <param name="at">Where the number starts.</param>
    /// <param name="mark">The decimal mark; a digit when none is known yet, which is never met after the digits.</param>
    /// <param name="value">The number.</param>
    public static int ReadPlain(ReadOnlySpan<char> text, int at, char mark, out double value)
    {
        unchecked
        {
            if (at > text.Length - 9)
                return ReadPlainByDigit(text, at, mark, out value);
            // Eight characters at once: bit i of others says that character i is no digit. A minus counts as a leading zero.
            var characters = Vector128.Create(MemoryMarshal.Cast<char, ushort>(text.Slice(at, 8))) - Vector128.Create((ushort)'0');
            var others = Vector128.GreaterThan(characters, Vector128.Create((ushort)9)).ExtractMostSignificantBits();
            var negative = others & 1;
            if (negative != 0 && text[at] != '-')
                return ReadPlainByDigit(text, at, mark, out value);
            others = (others & 0xFE) | 0x100;
            var digits = Vector128.Narrow(characters, characters).AsUInt64().ToScalar() & ~(0xFFUL * negative);
            var count = BitOperations.TrailingZeroCount(others);
            var length = count;
            var decimals = 0;
            if (text[at + count] == mark && count < 8)
            {
                length = BitOperations.TrailingZeroCount(others & (others - 1));
                decimals = length - count - 1;
                var below = (1UL << (8 * count)) - 1;
                digits = (digits & below) | ((digits >> 8) & ~below);
                count += decimals;
            }

            if (count == (int)negative || length >= 8)
                return ReadPlainByDigit(text, at, mark, out value);
            var size = EightDigits(digits << (64 - (8 * count))) / Powers[decimals];
            value = BitConverter.UInt64BitsToDouble(BitConverter.DoubleToUInt64Bits(size) ^ ((ulong)negative << 63));
            return at + length;
        }
    }

    // Neighbouring digits become pairs, pairs become fours, fours become eight; the first digit is in the lowest byte.
    private static double EightDigits(ulong digits)
    {
        unchecked
        {
            digits = (digits * ((10 << 8) + 1)) >> 8;
            digits = ((digits & 0x00FF00FF00FF00FF) * ((100UL << 16) + 1)) >> 16;
            digits = ((digits & 0x0000FFFF0000FFFF) * ((10000UL << 32) + 1)) >> 32;
            return (long)digits;
        }
    }

    private static int ReadPlainByDigit(ReadOnlySpan<char> text, int at, char mark, out double value)
    {
        unchecked
        {
            value = 0;
            var negative = (uint)at < (uint)text.Length && text[at] == '-';
            at += negative ? 1 : 0;
            var start = at;
            var mantissa = 0L;
            uint digit;
            for (; (uint)at < (uint)text.Length && (digit = text[at] - (uint)'0') <= 9; at++)
                mantissa = (mantissa * 10) + digit;
            var digits = at - start;
            var decimals = 0;
            if ((uint)at < (uint)text.Length && text[at] == mark)
            {
                start = ++at;
                for (; (uint)at < (uint)text.Length && (digit = text[at] - (uint)'0') <= 9; at++)
                    mantissa = (mantissa * 10) + digit;
                decimals = at - start;
            }

            if ((uint)(digits + decimals - 1) >= 15)
                return -1;
            var size = mantissa / Powers[decimals];
            value = negative ? -size : size;
            return at;
        }
    }

    private static int ReadExponent(ReadOnlySpan<char> text, ref int at)
    {
        if (at >= text.Length || text[at] is not ('e' or 'E'))
            return 0;
        var end = at + 1;
        if (end < text.Length && text[end] is '-' or '+')
            end++;
        var first = end;
        while (end < text.Length && char.IsAsciiDigit(text[end]))
            end++;
        if (end == first)
            return 0;
        at = end;
        return 1;
    }

    private static bool TryReadSlowly(ReadOnlySpan<char> text, DecimalMark mark, out double value)
    {
        const NumberStyles style = NumberStyles.AllowLeadingSign | NumberStyles.AllowDecimalPoint | NumberStyles.AllowExponent;
        if (mark == DecimalMark.Comma)
            text = text.ToString().Replace(',', '.');
        if (double.TryParse(text, style, CultureInfo.InvariantCulture, out value) && double.IsFinite(value))
            return true;
        value = 0;
        return false;
    }
}
