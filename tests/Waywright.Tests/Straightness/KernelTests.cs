namespace Waywright.Tests.Straightness;

/// <summary>The kernels as a simulation calls them: one axis, one buffer, many sets of heights.</summary>
public sealed class KernelTests
{
    [Fact]
    public void A_prepared_axis_and_a_used_buffer_give_the_bits_of_a_fresh_call()
    {
        foreach (var profile in RandomSweeps.Some(200, seed: 12))
        {
            var axis = StationAxis.Prepare(profile.Positions, new double[Lanes.Padded(profile.Count)]);
            var residuals = new double[Lanes.Padded(profile.Count)];
            foreach (var sign in new[] { 1.0, -1.0, 2.0 })
            {
                var heights = Array.ConvertAll(profile.Heights.ToArray(), z => sign * z);
                var line = LeastSquaresKernel.Solve(axis, heights, residuals);
                var zone = ZoneKernel.Solve(axis, residuals, line);
                Assert.Equal(ProfileKernel.Solve(profile.Positions, heights, out var fresh), zone);
                Assert.Equal(fresh, line);
            }
        }
    }

    [Fact]
    public void Neither_kernel_allocates()
    {
        var profile = RandomSweeps.Some(2, seed: 13).Last();
        var heights = profile.Heights;
        ProfileKernel.Solve(profile.Positions, heights, out _);
        var before = GC.GetAllocatedBytesForCurrentThread();
        for (var i = 0; i < 100; i++)
            ProfileKernel.Solve(profile.Positions, heights, out _);
        Assert.Equal(before, GC.GetAllocatedBytesForCurrentThread());
    }

    [Fact]
    public void The_two_pairs_of_the_zone_prove_that_no_zone_is_narrower()
    {
        // Weighted so that the slope drops out, their lower bounds Rise - b Run add up to the width: duality of linear programs.
        foreach (var profile in RandomSweeps.Some(300, seed: 14))
        {
            var (falling, rising) = Pairs(profile, out var width);
            var weight = falling == rising ? 1 : -rising.Run / (falling.Run - rising.Run);
            Assert.InRange(weight, 0, 1);
            Assert.Equal(width, (weight * falling.Rise) + ((1 - weight) * rising.Rise), 1e-11);
        }
    }

    private static (ZonePair Falling, ZonePair Rising) Pairs(Profile profile, out double width)
    {
        var zone = ProfileKernel.Solve(profile.Positions, profile.Heights, out _);
        width = zone.Width;
        return (zone.Falling, zone.Rising);
    }
}
