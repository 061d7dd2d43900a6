using System;
using System.Linq;

namespace Waywright;

/// <summary>Six lengths of a flat frame with corners A, B, C, D: what they leave open, and the frame next to them that closes. In m and rad.</summary>
internal sealed class SquarenessFrame
{
    public const int AB = 0, BC = 1, CD = 2, DA = 3, AC = 4, BD = 5;

    private const int Turns = 8;

    // The three lengths of the triangle that each pair of sides makes with a diagonal.
    private static readonly (int, int, int)[] Triangles = [(AB, BC, AC), (CD, DA, AC), (DA, AB, BD), (BC, CD, BD)];

    private SquarenessFrame(Uncertain[] lengths) => Lengths = FixedList<Uncertain>.Own(lengths);

    public FixedList<Uncertain> Lengths { get; }

    /// <summary>Checks that the lengths can close.</summary>
    /// <exception cref="ArgumentException">They can't.</exception>
    public static SquarenessFrame Of(Uncertain[] lengths)
    {
        var problems = Enumerable.Range(0, lengths.Length).Where(i => !(lengths[i].Value > 0)).Select(i => $"{Told(lengths, i)} is no length above 0.").ToList();
        if (problems.Count == 0)
        {
            foreach (var (first, second, third) in Triangles)
            {
                int[] sorted = [.. new[] { first, second, third }.OrderBy(i => lengths[i].Value)];
                if (lengths[sorted[0]].Value + lengths[sorted[1]].Value <= lengths[sorted[2]].Value)
                    problems.Add($"The frame can't close: {Told(lengths, sorted[0])} and {Told(lengths, sorted[1])} together are no longer than {Told(lengths, sorted[2])}.");
            }
        }

        if (problems.Count > 0)
            throw new ArgumentException($"{string.Join(' ', problems)} Look for a misread or swapped length.", nameof(lengths));
        var frame = new SquarenessFrame(lengths);
        if (frame.Folds(AB, BC, CD, DA, AC) || frame.Folds(DA, AB, BC, CD, BD))
            throw new ArgumentException("The frame folds over: a corner would be wider than a straight line. Look for a misread or swapped length.", nameof(lengths));
        return frame;
    }

    /// <summary>BD from the other five by the cosine rule in A, less BD.</summary>
    public Uncertain Miss()
    {
        var (first, second) = (Cosine(AB, AC, BC), Cosine(DA, AC, CD));
        var cosine = (first * second) - (Sine(first) * Sine(second));
        var square = Lengths[AB].Pow(2) + Lengths[DA].Pow(2) - (2 * Lengths[AB] * Lengths[DA] * cosine);
        return square.Sqrt() - Lengths[BD];
    }

    /// <summary>
    /// The least weighted change after which the frame closes: l - k t with k = cov(l, miss) / var(miss) taken in the fitted frame and t such that it closes. Both are found in turns.
    /// </summary>
    public SquarenessFrame Fitted()
    {
        var (frame, change) = (this, 0.0);
        for (var turn = 0; turn < Turns; turn++)
        {
            var miss = frame.Miss();
            change += miss.Value;
            var shares = frame.Shares(miss);
            frame = Of([.. Lengths.Select((l, i) => l - (shares[i] * change))]);
        }

        // What is left of the miss is a rounding; its inputs make the fitted lengths as uncertain, and as correlated, as the fit leaves them.
        var rest = frame.Miss();
        var last = frame.Shares(rest);
        return Of([.. frame.Lengths.Select((l, i) => l - (last[i] * rest))]);
    }

    private double[] Shares(Uncertain miss) => [.. Lengths.Select(l => l.CorrelationWith(miss) * l.StandardUncertainty / miss.StandardUncertainty)];

    /// <summary>Angles at A, B, C, D less a right angle.</summary>
    public Uncertain[] Corners() => [BeyondRight(Cosine(AB, DA, BD)), BeyondRight(Cosine(AB, BC, AC)), BeyondRight(Cosine(BC, CD, BD)), BeyondRight(Cosine(CD, DA, AC))];

    /// <summary>Angle of the midlines at A less a right angle.</summary>
    public Uncertain Lean()
    {
        var sum = (Lengths[AC].Pow(2) + Lengths[BD].Pow(2)) / 2;
        var difference = (Lengths[AB].Pow(2) + Lengths[CD].Pow(2) - Lengths[BC].Pow(2) - Lengths[DA].Pow(2)) / 2;
        var product = ((sum + difference) / 2).Sqrt() * ((sum - difference) / 2).Sqrt();
        return BeyondRight((Lengths[AC].Pow(2) - Lengths[BD].Pow(2)) / (4 * product));
    }

    /// <summary>Cosine of the angle between two lengths, from the one that faces it.</summary>
    private Uncertain Cosine(int one, int other, int facing)
        => (Lengths[one].Pow(2) + Lengths[other].Pow(2) - Lengths[facing].Pow(2)) / (2 * Lengths[one] * Lengths[other]);

    private static Uncertain Sine(Uncertain cosine) => (1 - cosine.Pow(2)).Sqrt();

    private static Uncertain BeyondRight(Uncertain cosine) => Uncertain.Of(-Math.Asin(cosine.Value), [cosine], [-1 / Math.Sqrt(1 - (cosine.Value * cosine.Value))]);

    /// <summary>Whether the two triangles on a diagonal make a corner of 180 degrees or more at one of its ends.</summary>
    private bool Folds(int a, int b, int c, int d, int diagonal)
        => Angle(a, diagonal, b) + Angle(d, diagonal, c) >= Math.PI || Angle(b, diagonal, a) + Angle(c, diagonal, d) >= Math.PI;

    private double Angle(int one, int other, int facing) => Math.Acos(Math.Clamp(Cosine(one, other, facing).Value, -1, 1));

    private static string Told(Uncertain[] lengths, int i) => $"{Squareness.LengthNames[i]} {NumberText.Plain(1000 * lengths[i].Value)} mm";
}
