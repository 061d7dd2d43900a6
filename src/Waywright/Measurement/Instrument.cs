using System;
using System.Collections.Generic;
using System.Linq;

namespace Waywright;

/// <summary>How finely an instrument was read between its marks.</summary>
public enum ReadTo
{
    /// <summary>To the nearest mark; so too a digital display.</summary>
    Whole,

    /// <summary>To half a division.</summary>
    Half,

    /// <summary>To a tenth, by eye.</summary>
    Tenth,
}

/// <summary>
/// A measuring instrument as it was used: how finely it was read, what errors it may have, how it repeats; or, better than limits, how it was checked against known values.
/// It turns readings into uncertain values, and says of each part of their uncertainty what averages it out.
/// </summary>
/// <remarks>All numbers are in the instrument's own unit. Reading: u = max(s, q / sqrt 12), q the step read to, so that equal repeats are not zero uncertainty.</remarks>
public sealed record Instrument
{
    private Instrument(string name, string unit, double division, ReadTo readTo, InstrumentErrors errors)
    {
        (Name, Unit, Division, ReadTo) = (name, unit, division, readTo);
        (PermissibleError, Dial, Repeatability, RepeatabilityDegreesOfFreedom, Retrace, Check) = errors;
    }

    /// <summary>Its name; its errors are inputs under it, shared by all that is measured with it.</summary>
    public string Name { get; }

    /// <summary>Unit of all numbers here and of its readings, such as <c>um</c>, <c>mm</c> or <c>g</c>.</summary>
    public string Unit { get; }

    /// <summary>Value of one division of the scale, or of the last digit.</summary>
    public double Division { get; }

    /// <summary>How finely it was read.</summary>
    public ReadTo ReadTo { get; }

    /// <summary>Maximum permissible error, +/-; null where a dial's limits or a check stand for it, or nothing is known.</summary>
    public double? PermissibleError { get; }

    /// <summary>Limits of a dial indicator; null for others.</summary>
    public DialLimits? Dial { get; }

    /// <summary>Standard deviation s of repeated readings; 0 where not tried.</summary>
    public double Repeatability { get; }

    /// <summary>Number of repeats less 1; infinite where s was stated.</summary>
    public double RepeatabilityDegreesOfFreedom { get; }

    /// <summary>Difference between readings approached from the two sides, 0 or more; half of it enters as +/-.</summary>
    public double Retrace { get; }

    /// <summary>Check against known values; its line then corrects readings and replaces the permissible error.</summary>
    public CalibrationLine? Check { get; }

    /// <summary>Step q that readings are rounded to.</summary>
    public double ReadingStep => ReadTo switch
    {
        ReadTo.Whole => Division,
        ReadTo.Half => Division / 2,
        _ => Division / 10,
    };

    /// <summary>Describes an instrument; everything that can't be is listed at once.</summary>
    /// <param name="name">Its name.</param>
    /// <param name="unit">Unit of the numbers.</param>
    /// <param name="division">Above 0.</param>
    /// <param name="readTo"><c>whole</c>, <c>half</c> or <c>tenth</c>.</param>
    /// <param name="permissibleError">Maximum permissible error, +/-, 0 or more.</param>
    /// <param name="dial">Limits of a dial indicator instead; the unit is then <c>um</c>.</param>
    /// <param name="repeatability">Standard deviation of repeats, 0 or more; for a dial without it, its limit as a full width.</param>
    /// <param name="repeatabilityDegreesOfFreedom">1 or more.</param>
    /// <param name="retrace">0 or more; for a dial without it, its limit.</param>
    /// <param name="check">Line from a check against known values.</param>
    /// <param name="source">Where this stands, for messages; the name if left out.</param>
    /// <exception cref="InputException">A division that is not above 0, a negative or infinite limit, an unknown way of reading, an empty name or unit, a dial not in um, a dial and a permissible error, a check without a proven slope.</exception>
    public static Instrument Create(
        string name,
        string unit,
        double division,
        string readTo,
        double? permissibleError = null,
        DialLimits? dial = null,
        double? repeatability = null,
        double repeatabilityDegreesOfFreedom = double.PositiveInfinity,
        double? retrace = null,
        CalibrationLine? check = null,
        string? source = null)
    {
        var problems = new InstrumentProblems(source ?? (string.IsNullOrWhiteSpace(name) ? "instrument" : name));
        problems.Text("name", name, "a name");
        problems.Text("unit", unit, "a unit such as um");
        problems.Positive("division", division);
        var reading = problems.Reading(readTo);
        problems.NotNegative("permissible error", permissibleError);
        problems.NotNegative("repeatability", repeatability);
        problems.NotNegative("retrace", retrace);
        problems.DegreesOfFreedom(repeatabilityDegreesOfFreedom);
        problems.Dial(dial, unit, permissibleError);
        problems.Check(check);
        problems.ThrowIfAny();
        // A largest difference is taken as the full width of a rectangle (common practice, no source).
        var errors = new InstrumentErrors(
            permissibleError,
            dial,
            repeatability ?? (dial?.RepeatabilityUm / Math.Sqrt(12)) ?? 0,
            repeatabilityDegreesOfFreedom,
            retrace ?? dial?.RetraceUm ?? 0,
            check);
        return new Instrument(name, unit, division, reading, errors);
    }

    /// <summary>What the instrument adds to a reading, largest first.</summary>
    /// <param name="spread">Largest less smallest of the readings that are compared: a dial read over a small part of its travel shows less of its error. Infinite if unknown.</param>
    /// <exception cref="ArgumentOutOfRangeException">The spread is negative or no number.</exception>
    public IReadOnlyList<UncertaintyComponent> Components(double spread = double.PositiveInfinity)
    {
        if (spread is not >= 0)
            throw new ArgumentOutOfRangeException(nameof(spread), spread, "A spread of readings is 0 or more.");
        UncertaintyComponent?[] all = [Reading, Error(spread), Approach];
        return FixedList<UncertaintyComponent>.Copy(all.OfType<UncertaintyComponent>().OrderByDescending(c => c.StandardUncertainty));
    }

    /// <summary>
    /// A reading as an uncertain value, corrected if the instrument was checked. The reading's own scatter is an input of <paramref name="what"/>; the instrument's
    /// error is an input of the instrument, so it doesn't average out between readings, and cancels where they are subtracted.
    /// </summary>
    /// <param name="reading">As read.</param>
    /// <param name="what">What was measured: readings of one name are one reading.</param>
    /// <exception cref="ArgumentException">The name is empty.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The reading is not finite.</exception>
    public Uncertain Read(double reading, string what)
    {
        ArgumentException.ThrowIfNullOrWhiteSpace(what);
        var value = Uncertain.Input($"{what}: {Reading.Name}", reading, Reading.StandardUncertainty, Reading.DegreesOfFreedom);
        if (Approach is { } approach)
            value += Uncertain.Input($"{what}: {approach.Name}", 0, approach.StandardUncertainty);
        if (Check is not null)
            return Check.ValueOf(value);
        return Error(double.PositiveInfinity) is { } error ? value + Uncertain.Input($"{Name}: {error.Name}", 0, error.StandardUncertainty) : value;
    }

    private UncertaintyComponent Reading
    {
        get
        {
            var rounding = ReadingStep / Math.Sqrt(12);
            // Rounding below the scatter averages out with it; rounding above it gives the same reading again and again.
            return Repeatability >= rounding
                ? new("reading", Repeatability, RepeatabilityDegreesOfFreedom, AveragesOut.Repeating, "take more readings")
                : new("reading", rounding, double.PositiveInfinity, AveragesOut.Relaying, ReadTo == ReadTo.Tenth ? "use a finer instrument" : "read between the marks, or use a finer instrument");
        }
    }

    private UncertaintyComponent? Approach => Retrace > 0
        ? new("retrace", Retrace / 2 / Math.Sqrt(3), double.PositiveInfinity, AveragesOut.Nothing, "read on the way forward and on the way back, and average")
        : null;

    private UncertaintyComponent? Error(double spread)
    {
        if (Check is { } check)
        {
            var ends = new[] { check.LowestX, check.HighestX }.Select(x => check.ValueOf(check.ReadingOf(x).Value)).MaxBy(v => v.StandardUncertainty)!;
            return new("check against known values", ends.StandardUncertainty, ends.DegreesOfFreedom, AveragesOut.Nothing, "check it against more, or better known, values");
        }

        if (Dial is { } dial)
            return new("permissible error of the dial", dial.For(spread) / Math.Sqrt(3), double.PositiveInfinity, AveragesOut.Relaying, "set the stand to another height between passes, and keep the readings within a tenth of a turn");
        return PermissibleError is { } limit
            ? new("permissible error", limit / Math.Sqrt(3), double.PositiveInfinity, AveragesOut.Nothing, "check it against known values")
            : null;
    }
}
