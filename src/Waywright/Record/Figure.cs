using System;

namespace Waywright;

/// <summary>
/// One figure that an analysis found: a number with its unit and uncertainty, or a text (a grade, an order, a place).
/// Figures are what a rerun is compared by, so each has an id that stays the same from run to run.
/// </summary>
/// <remarks>Every number is finite; what has no value is null, never a special number.</remarks>
public sealed record Figure
{
    /// <summary>Makes a figure of a number, or of a text.</summary>
    /// <param name="id">Unique in a build, words parted by <c>/</c>, such as <c>rails/R03/side-strt</c>.</param>
    /// <param name="name">What a reader calls it.</param>
    /// <param name="value">The number; null when the figure is a text.</param>
    /// <param name="text">The text; null when the figure is a number.</param>
    /// <param name="unit">UCUM code (case-sensitive), such as <c>um</c>, <c>N</c>, <c>g/m</c>; <c>1</c> for none.</param>
    /// <param name="standardUncertainty">Standard uncertainty in <paramref name="unit"/>, 0 or more (JCGM 100:2008, 2.3.1).</param>
    /// <param name="degreesOfFreedom">Degrees of freedom of that uncertainty, above 0; null when they are infinite or not stated.</param>
    /// <param name="coverageFactor">k in U = k u, above 0 (JCGM 100:2008, 2.3.6).</param>
    /// <param name="low">Lower end of the interval, if the figure has one of its own.</param>
    /// <param name="high">Upper end; with <paramref name="low"/> or not at all.</param>
    /// <param name="method">How it was found, in a few words.</param>
    /// <param name="relativeTolerance">A rerun may differ by this share of the value.</param>
    /// <param name="absoluteTolerance">A rerun may differ by this much, in <paramref name="unit"/>.</param>
    /// <exception cref="ArgumentException">
    /// An id that is empty or has blanks or control characters; an empty name; neither or both of value and text; a number that is not finite or out of range;
    /// one end of an interval without the other, or ends in the wrong order; a unit that is not UCUM.
    /// </exception>
    public Figure(
        string id,
        string name,
        double? value,
        string? text,
        string unit,
        double? standardUncertainty = null,
        double? degreesOfFreedom = null,
        double? coverageFactor = null,
        double? low = null,
        double? high = null,
        string method = "",
        double relativeTolerance = 0,
        double absoluteTolerance = 0)
    {
        Id = RecordText.Id(id, nameof(id));
        Name = RecordText.Filled(name, nameof(name));
        if (value is null == text is null)
            throw new ArgumentException($"Figure '{id}' needs a number or a text, and not both.", nameof(value));
        if (low is null != high is null || low > high)
            throw new ArgumentException($"Figure '{id}' needs both ends of its interval, the lower first.", nameof(low));
        if (!UcumUnit.IsValid(unit))
            throw new ArgumentException($"Figure '{id}' has the unit '{unit}', which is not a UCUM code.", nameof(unit));
        Value = RecordNumber.Finite(value, id, nameof(value));
        Text = text;
        Unit = unit;
        StandardUncertainty = RecordNumber.AtLeastZero(standardUncertainty, id, nameof(standardUncertainty));
        DegreesOfFreedom = RecordNumber.Positive(degreesOfFreedom, id, nameof(degreesOfFreedom));
        CoverageFactor = RecordNumber.Positive(coverageFactor, id, nameof(coverageFactor));
        Low = RecordNumber.Finite(low, id, nameof(low));
        High = RecordNumber.Finite(high, id, nameof(high));
        Method = method ?? throw new ArgumentNullException(nameof(method));
        RelativeTolerance = RecordNumber.AtLeastZero(relativeTolerance, id, nameof(relativeTolerance))!.Value;
        AbsoluteTolerance = RecordNumber.AtLeastZero(absoluteTolerance, id, nameof(absoluteTolerance))!.Value;
    }

    /// <summary>Unique in a build and equal from run to run.</summary>
    public string Id { get; }

    /// <summary>What a reader calls it.</summary>
    public string Name { get; }

    /// <summary>The number, in <see cref="Unit"/>; null when the figure is a text.</summary>
    public double? Value { get; }

    /// <summary>The text; null when the figure is a number.</summary>
    public string? Text { get; }

    /// <summary>UCUM code; <c>1</c> for none.</summary>
    public string Unit { get; }

    /// <summary>The unit as a reader writes it: <c>µm</c> for <c>um</c>, nothing for <c>1</c>.</summary>
    public string UnitSymbol => UcumUnit.Symbol(Unit);

    /// <summary>Standard uncertainty, in <see cref="Unit"/>.</summary>
    public double? StandardUncertainty { get; }

    /// <summary>Degrees of freedom of <see cref="StandardUncertainty"/>; null when infinite or not stated.</summary>
    public double? DegreesOfFreedom { get; }

    /// <summary>k in U = k u.</summary>
    public double? CoverageFactor { get; }

    /// <summary>U = k u, in <see cref="Unit"/>; null without both.</summary>
    public double? ExpandedUncertainty => CoverageFactor * StandardUncertainty;

    /// <summary>Lower end of the interval, in <see cref="Unit"/>.</summary>
    public double? Low { get; }

    /// <summary>Upper end of the interval, in <see cref="Unit"/>.</summary>
    public double? High { get; }

    /// <summary>How it was found, in a few words.</summary>
    public string Method { get; }

    /// <summary>A rerun may differ by this share of the value.</summary>
    public double RelativeTolerance { get; }

    /// <summary>A rerun may differ by this much, in <see cref="Unit"/>.</summary>
    public double AbsoluteTolerance { get; }
}
