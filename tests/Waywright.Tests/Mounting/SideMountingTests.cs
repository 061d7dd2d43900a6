namespace Waywright.Tests.Mounting;

/// <summary>The side keeps what was set, if it could be reached and friction holds it.</summary>
public class SideMountingTests
{
    // 206 GPa x 6.5 x 9^3 / 12 mm4.
    private const double Stiffness = 81.3;

    private static readonly ScrewPattern Every = ScrewPattern.Every(350, 20, 5);

    [Fact]
    public void Tightening_alone_never_straightens_a_side()
    {
        foreach (var free in MountedShapeTests.Shapes(10))
        {
            var side = SideMounting.AsLaid(free, Every);
            Assert.Equal(side.FreeUm, side.ResidualUm);
            Assert.False(side.IsHeld);
            Assert.Null(side.SetUm);
        }
    }

    [Fact]
    public void Pushed_to_a_straightedge_a_bow_nearly_disappears_where_clearance_and_friction_allow()
    {
        var side = SideMounting.ToStraightedge(MountedShapeTests.Parabola(60), Every, Stiffness, 0.2, 2000);
        Assert.True(side.IsHeld);
        Assert.Equal(150, side.HoldingN, 1e-9);
        // 0.3984 of a 100 um parabola (SciPy's natural spline), in proportion; coarse stations make it less.
        Assert.InRange(side.ResidualUm, 0, 0.6 * 0.3984);
        Assert.Equal(60, side.FreeUm, 0.05);
    }

    [Fact]
    public void The_shift_is_half_the_bow_at_the_screws_and_a_smaller_clearance_is_not_enough()
    {
        // Over the screws from 5 to 345 the bow has its greatest height less that at 5 mm; the narrowest zone halves it.
        var bow = MountedShapeTests.Parabola(60);
        var half = (60 * 4 * 165.0 * 185 / (350 * 350) - (60 * 4 * 5.0 * 345 / (350 * 350))) / 2;
        var tight = SideMounting.ToStraightedge(bow, Every, Stiffness, (half - 0.05) / 1000, 2000);
        Assert.Equal(half, tight.ShiftsUm.Max(Math.Abs), 0.01);
        Assert.Contains(1, tight.UnreachedHoles);
        Assert.Equal(tight.FreeUm, tight.ResidualUm);
        Assert.True(SideMounting.ToStraightedge(bow, Every, Stiffness, (half + 0.05) / 1000, 2000).IsHeld);
    }

    [Fact]
    public void What_friction_does_not_hold_is_not_counted_on()
    {
        // Beam on its ends, Timoshenko: 48 EI d / l^3 at the middle one of three screws.
        var three = ScrewPattern.Every(350, 170, 5);
        var force = 48 * Stiffness * 60e-6 * 4 * 170 * 170 / (350 * 350) / Math.Pow(0.34, 3);
        double Clamp(double holding) => 2 * holding / SideMounting.UsualFriction;
        var side = SideMounting.ToStraightedge(MountedShapeTests.Parabola(60), three, Stiffness, 1, Clamp(force * 0.999));
        Assert.Equal(force, Math.Abs(side.ForcesN[1]), 1e-3 * force);
        Assert.Equal([2], side.SlippingHoles);
        Assert.Equal(side.FreeUm, side.ResidualUm);
        Assert.True(SideMounting.ToStraightedge(MountedShapeTests.Parabola(60), three, Stiffness, 1, Clamp(force * 1.001)).IsHeld);
    }

    [Fact]
    public void Set_from_another_rail_it_takes_over_that_rail_s_shape()
    {
        var other = MountedShapeTests.Parabola(-25);
        var side = SideMounting.FromOtherRail(MountedShapeTests.Parabola(10), Every, Stiffness, 0.2, 2000, other);
        Assert.True(side.IsHeld);
        Assert.Equal(25, side.ResidualUm, 0.2);
        Assert.Equal(0, SideMounting.FromOtherRail(MountedShapeTests.Parabola(10), Every, Stiffness, 0.2, 2000).ResidualUm, 0.1);
    }

    [Fact]
    public void Values_out_of_range_are_named_together()
    {
        var error = Assert.Throws<ArgumentException>(() => SideMounting.ToStraightedge(MountedShapeTests.Parabola(10), Every, Stiffness, -1, 0, friction: 3));
        Assert.Equal("The clearance of the holes is -1 mm: it must be from 0 to 100 mm. The clamp force is 0 N: it must be above 0 and at most 1000000000 N. The friction is 3 (no unit): it must be from 0 to 2 (no unit).", error.Message);
    }
}
