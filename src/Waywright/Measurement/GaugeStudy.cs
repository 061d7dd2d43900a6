using System;
using System.Collections.Generic;
using System.Linq;
using MathNet.Numerics.Distributions;

namespace Waywright;

/// <summary>A line of an analysis of variance.</summary>
/// <param name="Source">Where the scatter comes from.</param>
/// <param name="DegreesOfFreedom">Degrees of freedom.</param>
/// <param name="SumOfSquares">Sum of squares.</param>
/// <param name="MeanSquare">Sum of squares over degrees of freedom.</param>
public sealed record VarianceLine(string Source, int DegreesOfFreedom, double SumOfSquares, double MeanSquare);

/// <summary>
/// How much of the scatter of readings comes from the gauge, from who reads it (or from each new lay), and from the parts: two-way analysis of variance with
/// interaction, pooled into the error where it is not significant at 25 % (AIAG, Measurement Systems Analysis, 4th ed., III-B). Checked by its 10 x 3 x 3 example.
/// </summary>
public sealed record GaugeStudy
{
    private const double PoolingLevel = 0.25;

    private GaugeStudy(FixedList<VarianceLine> lines, double interaction, double error, double parts, double appraisers, double interactionProbability)
    {
        Lines = lines;
        InteractionProbability = interactionProbability;
        Repeatability = Math.Sqrt(error);
        Reproducibility = Math.Sqrt(appraisers + interaction);
        PartDeviation = Math.Sqrt(parts);
    }

    /// <summary>Parts, appraisers, their interaction, equipment (repeats), pooled error (the last two where pooled), total.</summary>
    public IReadOnlyList<VarianceLine> Lines { get; }

    /// <summary>Chance of so large an interaction if there is none; above 25 % it was pooled with the repeats.</summary>
    public double InteractionProbability { get; }

    /// <summary>Standard deviation of repeats by one appraiser on one part.</summary>
    public double Repeatability { get; }

    /// <summary>Standard deviation between appraisers, with their interaction with parts; 0 where none is seen.</summary>
    public double Reproducibility { get; }

    /// <summary>Standard deviation of repeatability and reproducibility together.</summary>
    public double Gauge => Math.Sqrt((Repeatability * Repeatability) + (Reproducibility * Reproducibility));

    /// <summary>Standard deviation between parts; 0 where none is seen.</summary>
    public double PartDeviation { get; }

    /// <summary>Standard deviation of a reading of any part by any appraiser.</summary>
    public double TotalDeviation => Math.Sqrt((Gauge * Gauge) + (PartDeviation * PartDeviation));

    /// <summary>Whole number of groups of parts that the gauge can tell apart, 1.41 part deviations per gauge deviation; null for a gauge without scatter.</summary>
    public int? DistinctCategories => Gauge > 0 ? (int)Math.Min(Math.Floor(1.41 * PartDeviation / Gauge), int.MaxValue) : null;

    /// <summary>Analyses a balanced study.</summary>
    /// <param name="readings">Part, appraiser (or lay) and reading; every pair the same number of times.</param>
    /// <exception cref="ArgumentException">Fewer than two parts, appraisers or readings of each pair, pairs read differently often, or a reading that is not finite.</exception>
    public static GaugeStudy Of(IReadOnlyList<(string Part, string Appraiser, double Value)> readings)
    {
        ArgumentNullException.ThrowIfNull(readings);
        if (readings.Any(r => !double.IsFinite(r.Value)))
            throw new ArgumentException("A reading is not a finite number.", nameof(readings));
        var parts = readings.Select(r => r.Part).Distinct().Count();
        var appraisers = readings.Select(r => r.Appraiser).Distinct().Count();
        var cells = readings.GroupBy(r => (r.Part, r.Appraiser)).Select(g => g.Count()).ToArray();
        if (parts < 2 || appraisers < 2 || cells.Length != parts * appraisers || cells.Distinct().Count() > 1 || cells[0] < 2)
            throw new ArgumentException($"{parts} parts and {appraisers} appraisers: at least two of each are needed, and every pair read equally often, at least twice.", nameof(readings));
        return Analyse(readings, parts, appraisers, cells[0]);
    }

    private static GaugeStudy Analyse(IReadOnlyList<(string Part, string Appraiser, double Value)> readings, int parts, int appraisers, int repeats)
    {
        // Distances to the first reading: the sums keep their digits.
        var shifted = readings.Select(r => (r.Part, r.Appraiser, Value: r.Value - readings[0].Value)).ToArray();
        var grand = shifted.Average(r => r.Value);
        var total = shifted.Sum(r => Square(r.Value - grand));
        var part = Between(shifted.GroupBy(r => r.Part).Select(g => g.Average(r => r.Value)), appraisers * repeats);
        var appraiser = Between(shifted.GroupBy(r => r.Appraiser).Select(g => g.Average(r => r.Value)), parts * repeats);
        var cell = Between(shifted.GroupBy(r => (r.Part, r.Appraiser)).Select(g => g.Average(r => r.Value)), repeats);
        var within = shifted.GroupBy(r => (r.Part, r.Appraiser)).Sum(g => g.Sum(r => Square(r.Value - g.Average(m => m.Value))));

        var partLine = Line("part", parts - 1, part);
        var appraiserLine = Line("appraiser", appraisers - 1, appraiser);
        var interactionLine = Line("appraiser x part", (parts - 1) * (appraisers - 1), Math.Max(0, cell - part - appraiser));
        var equipmentLine = Line("equipment", parts * appraisers * (repeats - 1), within);
        var pooledLine = Line("pooled error", interactionLine.DegreesOfFreedom + equipmentLine.DegreesOfFreedom, interactionLine.SumOfSquares + within);
        var probability = Chance(interactionLine, equipmentLine);
        var isPooled = probability > PoolingLevel;
        var error = (isPooled ? pooledLine : equipmentLine).MeanSquare;
        var beside = (isPooled ? pooledLine : interactionLine).MeanSquare;
        var totalLine = Line("total", readings.Count - 1, total);
        return new GaugeStudy(
            FixedList<VarianceLine>.Copy(isPooled ? [partLine, appraiserLine, interactionLine, equipmentLine, pooledLine, totalLine] : [partLine, appraiserLine, interactionLine, equipmentLine, totalLine]),
            isPooled ? 0 : Math.Max(0, (interactionLine.MeanSquare - error) / repeats),
            error,
            Math.Max(0, (partLine.MeanSquare - beside) / (appraisers * repeats)),
            Math.Max(0, (appraiserLine.MeanSquare - beside) / (parts * repeats)),
            probability);

        double Between(IEnumerable<double> means, int count) => count * means.Sum(m => Square(m - grand));
    }

    private static double Chance(VarianceLine of, VarianceLine against)
        => of.SumOfSquares == 0 ? 1 : against.SumOfSquares == 0 ? 0 : 1 - FisherSnedecor.CDF(of.DegreesOfFreedom, against.DegreesOfFreedom, of.MeanSquare / against.MeanSquare);

    private static VarianceLine Line(string source, int degreesOfFreedom, double squares) => new(source, degreesOfFreedom, squares, squares / degreesOfFreedom);

    private static double Square(double value) => value * value;
}
