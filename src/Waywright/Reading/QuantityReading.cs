using System;

namespace Waywright;

/// <summary>Which values a caller takes.</summary>
internal enum QuantityRange
{
    Any,
    Positive,
}

/// <summary>What is wrong in a quantity's text: the stretch of it, and what should stand there.</summary>
internal readonly record struct QuantityFault(string Found, string Expected);

/// <summary>A value with unit as somebody gave it, its standard uncertainty in the same unit, and in words how that was taken.</summary>
internal sealed record QuantityReading(double Value, Unit Unit, double StandardUncertainty, string TakenAs)
{
    public double SiValue => Unit.ToSi(Value);

    public double SiStandardUncertainty => Unit.ToSi(StandardUncertainty);

    public static QuantityReading Exact(double value, Unit unit)
        => new(value, unit, 0, $"{Shown(value, unit)}, taken as exact: no uncertainty was given");

    /// <summary>Limits +/- a: any value between them is equally likely, u = a / sqrt 3 (JCGM 100:2008, 4.3.7).</summary>
    public static QuantityReading Limits(double value, double limit, Unit unit)
    {
        var u = limit / Math.Sqrt(3);
        return new(value, unit, u, $"{Shown(value, unit)} +/- {Shown(limit, unit)}, taken as limits (rectangular): u = {Shown(limit, unit)} / sqrt(3) = {NumberText.Significant(u, 2)} {unit}");
    }

    public static QuantityReading Standard(double value, double u, Unit unit)
        => new(value, unit, u, $"{Shown(value, unit)}, taken with the standard uncertainty u = {Shown(u, unit)}");

    /// <summary>Expanded uncertainty U = k u (JCGM 100:2008, 4.3.3).</summary>
    public static QuantityReading Expanded(double value, double expanded, double k, Unit unit)
    {
        var u = expanded / k;
        return new(value, unit, u, $"{Shown(value, unit)}, taken with the expanded uncertainty U = {Shown(expanded, unit)} for k = {NumberText.Plain(k)}: u = {NumberText.Significant(u, 2)} {unit}");
    }

    private static string Shown(double value, Unit unit) => $"{NumberText.Plain(value)} {unit}";
}
