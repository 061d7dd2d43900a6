using System;

namespace Waywright;

/// <summary>
/// What repeating leaves of rounding to a step q, as a variance: readings that scatter by sigma before they are rounded have after it, on average over where the true value lies
/// between two marks, the variance s² = sigma² + q²/12 - h, and their mean keeps an error of variance h = q² Σ_k exp(-4 pi² k² sigma² / q²) / (2 pi² k²). From q²/12 for equal
/// repeats it falls to next to nothing where s is above 0.6 q.
/// </summary>
/// <remarks>
/// Fourier series of the rounding error (Widrow and Kollar, Quantization Noise, 2008, from memory); checked by simulation. Passes at other heights would round otherwise and
/// average more of it: it is taken to stay until the rail is laid anew.
/// </remarks>
internal static class RoundingLeft
{
    private const int Halvings = 50;
    private const int Terms = 40;

    /// <param name="step">q, um, above 0.</param>
    /// <param name="s">Standard deviation of rounded readings, um, 0 or more.</param>
    /// <returns>um².</returns>
    public static double Variance(double step, double s)
    {
        var ratio = s / step;
        // Beyond a whole step the first term is below 1e-16.
        if (ratio > 1)
            return 0;
        if (ratio <= 0)
            return step * step / 12;
        double low = 0, high = 1;
        for (var i = 0; i < Halvings; i++)
        {
            var sigma = (low + high) / 2;
            if ((sigma * sigma) + (1.0 / 12) - Left(sigma) < ratio * ratio)
                low = sigma;
            else
                high = sigma;
        }

        return Math.Min(1.0 / 12, Left(low)) * step * step;
    }

    // The series at 0 is 1/12, slowly: what the terms leave out there is less than 1 / (2 pi² terms).
    private static double Left(double sigma)
    {
        if (sigma <= 0)
            return 1.0 / 12;
        var sum = 0.0;
        for (var k = 1; k <= Terms; k++)
            sum += Math.Exp(-4 * Math.PI * Math.PI * k * k * sigma * sigma) / (2 * Math.PI * Math.PI * k * k);
        return sum;
    }
}
