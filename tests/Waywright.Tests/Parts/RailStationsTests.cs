using CsCheck;

namespace Waywright.Tests.Parts;

public class RailStationsTests
{
    private static RailStock.Rail Rail(double lengthMm, double pitchMm, double endMm) => new("R", 9, lengthMm, pitchMm, endMm, null, null, "");

    [Fact]
    public void The_stations_of_a_rail_of_the_demo_are_those_that_its_sweeps_were_read_at()
    {
        var stock = RailStock.Read(Repository.PathOf("datasets", "demo", "rails", "rails.csv"));
        var sweeps = SweepBatch.Read(Repository.PathOf("datasets", "demo", "rails", "sweeps.csv")).Sweeps;
        Assert.All(sweeps, sweep => Assert.Equal(stock.Find(sweep.Rail!)!.StationsMm, sweep.Passes[0].PositionsMm));
    }

    [Fact]
    public void Stations_lie_on_the_rail_in_rising_order_off_every_hole_and_are_no_fewer_than_a_measuring_plan_takes()
        => Gen.Select(Gen.Double[60, 3000], Gen.Double[10, 100], Gen.Double[0.2, 0.9]).Sample((length, pitch, share) =>
        {
            if (pitch > length / 3)
                return;
            var rail = Rail(length, pitch, share * pitch);
            var stations = rail.StationsMm;
            Assert.True(stations.Count >= 8);
            Assert.True(stations.Zip(stations.Skip(1)).All(pair => pair.Second > pair.First));
            Assert.InRange(stations[0], 0.4 * Math.Min(10, rail.EndDistanceMm), 4);
            Assert.InRange(length - stations[^1], 0, 4);
            // A quarter of the widest bay from hole to hole stays free, but for the ends, whose room is given.
            var inner = stations.Skip(1).SkipLast(1).Where(x => x > rail.HolesMm[0] && x < rail.HolesMm[^1]);
            Assert.All(inner, x => Assert.True(rail.HolesMm.Min(hole => Math.Abs(hole - x)) >= 1.2, $"{x} of {rail}"));
        }, iter: 500);

    [Theory]
    [InlineData(320, 25, 10, new double[] { 4, 22.5, 47.5, 72.5, 97.5, 122.5, 147.5, 172.5, 197.5, 222.5, 247.5, 272.5, 297.5, 316 })]
    [InlineData(240, 60, 30, new double[] { 4, 15, 45, 75, 105, 135, 165, 195, 225, 236 })]
    public void Stations_are_midway_between_holes_and_near_both_ends(double length, double pitch, double end, double[] expected)
        => Assert.Equal(expected, Rail(length, pitch, end).StationsMm);
}
