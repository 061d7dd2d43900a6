using System.Globalization;
using System.Text;

namespace Waywright.Publishing;

/// <summary>A parameter of a notebook: what its parameters cell declares, or what a run sets it to.</summary>
/// <param name="Name">The variable's name.</param>
/// <param name="Type"><c>string</c>, <c>double</c>, <c>int</c> or <c>bool</c>.</param>
/// <param name="Value">The value as text: numbers in invariant form, <c>true</c> or <c>false</c>.</param>
/// <param name="Note">The comment behind the declaration; empty if none.</param>
/// <param name="IsSet">Set for this run.</param>
internal sealed record Parameter(string Name, string Type, string Value, string Note, bool IsSet)
{
    /// <summary>The parameter with another value, or what would be one.</summary>
    public (Parameter? Set, string Expected) With(string text) => Type switch
    {
        "string" => (this with { Value = text, IsSet = true }, ""),
        "bool" when text is "true" or "false" => (this with { Value = text, IsSet = true }, ""),
        "int" when int.TryParse(text, NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out var number)
            => (this with { Value = number.ToString(CultureInfo.InvariantCulture), IsSet = true }, ""),
        "double" when TryDouble(text, out var number) => (this with { Value = number, IsSet = true }, ""),
        "bool" => (null, "true or false"),
        "int" => (null, "a whole number such as 12"),
        _ => (null, "a number such as 12.5"),
    };

    /// <summary>The C# statement that gives the variable this value. An assignment: the cell above declares it.</summary>
    public string ToAssignment() => $"{Name} = {(Type == "string" ? Quoted(Value) : Value)};";

    /// <summary>A double as C# and we write it, or not one.</summary>
    public static bool TryDouble(string text, out string value)
    {
        const NumberStyles plain = NumberStyles.AllowLeadingSign | NumberStyles.AllowDecimalPoint | NumberStyles.AllowExponent;
        var ok = double.TryParse(text, plain, CultureInfo.InvariantCulture, out var number) && double.IsFinite(number);
        value = number.ToString("R", CultureInfo.InvariantCulture);
        return ok;
    }

    // Everything that could end the literal or be taken for a line end is written as its code.
    private static string Quoted(string text)
    {
        var quoted = new StringBuilder("\"");
        foreach (var c in text)
        {
            _ = c switch
            {
                '"' or '\\' => quoted.Append('\\').Append(c),
                _ when char.IsControl(c) || c is '\u2028' or '\u2029' => quoted.Append(CultureInfo.InvariantCulture, $"\\u{(int)c:x4}"),
                _ => quoted.Append(c),
            };
        }

        return quoted.Append('"').ToString();
    }
}
