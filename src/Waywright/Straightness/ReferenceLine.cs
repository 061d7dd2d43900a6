namespace Waywright;

/// <summary>Which straight line the heights are counted from. A straightness figure means little without it.</summary>
public enum ReferenceLineKind
{
    /// <summary>Through the first and the last station (ISO 230-1:2012, 3.4).</summary>
    EndPoints,

    /// <summary>The line of least squares, LSLI in ISO 12780-1. For bow, for mounting and for matching rails.</summary>
    LeastSquares,

    /// <summary>The middle of the minimum zone, MZLI in ISO 12780-1. For grading.</summary>
    MinimumZone,
}

/// <summary>
/// A reference line through a profile and the straightness figures about it, in the terms of ISO 12780-1. Stations of a hand-made sweep are too sparse
/// to claim that standard's filter and sampling.
/// </summary>
/// <param name="Kind">Which line it is.</param>
/// <param name="SlopeUmPerM">Slope, um/m.</param>
/// <param name="HeightAtZeroUm">Height of the line at position 0, um.</param>
/// <param name="STRtUm">Straightness deviation: STRt = STRp + STRv, um, never negative.</param>
/// <param name="STRpUm">Peak: how far the highest station stands above the line, um.</param>
/// <param name="STRvUm">Valley: how far the lowest station lies below the line, um, as a positive number.</param>
/// <param name="STRqUm">Root mean square of the heights from the line over the n stations, um: sqrt(Σ r² / n).</param>
/// <remarks>
/// Checked against the axis measurements of the HP 5528A user's guide (1987), pp. 21-3 to 21-6, the worked example of a machine-tool standard, and
/// closed forms for bow and S-curve.
/// </remarks>
public sealed record ReferenceLine(
    ReferenceLineKind Kind,
    double SlopeUmPerM,
    double HeightAtZeroUm,
    double STRtUm,
    double STRpUm,
    double STRvUm,
    double STRqUm)
{
    /// <summary>Height of the line at a position: h(x) = h(0) + slope x.</summary>
    /// <param name="xMm">Position, mm.</param>
    /// <returns>um.</returns>
    public double HeightUm(double xMm) => HeightAtZeroUm + (SlopeUmPerM * xMm / 1000);
}
