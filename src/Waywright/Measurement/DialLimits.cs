using System;
using System.Collections.Generic;
using System.Linq;

namespace Waywright;

/// <summary>
/// Limits of permissible error of a dial indicator, in micrometres: +/- over so much of its travel. The error belongs to the reading, so over a small part of the
/// travel less of it shows.
/// </summary>
/// <param name="TurnUm">Travel of one turn of the pointer, from the dial: 1000 for the usual 0.01 mm dial.</param>
/// <param name="TenthTurnUm">Limit over a tenth of a turn.</param>
/// <param name="HalfTurnUm">Over half a turn.</param>
/// <param name="OneTurnUm">Over one turn.</param>
/// <param name="FullRangeUm">Over the whole range.</param>
/// <param name="RetraceUm">Largest difference between readings approached from the two sides.</param>
/// <param name="RepeatabilityUm">Largest difference between repeated readings.</param>
public sealed record DialLimits(double TurnUm, double TenthTurnUm, double HalfTurnUm, double OneTurnUm, double FullRangeUm, double RetraceUm, double RepeatabilityUm)
{
    // JIS B 7503:2011 as printed in a maker's catalogue of 2016: graduation (mm), range up to (mm), retrace, repeatability, 1/10, 1/2, 1 turn, whole range (um).
    private static readonly double[][] Large =
    [
        [0.01, 1, 3, 3, 5, 8, 8, 8],
        [0.01, 3, 3, 3, 5, 8, 9, 10],
        [0.01, 5, 3, 3, 5, 9, 10, 12],
        [0.01, 10, 3, 3, 5, 9, 10, 15],
        [0.01, 20, 5, 4, 8, 10, 15, 25],
        [0.01, 30, 7, 5, 10, 12, 15, 30],
        [0.01, 50, 8, 5, 10, 12, 15, 40],
        [0.01, 100, 9, 5, 12, 17, 20, 50],
        [0.005, 5, 3, 3, 5, 9, 10, 12],
        [0.001, 1, 2, 0.5, 2, 3.5, 4, 5],
        [0.001, 2, 2, 0.5, 2, 4, 5, 7],
        [0.001, 5, 3, 1, 3.5, 5, 6, 10],
    ];

    private static readonly double[][] Small =
    [
        [0.01, 1, 4, 3, 8, 11, 12, 15],
        [0.01, 3, 4, 3, 8, 11, 12, 16],
        [0.01, 5, 4, 3, 8, 12, 14, 18],
        [0.01, 10, 5, 3, 9, 12, 14, 20],
        [0.005, 5, 3.5, 3, 6, 9, 10, 12],
        [0.002, 1, 2.5, 1, 2.5, 4.5, 5, 6],
        [0.001, 1, 2, 1, 2.5, 4, 4.5, 5],
    ];

    /// <summary>The limits of JIS B 7503:2011 for a dial indicator in good order; null where its table has no such dial. An unmarked dial need not keep them: check it against known lengths.</summary>
    /// <param name="divisionMm">Graduation: 0.01, 0.005, 0.002 or 0.001.</param>
    /// <param name="rangeMm">Measuring range, above 0.</param>
    /// <param name="turnMm">Travel of one turn of the pointer, above 0.</param>
    /// <param name="isSmall">Bezel below 50 mm, or back plunger.</param>
    public static DialLimits? Jis7503(double divisionMm, double rangeMm, double turnMm, bool isSmall = false)
    {
        if (!(rangeMm > 0) || !(turnMm > 0) || !double.IsFinite(turnMm))
            return null;
        IEnumerable<double[]> rows = isSmall ? Small : Large;
        return rows.FirstOrDefault(r => Math.Abs(r[0] - divisionMm) < 1e-9 && rangeMm <= r[1]) is { } row
            ? new(1000 * turnMm, row[4], row[5], row[6], row[7], row[2], row[3])
            : null;
    }

    /// <summary>The limit that applies to readings within so much travel of each other.</summary>
    /// <param name="spreadUm">Largest less smallest reading, 0 or more; infinite if unknown.</param>
    /// <exception cref="ArgumentOutOfRangeException">Negative or no number.</exception>
    public double For(double spreadUm)
    {
        if (spreadUm is not >= 0)
            throw new ArgumentOutOfRangeException(nameof(spreadUm), spreadUm, "A spread of readings is 0 or more.");
        return (spreadUm / TurnUm) switch
        {
            <= 0.1 => TenthTurnUm,
            <= 0.5 => HalfTurnUm,
            <= 1 => OneTurnUm,
            _ => FullRangeUm,
        };
    }
}
