using Waywright.Tests.Reference;

namespace Waywright.Tests;

public sealed class BeltPathTests
{
    // A maker's catalogue table of pulleys of 3 mm pitch (Reference/belts/pulley_3mm_pitch.csv), within 0.01 mm. Its two columns differ by 0.76 mm throughout, so PLD 0.38.
    [Fact]
    public void Pulleys_have_the_printed_diameters()
    {
        var rows = ReferenceFile.Rows("belts/pulley_3mm_pitch.csv").Select(r => r.Select(ReferenceFile.Number).ToArray()).ToArray();
        Assert.Equal(30, rows.Length);
        Assert.All(rows, r =>
        {
            var pulley = BeltPulley.Toothed((int)r[0], 3);
            Assert.Equal(r[2], pulley.PitchDiameterMm, 0.01);
            Assert.Equal(r[1], pulley.OutsideDiameterMm(0.38), 0.01);
        });
    }

    // Reference/belts/belt_length_checks.csv: two pulleys, exact length, span (SDP/SI p. T-3) and teeth in mesh.
    [Fact]
    public void Two_pulleys_agree_with_the_table()
    {
        var rows = ReferenceFile.Rows("belts/belt_length_checks.csv").Select(r => r.Select(ReferenceFile.Number).ToArray()).ToArray();
        Assert.Equal(8, rows.Length);
        Assert.All(rows, r =>
        {
            var (small, large) = (BeltPulley.Toothed((int)r[1], r[0]), BeltPulley.Toothed((int)r[2], r[0]));
            var path = BeltPath.Around(small.At(0, 0), large.At(r[3], 0));
            Assert.Equal(r[4], small.PitchDiameterMm, 5.1e-6);
            Assert.Equal(r[5], large.PitchDiameterMm, 5.1e-6);
            Assert.Equal(r[6], path.SpansMm[0], 5.1e-6);
            Assert.Equal(r[6], 1000 * BeltPath.OpenSpan(r[3].mm, small, large).Si.Value, 5.1e-6);
            Assert.Equal(r[7], path.LengthMm, 5.1e-6);
            Assert.Equal(r[11], path.Teeth!.Value, 5.1e-6);
            Assert.Equal(r[12], path.TeethInMesh[0]!.Value, 5.1e-6);
        });
    }

    [Fact]
    public void Travel_and_ratio_follow_from_the_teeth()
    {
        Assert.Equal(40, BeltPulley.Toothed(20, 2).TravelPerTurnMm);
        Assert.Equal(3, BeltPulley.Toothed(20, 2).RatioTo(BeltPulley.Toothed(60, 2)), 1e-12);
    }

    // The crossed span of two pulleys, sqrt(C2 - (R1 + R2)2): by hand 300, R 10 and 30, gives sqrt(90000 - 1600).
    [Fact]
    public void A_crossed_span_is_shorter_and_may_be_impossible()
    {
        var (a, b) = (BeltPulley.Smooth(20, 0), BeltPulley.Smooth(60, 0));
        Assert.Equal(Math.Sqrt(88400) / 1000, BeltPath.CrossedSpan(300.mm, a, b).Si.Value, 1e-12);
        Assert.Contains("more than 40.00 mm is needed", Assert.Throws<ArgumentException>(() => BeltPath.CrossedSpan(40.mm, a, b)).Message, StringComparison.Ordinal);
        Assert.Throws<ArgumentException>(() => BeltPath.OpenSpan(20.mm, a, b));
    }

    // Outside wraps: three pulleys within and an idler pressing from outside; the belt as a polygon of many corners, shortened until taut around the same circles (general-purpose check below).
    [Fact]
    public void An_idler_from_outside_wraps_the_other_way()
    {
        BeltPulley[] pulleys = [BeltPulley.Toothed(20, 2).At(0, 0), BeltPulley.Smooth(12, 0.9).At(60, 2, isOutside: true), BeltPulley.Toothed(20, 2).At(120, 0), BeltPulley.Toothed(30, 2).At(60, 80)];
        var path = BeltPath.Around(pulleys);
        Assert.Equal(Stepped(path), path.LengthMm, 1e-3);
        Assert.True(path.WrapsDeg[1] is > 0 and < 90);
        Assert.Null(path.TeethInMesh[1]);
        Assert.Equal(360, path.WrapsDeg[0] + path.WrapsDeg[2] + path.WrapsDeg[3] - path.WrapsDeg[1], 1e-9);
        // Turned and shifted as a whole nothing changes.
        var (sin, cos) = Math.SinCos(2.1);
        var turned = BeltPath.Around(pulleys.Select(p => p.At((cos * p.XMm) - (sin * p.YMm) + 7, (sin * p.XMm) + (cos * p.YMm) - 3, p.IsOutside)));
        Assert.Equal(path.LengthMm, turned.LengthMm, 1e-9);
    }

    [Fact]
    public void A_way_that_no_belt_can_go_is_refused()
    {
        var wheel = BeltPulley.Toothed(20, 2);
        Assert.Throws<ArgumentException>(() => BeltPath.Around(wheel.At(0, 0)));
        Assert.Contains("5 mm apart: no belt passes between", Assert.Throws<ArgumentException>(() => BeltPath.Around(wheel.At(0, 0), wheel.At(5, 0, isOutside: true))).Message, StringComparison.Ordinal);
        Assert.Throws<ArgumentException>(() => BeltPath.Around(wheel.At(0, 0), wheel.At(0, 0)));
        Assert.Throws<ArgumentException>(() => BeltPath.Around(wheel.At(0, 0), BeltPulley.Toothed(20, 3).At(100, 0)));
        // Clockwise: the same pulleys in the other order.
        Assert.Contains("list the pulleys counter-clockwise", Assert.Throws<ArgumentException>(() => BeltPath.Around(wheel.At(0, 0), wheel.At(60, 80), wheel.At(120, 0))).Message, StringComparison.Ordinal);
        Assert.Throws<ArgumentOutOfRangeException>(() => BeltPulley.Toothed(3, 2));
        Assert.Throws<ArgumentOutOfRangeException>(() => BeltPulley.Toothed(20, 0));
        Assert.Throws<ArgumentOutOfRangeException>(() => BeltPulley.Smooth(-1, 0));
        Assert.Throws<ArgumentOutOfRangeException>(() => BeltPulley.Smooth(10, -1));
    }

    [Fact]
    public void Few_teeth_in_mesh_are_named()
        => Assert.Contains("Fewer than 6 teeth in mesh on pulley 1", BeltPath.Around(BeltPulley.Toothed(10, 5.08).At(0, 0), BeltPulley.Toothed(40, 5.08).At(150, 0)).Verdict, StringComparison.Ordinal);

    // Independent of the tangent formula: each free span's ends are where a line touches both circles, found by minimising the distance from the line to be r on the right side.
    private static double Stepped(BeltPath path)
    {
        var n = path.Pulleys.Count;
        var points = new (double X, double Y)[n, 2];
        for (var i = 0; i < n; i++)
        {
            var (a, b) = (path.Pulleys[i], path.Pulleys[(i + 1) % n]);
            // Angle of the line by bisection-free fixed steps: u such that both signed distances equal their radii.
            var best = (Error: double.PositiveInfinity, Angle: 0.0);
            for (var coarse = 0; coarse < 3600; coarse++)
                best = Better(best, coarse * Math.PI / 1800, a, b);
            for (var width = Math.PI / 1800; width > 1e-13; width /= 2)
                best = Better(Better(best, best.Angle - width, a, b), best.Angle + width, a, b);
            var (sin, cos) = Math.SinCos(best.Angle);
            points[i, 0] = (a.XMm + (R(a) * sin), a.YMm - (R(a) * cos));
            points[i, 1] = (b.XMm + (R(b) * sin), b.YMm - (R(b) * cos));
        }

        var length = 0.0;
        for (var i = 0; i < n; i++)
        {
            length += double.Hypot(points[i, 1].X - points[i, 0].X, points[i, 1].Y - points[i, 0].Y);
            // The arc on pulley i+1 from arrival to departure as many chords.
            var p = path.Pulleys[(i + 1) % n];
            var (from, to) = (points[i, 1], points[(i + 1) % n, 0]);
            var (start, end) = (Math.Atan2(from.Y - p.YMm, from.X - p.XMm), Math.Atan2(to.Y - p.YMm, to.X - p.XMm));
            var sweep = p.IsOutside ? start - end : end - start;
            sweep = ((sweep % (2 * Math.PI)) + (2 * Math.PI)) % (2 * Math.PI);
            const int chords = 20000;
            length += chords * 2 * p.CordRadiusMm * Math.Sin(sweep / chords / 2);
        }

        return length;

        static double R(BeltPulley p) => p.IsOutside ? -p.CordRadiusMm : p.CordRadiusMm;

        static (double Error, double Angle) Better((double Error, double Angle) best, double angle, BeltPulley a, BeltPulley b)
        {
            var (sin, cos) = Math.SinCos(angle);
            // Both touching points on one line of this heading, the second ahead of the first.
            var (dx, dy) = (b.XMm + (R(b) * sin) - a.XMm - (R(a) * sin), b.YMm - (R(b) * cos) - a.YMm + (R(a) * cos));
            var error = Math.Abs((dx * sin) - (dy * cos));
            return (dx * cos) + (dy * sin) > 0 && error < best.Error ? (error, angle) : best;
        }
    }
}
