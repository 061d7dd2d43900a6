using System;
using System.Collections.Generic;
using System.Globalization;
using System.Linq;
using UnitsNet;

namespace Waywright;

/// <summary>
/// A belt around any number of pulleys: length, free spans, wraps and teeth in mesh. With signed radii r (+ within the loop, - outside) and centres D apart, a free span is sqrt(D2 - (r1 - r2)2):
/// sqrt(C2 - (R1 - R2)2) for an open span, sqrt(C2 - (R1 + R2)2) for one that crosses over.
/// </summary>
/// <remarks>Two pulleys: SDP/SI technical section, p. T-3, for the span. Checked by Reference/belts/belt_length_checks.csv, and for wraps from outside by a polygon around the same pulleys.</remarks>
public sealed record BeltPath
{
    private BeltPath(IEnumerable<BeltPulley> pulleys, IEnumerable<double> spans, IEnumerable<double> wraps)
    {
        Pulleys = FixedList<BeltPulley>.Copy(pulleys);
        SpansMm = FixedList<double>.Copy(spans);
        WrapsDeg = FixedList<double>.Copy(wraps.Select(w => w * 180 / Math.PI));
        LengthMm = SpansMm.Sum() + wraps.Zip(Pulleys, (w, p) => w * p.CordRadiusMm).Sum();
        TeethInMesh = FixedList<double?>.Copy(Pulleys.Zip(wraps, (p, w) => p.Teeth * w / (2 * Math.PI)));
        PitchMm = Pulleys.Select(p => p.PitchMm).FirstOrDefault(p => p is not null);
    }

    /// <summary>In the order in which the belt runs, counter-clockwise.</summary>
    public IReadOnlyList<BeltPulley> Pulleys { get; }

    /// <summary>Free span from each pulley to the next, mm.</summary>
    public IReadOnlyList<double> SpansMm { get; }

    /// <summary>Angle of wrap on each pulley, degrees.</summary>
    public IReadOnlyList<double> WrapsDeg { get; }

    /// <summary>Teeth in mesh of each pulley; null for a smooth one. Below 6 a drive shears teeth (makers' practice).</summary>
    public IReadOnlyList<double?> TeethInMesh { get; }

    /// <summary>Length at the cord's line, mm.</summary>
    public double LengthMm { get; }

    /// <summary>Pitch of the toothed pulleys; null if there is none.</summary>
    public double? PitchMm { get; }

    /// <summary>Length in pitches; null without a pitch. A closed belt has a whole number.</summary>
    public double? Teeth => LengthMm / PitchMm;

    /// <summary>The result in words.</summary>
    public string Verdict
    {
        get
        {
            var few = Enumerable.Range(0, Pulleys.Count).Where(i => TeethInMesh[i] < 6).Select(i => (i + 1).ToString(CultureInfo.InvariantCulture)).ToArray();
            var teeth = Teeth is { } t ? $", {NumberText.Rounded(t, 2)} pitches of {NumberText.Plain(PitchMm!.Value)} mm" : "";
            var mesh = few.Length == 0 ? "" : $" Fewer than 6 teeth in mesh on pulley {string.Join(", ", few)}: move an idler, or take a larger one.";
            return $"The belt is {NumberText.Rounded(LengthMm, 2)} mm long at its cord{teeth}.{mesh}";
        }
    }

    /// <summary>Around pulleys in the order in which the belt runs counter-clockwise, x to the right and y up.</summary>
    /// <param name="pulleys">Two or more, each with its place and side; toothed ones of one pitch.</param>
    /// <exception cref="ArgumentException">Fewer than two, different pitches, pulleys that overlap, or a loop that is not one turn: another order, or a side that was mistaken.</exception>
    public static BeltPath Around(params IEnumerable<BeltPulley> pulleys)
    {
        ArgumentNullException.ThrowIfNull(pulleys);
        var list = pulleys.ToArray();
        if (list.Length < 2)
            throw new ArgumentException("A belt runs around two pulleys or more.", nameof(pulleys));
        if (list.Where(p => p.PitchMm is not null).Select(p => p.PitchMm!.Value).Distinct().Count() > 1)
            throw new ArgumentException("All toothed pulleys of a belt have its pitch.", nameof(pulleys));
        var n = list.Length;
        var (spans, headings) = (new double[n], new double[n]);
        for (var i = 0; i < n; i++)
        {
            var (a, b) = (list[i], list[(i + 1) % n]);
            var (dx, dy) = (b.XMm - a.XMm, b.YMm - a.YMm);
            var (ra, rb) = (Signed(a), Signed(b));
            var distance = double.Hypot(dx, dy);
            if (distance <= Math.Abs(ra - rb))
            {
                throw new ArgumentException(string.Create(CultureInfo.InvariantCulture, $"Pulleys {i + 1} and {((i + 1) % n) + 1} are {distance:0.###} mm apart: no belt passes {(a.IsOutside == b.IsOutside ? "around" : "between")} them, which takes more than {Math.Abs(ra - rb):0.###} mm."), nameof(pulleys));
            }

            spans[i] = Math.Sqrt((distance * distance) - ((ra - rb) * (ra - rb)));
            headings[i] = Math.Atan2(dy, dx) + Math.Asin((ra - rb) / distance);
        }

        double[] wraps = [.. Enumerable.Range(0, n).Select(i => Turn((list[i].IsOutside ? -1 : 1) * (headings[i] - headings[(i + n - 1) % n])))];
        var turned = wraps.Select((w, i) => list[i].IsOutside ? -w : w).Sum();
        if (Math.Abs(turned - (2 * Math.PI)) > 1e-6)
            throw new ArgumentException(string.Create(CultureInfo.InvariantCulture, $"This order and these sides turn the belt by {turned * 180 / Math.PI:0} degrees, not once around: list the pulleys counter-clockwise as the belt meets them, and check which ones touch it from outside."), nameof(pulleys));
        return new(list, spans, wraps);
    }

    /// <summary>Free length of an open span between two pulleys, sqrt(C2 - (R1 - R2)2), R to the cord's line.</summary>
    /// <param name="centres">C, the distance of the axes.</param>
    /// <param name="first">One pulley; its place is not used.</param>
    /// <param name="second">The other.</param>
    /// <exception cref="ArgumentException">The axes are closer than the radii differ.</exception>
    public static Measured<Length> OpenSpan(Measured<Length> centres, BeltPulley first, BeltPulley second)
    {
        ArgumentNullException.ThrowIfNull(first);
        ArgumentNullException.ThrowIfNull(second);
        return Span(centres, first.CordRadiusMm - second.CordRadiusMm, "sqrt(C2 - (R1 - R2)2)");
    }

    /// <summary>Free length of a span that crosses over from one side to the other, sqrt(C2 - (R1 + R2)2).</summary>
    /// <param name="centres">C, the distance of the axes.</param>
    /// <param name="first">One pulley; its place is not used.</param>
    /// <param name="second">The other.</param>
    /// <exception cref="ArgumentException">The axes are closer than the sum of the radii: the pulleys would touch.</exception>
    public static Measured<Length> CrossedSpan(Measured<Length> centres, BeltPulley first, BeltPulley second)
    {
        ArgumentNullException.ThrowIfNull(first);
        ArgumentNullException.ThrowIfNull(second);
        return Span(centres, first.CordRadiusMm + second.CordRadiusMm, "sqrt(C2 - (R1 + R2)2)");
    }

    private static Measured<Length> Span(Measured<Length> centres, double offsetMm, string formula)
    {
        ArgumentNullException.ThrowIfNull(centres);
        var c = centres.AsInput("distance of the axes").Si;
        var offset = Math.Abs(offsetMm) / 1000;
        return c.Value > offset
            ? Quantity.FromSi<Length>((c.Pow(2) - (offset * offset)).Sqrt(), $"free span {formula} from the distance of the axes")
            : throw new ArgumentException($"Axes {NumberText.Plain(1000 * c.Value)} mm apart leave no such span: more than {NumberText.Significant(1000 * offset, 4)} mm is needed.", nameof(centres));
    }

    private static double Signed(BeltPulley pulley) => pulley.IsOutside ? -pulley.CordRadiusMm : pulley.CordRadiusMm;

    // Into 0 to 2 pi; a rounding below 0 is no whole turn.
    private static double Turn(double angle)
    {
        var turn = angle % (2 * Math.PI);
        turn = turn < -1e-9 ? turn + (2 * Math.PI) : Math.Max(0, turn);
        return turn > (2 * Math.PI) - 1e-9 ? 0 : turn;
    }
}
