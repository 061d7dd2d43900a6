using System;

namespace Waywright;

/// <summary>A <see cref="StationAxis"/> that can be kept and shared between threads.</summary>
internal sealed class PreparedStations
{
    private readonly double[] _room;
    private readonly double _sumOfSquares;

    public PreparedStations(ReadOnlySpan<double> positions)
    {
        _room = new double[Lanes.Padded(positions.Length)];
        Count = positions.Length;
        _sumOfSquares = StationAxis.Prepare(positions, _room).SumOfSquares;
    }

    public int Count { get; }

    /// <summary>Length of a buffer for heights, whole blocks.</summary>
    public int Padded => _room.Length;

    public double SumOfSquares => _sumOfSquares;

    public StationAxis Axis => StationAxis.Again(_room, Count, _sumOfSquares);

    /// <summary>Positions less their mean.</summary>
    public ReadOnlySpan<double> FromMean => _room.AsSpan(0, Count);

    /// <summary>Heights less their line of least squares, padded.</summary>
    public double[] Residuals(ReadOnlySpan<double> heights)
    {
        var residuals = new double[Padded];
        LeastSquaresKernel.Solve(Axis, heights, residuals);
        return residuals;
    }
}
