namespace Waywright.Placement;

/// <summary>What is filled at one stroke: a position alone, or both positions of a pair; so many times over all machines.</summary>
internal sealed record PlaceUnit(int First, int? Second, int Demand, int FromInstance);

/// <summary>One way to fill a unit once.</summary>
/// <param name="Unit">Which unit.</param>
/// <param name="First">The rail in its first position.</param>
/// <param name="Second">The rail in its second position; -1 without one.</param>
/// <param name="Cost">Weighted, in 0.001 um.</param>
internal readonly record struct Column(int Unit, int First, int Second, long Cost)
{
    public bool Uses(int rail) => First == rail || Second == rail;
}
