using System;

namespace Waywright;

/// <summary>Cents: 1200 of them are an octave, 1 is 0.0578 % of a frequency.</summary>
internal static class PluckCents
{
    private static readonly double PerNaturalUnit = 1200 / Math.Log(2);

    /// <summary>How far a frequency lies above another.</summary>
    public static double Between(double from, double to) => PerNaturalUnit * Math.Log(to / from);

    /// <summary>A small difference of a frequency.</summary>
    public static double Of(double difference, double frequency) => PerNaturalUnit * difference / frequency;

    /// <summary>A frequency this many cents higher.</summary>
    public static double Raised(double frequency, double cents) => frequency * Math.Exp(cents / PerNaturalUnit);

    /// <summary>So many cents as a difference of a frequency.</summary>
    public static double Hertz(double cents, double frequency) => cents / PerNaturalUnit * frequency;
}
