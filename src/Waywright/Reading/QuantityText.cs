using System;

namespace Waywright;

/// <summary>
/// Reads a quantity: <c>180mm</c>, <c>180 +/- 0.5 mm</c> (limits), <c>180 mm u 0.2 mm</c> (standard), <c>180 mm U 0.4 mm k 2</c> (expanded).
/// The unit may stand once, at the end; an uncertainty may be in <c>%</c> of the value. What <see cref="Measured{TQuantity}"/> prints is read back.
/// </summary>
internal ref struct QuantityText
{
    // Beyond these a quantity of a workbench is a slip, and its powers would leave the doubles.
    private const double Largest = 1e15;
    private const double Smallest = 1e-15;

    private readonly ReadOnlySpan<char> _text;
    private readonly Dimension _dimension;
    private DecimalMark _mark;
    private int _at;
    private QuantityFault _fault;

    private QuantityText(ReadOnlySpan<char> text, Dimension dimension, DecimalMark mark)
    {
        _text = text.Trim();
        _dimension = dimension;
        _mark = mark;
    }

    private readonly string Kind => UnitTable.Name(_dimension);

    private readonly string Example => UnitTable.Example(_dimension);

    private readonly ReadOnlySpan<char> Rest => _text[_at..];

    /// <summary>Reads one quantity; false says what is wrong.</summary>
    /// <param name="text">The text.</param>
    /// <param name="dimension">What it must be.</param>
    /// <param name="range">Which values are taken.</param>
    /// <param name="mark">The decimal mark to hold it to; None takes either, and hands back which it met.</param>
    /// <param name="reading">What was read; null when false is returned.</param>
    /// <param name="fault">What is wrong when false is returned.</param>
    public static bool TryRead(ReadOnlySpan<char> text, Dimension dimension, QuantityRange range, ref DecimalMark mark, out QuantityReading? reading, out QuantityFault fault)
    {
        var parser = new QuantityText(text, dimension, mark);
        var read = parser.TryRead(out reading) && parser.IsWithin(range, reading!);
        if (!read)
            reading = null;
        mark = parser._mark;
        fault = parser._fault;
        return read;
    }

    private bool TryRead(out QuantityReading? reading)
    {
        reading = null;
        if (_text.IsEmpty || !(char.IsAsciiDigit(_text[0]) || _text[0] is '+' or '-' or '.' or ','))
            return Refuse(_text, $"{Kind} with its unit, such as {Example}");
        if (!TryNumber($"one finite number and a unit, such as {Example}", out var value) || !TryUnit(out var unit))
            return false;
        if (Rest.IsEmpty)
        {
            reading = unit is null ? null : QuantityReading.Exact(value, unit);
            return unit is not null || Refuse(_text, $"{Kind} with its unit, such as {Example}");
        }

        var way = TakeWay();
        if (way == '\0')
            return Refuse(Rest, $"nothing more or an uncertainty, such as {Example} +/- 5 % (limits), u 5 % (standard), U 10 % k 2 (expanded)");
        if (!TryUncertainty(value, ref unit, out var uncertainty))
            return false;
        if (way == 'U')
        {
            if (!TryCoverageFactor(out var k))
                return false;
            reading = QuantityReading.Expanded(value, uncertainty, k, unit!);
        }
        else
        {
            reading = way == 'u' ? QuantityReading.Standard(value, uncertainty, unit!) : QuantityReading.Limits(value, uncertainty, unit!);
        }

        return Rest.IsEmpty || Refuse(Rest, "nothing after the quantity");
    }

    private bool TryNumber(string expected, out double value)
    {
        var length = Number.ReadPrefix(Rest, out value, out var mark);
        if (length == 0)
            return Refuse(Rest, expected);
        if (mark != DecimalMark.None && _mark != DecimalMark.None && mark != _mark)
            return Refuse(Rest[..length], _mark == DecimalMark.Point ? "a decimal point, such as 12.5" : "a decimal comma as before it, such as 12,5");
        _mark = mark == DecimalMark.None ? _mark : mark;
        Skip(length);
        return true;
    }

    /// <summary>Takes a unit if one stands here: null for none, false for one that is not of this dimension.</summary>
    private bool TryUnit(out Unit? unit)
    {
        unit = null;
        var word = Word();
        if (word.IsEmpty || word is "u" or "U" or "k" or "%")
            return true;
        unit = UnitTable.Find(word);
        if (unit?.Dimension == _dimension)
        {
            Skip(word.Length);
            return true;
        }

        unit = null;
        return Refuse(word, $"{Kind}: {UnitTable.Symbols(_dimension)}");
    }

    /// <summary>Takes the sign or letter that says how an uncertainty is meant: +, u, U, or nothing.</summary>
    private char TakeWay()
    {
        foreach (var sign in (ReadOnlySpan<string>)["+/-", "\u00B1", "+-"])
        {
            if (Rest.StartsWith(sign))
            {
                Skip(sign.Length);
                return '+';
            }
        }

        var word = Word();
        if (word is not ("u" or "U"))
            return '\0';
        var way = word[0];
        Skip(1);
        return way;
    }

    private bool TryUncertainty(double value, ref Unit? unit, out double uncertainty)
    {
        var start = _at;
        if (!TryNumber("the uncertainty as a number, such as 0.5", out uncertainty))
            return false;
        var written = _text[start.._at].TrimEnd();
        if (uncertainty < 0)
            return Refuse(written, "an uncertainty of 0 or more");
        if (Word() is "%")
        {
            Skip(1);
            uncertainty *= Math.Abs(value) / 100;
            return unit is not null || Refuse(_text, $"the unit after the value, such as {Example} +/- 5 %");
        }

        if (!TryUnit(out var own))
            return false;
        if (own is null)
            return Refuse(written, unit is null ? $"{Kind} with its unit, such as {Example}" : $"the uncertainty with its unit, such as {written} {unit}");
        unit ??= own;
        if (own != unit)
            uncertainty = unit.FromSi(own.ToSi(uncertainty));
        return true;
    }

    private bool TryCoverageFactor(out double k)
    {
        k = 0;
        if (Word() is not "k")
            return Refuse(Rest, "k, the coverage factor of U, such as k 2");
        Skip(1);
        var start = _at;
        if (!TryNumber("the coverage factor as a number, such as k 2", out k))
            return false;
        if (k <= 0)
            return Refuse(_text[start.._at].TrimEnd(), "a coverage factor above 0, such as k 2");
        if (!Rest.StartsWith("("))
            return true;
        start = _at;
        Skip(1);
        // '(95 %)' is how results are printed; k already says all that is needed.
        if (!TryNumber("the coverage probability, such as (95 %)", out var percent))
            return false;
        if (percent is <= 0 or >= 100 || !Rest.StartsWith("%"))
            return Refuse(_text[start..], "the coverage probability between 0 and 100 %, such as (95 %)");
        Skip(1);
        if (!Rest.StartsWith(")"))
            return Refuse(Rest, "a closing bracket");
        Skip(1);
        return true;
    }

    private bool IsWithin(QuantityRange range, QuantityReading reading)
    {
        var unit = UnitTable.Si(_dimension);
        if (range == QuantityRange.Positive && reading.Value <= 0)
            return Refuse(_text, $"{Kind} above 0");
        if (IsWild(reading.SiValue))
            return Refuse(_text, $"{Kind} of a size between 1e-15 and 1e15 {unit}");
        return !IsWild(reading.SiStandardUncertainty) || Refuse(_text, $"an uncertainty of 0 or of a size between 1e-15 and 1e15 {unit}");
    }

    private static bool IsWild(double si) => si != 0 && Math.Abs(si) is not (>= Smallest and <= Largest);

    /// <summary>The word at the reading place: up to a blank or sign; u, U and k may stand right before their number.</summary>
    private readonly ReadOnlySpan<char> Word()
    {
        var rest = Rest;
        var length = 0;
        while (length < rest.Length && !char.IsWhiteSpace(rest[length]) && rest[length] is not ('+' or '\u00B1' or '(' or ')'))
            length++;
        return length > 1 && rest[0] is 'u' or 'U' or 'k' && (char.IsAsciiDigit(rest[1]) || rest[1] is '-' or '.') ? rest[..1] : rest[..length];
    }

    private void Skip(int count)
    {
        _at += count;
        while (_at < _text.Length && char.IsWhiteSpace(_text[_at]))
            _at++;
    }

    private bool Refuse(ReadOnlySpan<char> found, string expected)
    {
        _fault = new QuantityFault(ProblemList.Shown(found), expected);
        return false;
    }
}
