using System.CommandLine;
using System.Globalization;

namespace Waywright.Cli;

/// <summary>Options that take a bare number, and say so when they are given something else.</summary>
internal static class NumberOption
{
    public static Option<int?> Whole(string name, string description) => new(name)
    {
        Description = description,
        CustomParser = result =>
        {
            var text = result.Tokens[0].Value;
            if (int.TryParse(text, NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out var count))
                return count;
            result.AddError($"{name}: found '{text}', expected a whole number");
            return null;
        },
    };

    /// <param name="name">Of the option.</param>
    /// <param name="description">What the number is.</param>
    /// <param name="usual">Where none is given.</param>
    public static Option<double> AboveZero(string name, string description, double usual) => new(name)
    {
        Description = description,
        DefaultValueFactory = _ => usual,
        CustomParser = result =>
        {
            var text = result.Tokens[0].Value;
            if (double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out var number) && number is > 0 and < 1e5)
                return number;
            result.AddError($"{name}: found '{text}', expected a number above 0 and below 100000");
            return usual;
        },
    };
}
