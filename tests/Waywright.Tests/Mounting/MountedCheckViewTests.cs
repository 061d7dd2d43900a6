using System.Text;
using UnitsNet;
using Waywright.Notebooks;

namespace Waywright.Tests.Mounting;

/// <summary>What a reader is told of mounted rails and of a frame.</summary>
public class MountedCheckViewTests
{
    private static readonly Profile Swept = new([0, 100, 200, 300], [0, 9, 21, 30], "R02 against R01");

    [Fact]
    public void Rails_that_part_are_told_by_end_size_and_way()
    {
        var rails = Parallelism.Of(Swept, 240.mm.PlusMinus(0.5.mm), dialBetween: true, guide: "R01", moved: "<b>R02</b>");
        var text = Views.Text(rails);
        Assert.Matches(@"^Move the end of rail <b>R02</b> at 300 mm by 30\.6 \(25\.\d to 36\.\d\) um away from R01, or the end at 0 mm by as much towards it, then sweep again\.$", text.Split('\n')[0]);
        Assert.Contains("towards R01, or the end at 0 mm by as much away from it", Views.Text(Parallelism.Of(Swept, 240.mm, dialBetween: false, guide: "R01", moved: "R02")));
        Assert.Contains("unknown to the dial", text);
        Assert.Contains("A tape can't see 0.05 mm", text);
        Assert.DoesNotContain("<b>", Views.Html(rails));
        Assert.Equal(["x/slope", "x/move", "x/variation"], Figures<Parallelism>(rails).Select(f => f.Id));
        Assert.StartsWith("Leave rail B as it is: over 0 to 300 mm", Views.Text(Parallelism.Of(new Profile([0, 100, 200, 300], [0, 4, -3, 2]), 240.mm, dialBetween: true)), StringComparison.Ordinal);
    }

    [Fact]
    public void A_leaning_frame_is_told_which_corners_to_push_together()
    {
        // AC 502, BD 498: cos = (502^2 - 498^2) / (4 x 400 x 300) = 4000 / 480000, 8.3 mrad; A and C are too narrow, so pushing them together opens them.
        var text = Views.Text(Frame(400, 300, 400, 300, 502, 498));
        Assert.Matches(@"^Push corners A and C towards each other by 2\.0 mm, until both diagonals are alike, then measure again: corner \w is 8\.\d mrad too (narrow|wide) \(-?\d+\.\d to -?\d+\.\d\), 3\.\d mm over 400 mm\.$", text.Split('\n')[0]);
        Assert.StartsWith("Push corners B and D", Views.Text(Frame(400, 300, 400, 300, 498, 502)), StringComparison.Ordinal);
        Assert.Contains("Equal diagonals alone don't prove a frame square", text);
    }

    [Fact]
    public void The_other_verdicts_say_what_to_do_first()
    {
        Assert.StartsWith("Leave the frame: no corner can be told from square; the worst, corner ", Views.Text(Frame(400, 300, 400, 300, 500, 500.2)), StringComparison.Ordinal);
        Assert.StartsWith("Measure all six lengths again: no flat frame has them, they miss by 3.0 mm where 1.2 mm is the most to expect (chance < 1 %)", Views.Text(Frame(400, 300, 400, 300, 500, 497)), StringComparison.Ordinal);
        // Equal legs of 300, both diagonals sqrt(316^2 + 288^2).
        var diagonal = Math.Sqrt((316 * 316) + (288 * 288));
        Assert.StartsWith("Correct the lengths of the sides, not the diagonals", Views.Text(Frame(400, 300, 232, 300, diagonal, diagonal)), StringComparison.Ordinal);
    }

    [Fact]
    public void The_record_keeps_corners_lean_and_check()
        => Assert.Equal(["x/corner-A", "x/corner-B", "x/corner-C", "x/corner-D", "x/lean", "x/diagonals", "x/miss", "x/chance"], Figures<Squareness>(Frame(400, 300, 400, 300, 500, 500)).Select(f => f.Id));

    [Fact]
    public void Fragments_stay_below_thirty_kilobytes()
    {
        var zero = 0.mm.PlusMinus(0.5.mm);
        object[] shown = [Parallelism.Of(Swept, 240.mm, true), Squareness.Of(At(400), At(300), At(400), At(300), At(500), At(500), zero)];
        Assert.All(shown, result => Assert.InRange(Encoding.UTF8.GetByteCount(Views.Html(result)), 1_000, 30_000));
        Assert.Contains("one and the same in all six", Views.Text(shown[1]));
    }

    private static Figure[] Figures<T>(object result) => [.. Views.Find(typeof(T))!.Figures(result, "x")];

    private static Squareness Frame(double ab, double bc, double cd, double da, double ac, double bd) => Squareness.Of(At(ab), At(bc), At(cd), At(da), At(ac), At(bd));

    private static Measured<Length> At(double mm) => mm.mm.WithUncertainty(0.3.mm);
}

[UnderCulture("de-DE")]
public sealed class MountedCheckViewTestsInGerman : MountedCheckViewTests;

[UnderCulture("fa-IR")]
public sealed class MountedCheckViewTestsInPersian : MountedCheckViewTests;
