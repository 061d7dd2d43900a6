using System;
using System.Globalization;

namespace Waywright;

/// <summary>Reads a temperature with its unit: <c>20 °C</c>, <c>20 degC</c>, <c>68 °F</c>, <c>293.15 K</c>. A bare number is none: 20 may be meant in any of them.</summary>
internal static class TemperatureText
{
    public const string Expected = "a temperature with its unit, such as 20 °C (°C, degC, °F, degF or K)";

    /// <summary>Degrees Celsius, or the problem.</summary>
    public static (double Celsius, InputProblem? Problem) Read(string text, string name, double lowC, double highC)
    {
        ArgumentNullException.ThrowIfNull(text);
        var trimmed = text.AsSpan().Trim();
        var taken = Number.ReadPrefix(trimmed, out var value, out _);
        double? celsius = taken == 0 ? null : trimmed[taken..].Trim() switch
        {
            "°C" or "degC" or "℃" => value,
            "K" => value - 273.15,
            "°F" or "degF" or "℉" => (value - 32) * 5 / 9,
            _ => null,
        };
        if (celsius is not { } c)
            return (0, new InputProblem(name, null, null, taken > 0 && taken == trimmed.Length ? $"'{trimmed}' without a unit" : $"'{trimmed}'", Expected));
        return c >= lowC && c <= highC ? (c, null) : (0, new InputProblem(name, null, null, $"'{trimmed}'", string.Create(CultureInfo.InvariantCulture, $"{lowC} °C to {highC} °C")));
    }
}
