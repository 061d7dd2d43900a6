using System;
using System.Collections.Generic;
using System.Linq;

namespace Waywright;

/// <summary>Covariances of heights after their least-squares line is taken off: C = P D P with P = I - V V', V the constant and the slope, each of length 1.</summary>
internal sealed class LevelCovariance
{
    private readonly double[] _variances;
    private readonly double[] _slope;
    private readonly double _constant;
    private readonly (double CC, double CS, double SS) _inner;

    public LevelCovariance(IReadOnlyList<double> x, double[] variances)
    {
        var mean = x.Average();
        var length = Math.Sqrt(x.Sum(at => (at - mean) * (at - mean)));
        (_variances, _constant) = (variances, 1 / Math.Sqrt(x.Count));
        _slope = [.. x.Select(at => (at - mean) / length)];
        for (var i = 0; i < variances.Length; i++)
            _inner = (_inner.CC + (_constant * _constant * variances[i]), _inner.CS + (_constant * _slope[i] * variances[i]), _inner.SS + (_slope[i] * _slope[i] * variances[i]));
    }

    public double Of(int i, int j)
    {
        var hat = (_constant * _constant) + (_slope[i] * _slope[j]);
        var taken = (_constant * _constant * _inner.CC) + (_constant * (_slope[i] + _slope[j]) * _inner.CS) + (_slope[i] * _slope[j] * _inner.SS);
        return (i == j ? _variances[i] : 0) - (hat * (_variances[i] + _variances[j])) + taken;
    }
}
