using System;
using System.Buffers;

namespace Waywright;

/// <summary>
/// The door to the kernels for one set of readings: least-squares line and minimum zone from plain spans. For many sets over the same stations,
/// prepare a <see cref="StationAxis"/> once and call <see cref="LeastSquaresKernel"/> and <see cref="ZoneKernel"/> with a buffer of your own.
/// </summary>
internal static class ProfileKernel
{
    /// <summary>Both lines; the zone's slope is against the least-squares line. No allocation.</summary>
    /// <param name="positions">In rising order, at least two different.</param>
    /// <param name="heights">One for each position, finite.</param>
    /// <param name="line">The least-squares line.</param>
    public static NarrowestZone Solve(ReadOnlySpan<double> positions, ReadOnlySpan<double> heights, out LeastSquaresLine line)
    {
        var length = Lanes.Padded(positions.Length);
        var rented = ArrayPool<double>.Shared.Rent(2 * length);
        try
        {
            var axis = StationAxis.Prepare(positions, rented.AsSpan(0, length));
            var residuals = rented.AsSpan(length, length);
            line = LeastSquaresKernel.Solve(axis, heights, residuals);
            return ZoneKernel.Solve(axis, residuals, line);
        }
        finally
        {
            ArrayPool<double>.Shared.Return(rented);
        }
    }
}
