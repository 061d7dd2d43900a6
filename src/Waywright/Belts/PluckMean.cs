using System;
using System.Collections.Generic;
using System.Linq;
using UnitsNet;

namespace Waywright;

/// <summary>
/// The note of several plucks: their mean, with u the larger of what their scatter gives, s / sqrt n with n - 1 degrees of freedom
/// (JCGM 100:2008, 4.2.3), and what was stated for one. More plucks don't improve what the analyser can't resolve, so the stated part is not divided.
/// </summary>
internal static class PluckMean
{
    public static Measured<Frequency> Of(string belt, IReadOnlyList<QuantityReading> plucks, out double? scatterHz)
    {
        var name = $"frequency of belt {belt}";
        var unit = plucks[0].Unit;
        scatterHz = null;
        if (plucks.Count == 1)
            return new Measured<Frequency>(plucks[0] with { TakenAs = $"one pluck: {plucks[0].TakenAs}" }, null).Called(name);
        var mean = plucks.Average(p => p.SiValue);
        var s = Math.Sqrt(plucks.Sum(p => (p.SiValue - mean) * (p.SiValue - mean)) / (plucks.Count - 1));
        var scattered = s / Math.Sqrt(plucks.Count);
        var stated = plucks.Max(p => p.SiStandardUncertainty);
        scatterHz = s;
        var isScatter = scattered > stated;
        var u = isScatter ? scattered : stated;
        var from = isScatter
            ? $"u {Shown(u)} from their scatter (s {Shown(s)} / sqrt({plucks.Count}), {plucks.Count - 1} degrees of freedom), {(stated > 0 ? $"larger than the {Shown(stated)} stated" : "none was stated")}"
            : stated > 0 ? $"u {Shown(u)} as stated, not less than their scatter gives ({Shown(scattered)})" : "no uncertainty: they read alike and none was stated, so state the analyser's step";
        // An identity of its own, not its name: the same belt plucked again, in another log, is another measurement.
        var si = Uncertain.Input(new object(), name, mean, u, isScatter ? plucks.Count - 1 : double.PositiveInfinity);
        return new Measured<Frequency>(si, unit, $"mean of {plucks.Count} plucks; {from}");

        string Shown(double hertz) => $"{NumberText.Significant(unit.FromSi(hertz), 2)} {unit}";
    }
}
