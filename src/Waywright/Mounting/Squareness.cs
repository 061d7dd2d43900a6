using System;
using System.Collections.Generic;
using System.Linq;
using UnitsNet;

namespace Waywright;

/// <summary>
/// Whether a frame A B C D is square, from its four sides and both diagonals. Six lengths, five unknowns (three corners' places once one side is laid down): one is left to check the
/// others. Lean of the midlines: cos = (AC2 - BD2) / (4 m n), m and n the lengths of the lines that join the middles of opposite sides; of a parallelogram these are its sides.
/// Corners from the cosine rule in the fitted frame.
/// </summary>
/// <remarks>
/// Equal diagonals alone don't prove a frame square: a trapezoid of equal legs has them too. An error of the tape's zero is in all six lengths: it cancels in AC - BD, the errors of
/// reading don't. Fit: the least change of the lengths, weighted by their uncertainties, after which they close; uncertainties to first order.
/// m2 + n2 = (AC2 + BD2) / 2 and m2 - n2 = (AB2 + CD2 - BC2 - DA2) / 2 from the sum of the sides as vectors. Adjustment by condition: W. Niemeier, Ausgleichungsrechnung (from memory).
/// Checked by frames whose corners lie on whole numbers and by uncertainties worked out by hand for a 3-4-5 frame.
/// </remarks>
public sealed record Squareness
{
    /// <summary>Share of sound frames whose lengths would be called at odds with each other: 0.05, common practice.</summary>
    public const double DoubtBelow = 0.05;

    private const double Mrad = 1000;
    private const double MmPerM = 1000;
    private const double CoverageOfAllCorners = 1 - (0.05 / 4);

    private readonly FixedList<Measured<Length>> _readings;
    private readonly FixedList<Uncertain> _corners;
    private readonly FixedList<double> _fitted;

    private Squareness(Measured<Length>[] readings, Measured<Length>? tapeZero)
    {
        (_readings, TapeZero) = (FixedList<Measured<Length>>.Copy(readings), tapeZero);
        var read = SquarenessFrame.Of([.. readings.Select(r => tapeZero is null ? r.Si : r.Si + tapeZero.Si)]);
        MissMm = MmPerM * read.Miss();
        if (MissMm.StandardUncertainty == 0)
            throw new ArgumentException("The lengths carry no uncertainty, so nothing says how far they may disagree: give one, such as 400.mm.PlusMinus(0.5.mm).", nameof(readings));
        Chance = 2 * StudentQuantile.Probability(-Math.Abs(MissMm.Value) / MissMm.StandardUncertainty, MissMm.DegreesOfFreedom);
        var fitted = read.Fitted();
        _fitted = FixedList<double>.Copy(fitted.Lengths.Select(l => MmPerM * l.Value));
        _corners = FixedList<Uncertain>.Copy(fitted.Corners().Select(c => Mrad * c));
        LeanMrad = Mrad * fitted.Lean();
        DiagonalsMm = MmPerM * (read.Lengths[SquarenessFrame.AC] - read.Lengths[SquarenessFrame.BD]);
    }

    /// <summary>As measured: AB, BC, CD, DA, AC, BD.</summary>
    public IReadOnlyList<Measured<Length>> Readings => _readings;

    /// <summary>What all six have to be lengthened by, with its uncertainty; null where none was stated.</summary>
    public Measured<Length>? TapeZero { get; }

    /// <summary>The six lengths of the fitted frame, mm, in the same order.</summary>
    public IReadOnlyList<double> FittedMm => _fitted;

    /// <summary>Angle at A, B, C and D less a right angle, mrad; + is too wide. They add up to 0.</summary>
    public IReadOnlyList<Uncertain> CornersMrad => _corners;

    /// <summary>By how much the midlines' angle at A is wider than a right one, mrad: the part of the error that pushing two opposite corners takes out.</summary>
    public Uncertain LeanMrad { get; }

    /// <summary>AC - BD, mm.</summary>
    public Uncertain DiagonalsMm { get; }

    /// <summary>BD as it follows from the other five lengths, less BD as measured, mm: the one check that there is.</summary>
    public Uncertain MissMm { get; }

    /// <summary>Chance that a flat frame's lengths miss by as much or more.</summary>
    public double Chance { get; }

    /// <summary>Whether the lengths agree within their uncertainty: <see cref="Chance"/> is <see cref="DoubtBelow"/> or more.</summary>
    public bool Agrees => Chance >= DoubtBelow;

    /// <summary>The corner farthest from square, 0 for A to 3 for D.</summary>
    public int WorstCorner => Enumerable.Range(0, 4).MaxBy(i => Math.Abs(_corners[i].Value));

    /// <summary>Whether some corner can be told from square: its interval, of 95 % for all four together, leaves 0 out.</summary>
    public bool IsOutOfSquare => _corners.Any(IsNotZero);

    /// <summary>Whether the midlines can be told from square, with 95 %.</summary>
    public bool Leans => LeanMrad.Expanded() is var lean && (lean.Low > 0 || lean.High < 0);

    /// <summary>Corners in order around the frame.</summary>
    internal static IReadOnlyList<string> CornerNames { get; } = FixedList<string>.Copy(["A", "B", "C", "D"]);

    /// <summary>What the six lengths are called.</summary>
    internal static IReadOnlyList<string> LengthNames { get; } = FixedList<string>.Copy(["AB", "BC", "CD", "DA", "AC", "BD"]);

    /// <summary>From four sides, in order around the frame, and both diagonals.</summary>
    /// <param name="ab">From A to B.</param>
    /// <param name="bc">From B to C.</param>
    /// <param name="cd">From C to D.</param>
    /// <param name="da">From D to A.</param>
    /// <param name="ac">Diagonal from A to C.</param>
    /// <param name="bd">Diagonal from B to D.</param>
    /// <param name="tapeZero">Error of the tape's hook or zero, one and the same in all six: <c>0.mm.PlusMinus(0.5.mm)</c>; it is added to each.</param>
    /// <exception cref="ArgumentException">A length is not above 0, three of them can't close a triangle, the frame folds over, or none carries an uncertainty.</exception>
    public static Squareness Of(Measured<Length> ab, Measured<Length> bc, Measured<Length> cd, Measured<Length> da, Measured<Length> ac, Measured<Length> bd, Measured<Length>? tapeZero = null)
    {
        Measured<Length>[] given = [ab, bc, cd, da, ac, bd];
        for (var i = 0; i < given.Length; i++)
        {
            ArgumentNullException.ThrowIfNull(given[i], LengthNames[i]);
            given[i] = given[i].AsInput($"{(i < SquarenessFrame.AC ? "side" : "diagonal")} {LengthNames[i]}");
        }

        return new(given, tapeZero?.AsInput("tape's zero"));
    }

    /// <summary>How far a corner's error carries over the longer of its two sides, mm.</summary>
    /// <param name="corner">0 for A to 3 for D.</param>
    /// <exception cref="ArgumentOutOfRangeException">Another number.</exception>
    public Uncertain OverSideMm(int corner)
    {
        if (corner is < 0 or > 3)
            throw new ArgumentOutOfRangeException(nameof(corner), corner, "Corners are 0 for A to 3 for D.");
        return LongerSideMm(corner) / Mrad * _corners[corner];
    }

    /// <summary>The longer side at a corner, mm.</summary>
    internal double LongerSideMm(int corner) => Math.Max(_fitted[corner], _fitted[(corner + 3) % 4]);

    internal static bool IsNotZero(Uncertain corner) => corner.Expanded(CoverageOfAllCorners) is var interval && (interval.Low > 0 || interval.High < 0);
}
