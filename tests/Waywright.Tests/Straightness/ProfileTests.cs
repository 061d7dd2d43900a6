namespace Waywright.Tests.Straightness;

public sealed class ProfileTests
{
    [Fact]
    public void Stations_are_put_in_order_of_position_and_copied()
    {
        double[] positions = [50, 0, 25];
        var profile = new Profile(positions, [3, 1, 2], "B3");
        positions[0] = -1;
        Assert.Equal([0.0, 25.0, 50.0], profile.PositionsMm);
        Assert.Equal([1.0, 2.0, 3.0], profile.HeightsUm);
        Assert.Equal((3, "B3"), (profile.Count, profile.Name));
    }

    [Fact]
    public void Profiles_are_equal_by_value()
    {
        Assert.Equal(new Profile([0, 1], [2, 3], "a"), new Profile([1, 0], [3, 2], "a"));
        Assert.NotEqual(new Profile([0, 1], [2, 3], "a"), new Profile([0, 1], [2, 4], "a"));
        Assert.NotEqual(new Profile([0, 1], [2, 3], "a"), new Profile([0, 1], [2, 3], "b"));
    }

    [Fact]
    public void Turned_end_for_end_it_keeps_its_ends_and_its_heights()
    {
        var reversed = new Profile([10, 20, 50], [1, 2, 3]).Reversed();
        Assert.Equal([10.0, 40.0, 50.0], reversed.PositionsMm);
        Assert.Equal([3.0, 2.0, 1.0], reversed.HeightsUm);
    }

    [Theory]
    [InlineData(double.NaN)]
    [InlineData(double.NegativeInfinity)]
    [InlineData(1e13)]
    public void Values_that_are_no_lengths_are_refused(double bad)
    {
        Assert.Throws<ArgumentException>(() => new Profile([0, 1, bad], [0, 0, 0]));
        Assert.Throws<ArgumentException>(() => new Profile([0, 1, 2], [0, bad, 0]));
    }

    [Fact]
    public void Fewer_than_two_positions_or_unequal_lists_are_refused()
    {
        Assert.Throws<ArgumentException>(() => new Profile([], []));
        Assert.Throws<ArgumentException>(() => new Profile([1], [1]));
        Assert.Throws<ArgumentException>(() => new Profile([5, 5, 5], [1, 2, 3]));
        Assert.Throws<ArgumentException>(() => new Profile([1, 2], [1, 2, 3]));
    }
}
