using System;
using System.Collections.Generic;
using System.Linq;

namespace Waywright;

/// <summary>
/// How much a rail's bow varies from lay to lay, from all faces of one set-up together: a single face that was laid twice has one degree of freedom, a batch has many.
/// The mean square of the lays' bows less what scatter makes of it estimates the variance without bias, so no face is first tested and then believed.
/// </summary>
/// <param name="Um">Standard deviation of the bow from lay to lay, um; 0 where scatter explains all.</param>
/// <param name="DegreesOfFreedom">Lays less one, summed over the faces; fewer would be due where scatter makes most of it, but then it adds little.</param>
internal sealed record BatchLays(double Um, double DegreesOfFreedom)
{
    // With fewer lays the faces are judged one by one.
    private const int FewestDegrees = 4;

    /// <summary>Null where too few faces were laid again.</summary>
    public static BatchLays? Of(IEnumerable<PooledSweep> faces)
    {
        var tested = faces.Select(f => f.Lays).Where(t => t.Squares is not null).ToArray();
        var between = tested.Sum(t => t.DegreesBetween);
        if (between < FewestDegrees)
            return null;
        var extra = tested.Sum(t => t.DegreesBetween * (t.Squares!.Value.Shown - t.Squares.Value.ByScatter)) / between;
        return new BatchLays(Math.Sqrt(Math.Max(0, extra)), between);
    }
}
