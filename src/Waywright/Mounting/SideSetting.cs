namespace Waywright;

/// <summary>How the side of a rail was set while its screws were tightened.</summary>
public enum SideSetting
{
    /// <summary>Laid down and tightened: the screws have clearance and don't pull sideways.</summary>
    AsLaid,

    /// <summary>Pushed to a straightedge at each screw, and tightened there.</summary>
    ToStraightedge,

    /// <summary>Set at each screw from a rail that is already tight, and tightened there.</summary>
    FromOtherRail,
}
