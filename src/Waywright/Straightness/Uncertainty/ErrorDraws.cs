using System;
using MathNet.Numerics;

namespace Waywright;

/// <summary>The draws behind simulated errors, a block of trials at a time: each is addressed by seed, input and trial, so it is the same in any order and on any profile.</summary>
internal sealed class ErrorDraws(ulong seed)
{
    /// <summary>Trials of a block; a block starts at a multiple of it.</summary>
    public const int Block = 256;

    private const uint ShapeInputs = 1 << 20;
    private const uint SpreadInput = 1 << 21;
    private const double FewDegrees = 4;

    private readonly RandomDraws _draws = new(seed);
    private readonly double[] _spread = new double[Block];

    public void OfStation(uint station, int first, double[] values) => _draws.Gaussian(station, first, values);

    /// <summary>By how much more the stations scatter than was found from few repeats.</summary>
    public void OfStationSpread(double degreesOfFreedom, int first, double[] spread) => Spread(SpreadInput, degreesOfFreedom, first, spread);

    /// <summary>Of a shape: of unit variance, or Student's.</summary>
    public void OfShape(bool isRectangular, double degreesOfFreedom, uint index, int first, double[] values)
    {
        if (isRectangular)
        {
            _draws.Uniform(ShapeInputs + index, first, values);
            RandomDraws.Scale(values, -Math.Sqrt(3), 2 * Math.Sqrt(3));
            return;
        }

        _draws.Gaussian(ShapeInputs + index, first, values);
        Spread(SpreadInput + 1 + index, degreesOfFreedom, first, _spread);
        for (var t = 0; t < values.Length; t++)
            values[t] *= _spread[t];
    }

    // A standard deviation found from few repeats may be too small: sqrt(nu / chi-squared).
    private void Spread(uint input, double degreesOfFreedom, int first, double[] spread)
    {
        if (double.IsInfinity(degreesOfFreedom))
            Array.Fill(spread, 1);
        else if (degreesOfFreedom < FewDegrees)
            ExactSpread(input, degreesOfFreedom, first, spread);
        else
            CloseSpread(input, degreesOfFreedom, first, spread);
    }

    private void ExactSpread(uint input, double degreesOfFreedom, int first, double[] spread)
    {
        _draws.Uniform(input, first, spread);
        foreach (ref var s in spread.AsSpan())
            s = Math.Sqrt(degreesOfFreedom / 2 / SpecialFunctions.GammaLowerRegularizedInv(degreesOfFreedom / 2, s));
    }

    // Cube-root approximation of Wilson and Hilferty (Proc. Nat. Acad. Sci. 17 (1931) 684, from memory).
    private void CloseSpread(uint input, double degreesOfFreedom, int first, double[] spread)
    {
        _draws.Gaussian(input, first, spread);
        var part = 2 / (9 * degreesOfFreedom);
        foreach (ref var s in spread.AsSpan())
        {
            var root = Math.Max(0.05, 1 - part + (s * Math.Sqrt(part)));
            s = 1 / Math.Sqrt(root * root * root);
        }
    }
}
