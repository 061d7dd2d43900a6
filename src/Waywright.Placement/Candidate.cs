namespace Waywright.Placement;

/// <summary>A graded rail that may be placed.</summary>
internal sealed class Candidate
{
    private readonly Shape? _side;
    private readonly Shape? _top;

    /// <param name="rail">The rail with its grade.</param>
    /// <param name="size">Its size; null when no stock is known.</param>
    /// <param name="gradeIndex">Place of its grade, 0 is the best; null for measure again and return.</param>
    public Candidate(GradedRail rail, RailStock.Rail? size, int? gradeIndex)
    {
        (Graded, Size, GradeIndex) = (rail, size, gradeIndex);
        _side = rail.Side is { } side ? Shape.Of(side.Profile) : null;
        _top = rail.Top is { } top ? Shape.Of(top.Profile) : null;
    }

    public GradedRail Graded { get; }

    public RailStock.Rail? Size { get; }

    public int? GradeIndex { get; }

    public string Name => Graded.Rail;

    public Shape? ShapeOf(RailFace face) => face == RailFace.Side ? _side : _top;

    /// <summary>Which straightness of a face counts, and its estimate, um; null when the face was not swept.</summary>
    /// <remarks>A top of which nobody said where its screws will be counts as it lay free.</remarks>
    public (string Feature, double Um)? Residual(RailFace face)
    {
        var feature = face == RailFace.Side ? RailFeature.Side : RailFeature.TopMounted;
        var judged = Graded.Features.FirstOrDefault(f => f.Feature == feature);
        if ((judged?.Figure?.EstimateUm ?? judged?.Value) is { } um)
            return (feature, um);
        return (face == RailFace.Side ? Graded.Side : Graded.Top) is { } swept
            ? (face == RailFace.Side ? feature : RailFeature.TopFree, swept.Straightness.MinimumZone.Line.STRtUm)
            : null;
    }

    /// <summary>Whether width and length are those asked for; where no stock is known nothing speaks against it.</summary>
    public bool HasSize(MachinePosition position, PlacementOptions options)
        => Size is null || (Math.Abs(Size.WidthMm - position.WidthMm) <= options.WidthToleranceMm + Slack && Math.Abs(Size.LengthMm - position.LengthMm) <= options.LengthToleranceMm + Slack);

    public bool IsSwept(MachinePosition position, bool isPaired)
        => ShapeOf(position.Face) is { } shape && (!isPaired || shape.CoversMiddle(position.LengthMm));

    // A size read to a hundredth may differ by a hair more than the tolerance.
    private const double Slack = 1e-9;
}
