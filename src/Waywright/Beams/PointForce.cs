namespace Waywright;

/// <summary>A force that presses on a beam at one place.</summary>
/// <param name="PositionMm">Where, mm from the end that positions count from; within the beam.</param>
/// <param name="DownwardN">How much, N, -1e6 to 1e6; downwards positive, the way the weight acts. A dial that presses on the top is positive.</param>
public readonly record struct PointForce(double PositionMm, double DownwardN);
