using System;
using System.Linq;
using MathNet.Numerics.LinearAlgebra;
using MathNet.Numerics.LinearAlgebra.Double;

namespace Waywright;

/// <summary>
/// Least squares of a sound by damped partials: x(t) = c + sum over k of e^(-d_k t) (a_k cos p_k + b_k sin p_k), p_k = 2 pi f_k w(t), w(t) = t + g (1 - e^(-r t)) / r.
/// a, b, c are solved for exactly at each step (variable projection: Golub and Pereyra, SIAM J. Numer. Anal. 10, 1973; Kaufman's form, BIT 15, 1975); Levenberg's damping over the rest.
/// g is how much higher the string starts, r how fast that goes: a loud pluck stretches it, and the rise falls with the energy, so with g the f_k are those of amplitude zero.
/// </summary>
internal sealed class DampedPartials
{
    private const double LeastDecay = 0.05;
    private const double LargestDecay = 400;
    private const double Settled = 1e-9;

    private readonly double[] _sound;
    private readonly double _rate;
    private readonly PartialFrequencies _model;
    private readonly int _partials;
    private readonly PluckWarp _warp;

    private Matrix<double>? _inverse;
    private double[][]? _jacobian;
    private Matrix<double>? _shares;

    private DampedPartials(double[] sound, double rate, PartialFrequencies model, double[] parameters, double[] decays, PluckWarp warp)
    {
        (_sound, _rate, _model, _partials, _warp) = (sound, rate, model, decays.Length, warp);
        Parameters = [.. parameters, .. decays, .. warp.IsFitted ? (double[])[warp.Glide, warp.Rate] : []];
        (Fit, Coefficients, Rest, Cost) = Solved(Parameters);
    }

    /// <summary>Those of the frequencies, then the decays, then g.</summary>
    public double[] Parameters { get; private set; }

    public LeastSquares Fit { get; private set; }

    /// <summary>a_1, b_1, a_2, b_2, ..., c.</summary>
    public double[] Coefficients { get; private set; }

    /// <summary>What the partials leave of the sound.</summary>
    public double[] Rest { get; private set; }

    /// <summary>Sum of squares of what is left.</summary>
    public double Cost { get; private set; }

    public double FirstParameter => Parameters[0];

    /// <summary>The glide: fitted, held or none.</summary>
    public PluckWarp Warp => WarpOf(Parameters);

    /// <summary>Where g stands in the parameters of a fit with a glide.</summary>
    public int GlideParameter => _model.Count + _partials;

    public int Degrees => Math.Max(1, _sound.Length - Coefficients.Length - Parameters.Length);

    /// <summary>Bayes' criterion, to compare models of one sound: n ln(cost) + p ln n (Schwarz, Ann. Statist. 6, 1978).</summary>
    public double Criterion => (_sound.Length * Math.Log(Cost)) + ((Coefficients.Length + Parameters.Length) * Math.Log(_sound.Length));

    public double Decay(int partial) => Parameters[_model.Count + partial];

    public double Amplitude(int partial) => Math.Sqrt((Coefficients[2 * partial] * Coefficients[2 * partial]) + (Coefficients[(2 * partial) + 1] * Coefficients[(2 * partial) + 1]));

    public double Frequency(int partial) => _model.Frequency(Parameters, partial);

    /// <param name="sound">The stretch.</param>
    /// <param name="rate">Samples per second.</param>
    /// <param name="model">How parameters make frequencies.</param>
    /// <param name="parameters">Where to start.</param>
    /// <param name="decays">Where to start, 1/s, one for each partial.</param>
    /// <param name="warp">What is known of the glide; none where null.</param>
    /// <param name="steps">At most.</param>
    public static DampedPartials Of(double[] sound, double rate, PartialFrequencies model, double[] parameters, double[] decays, PluckWarp? warp = null, int steps = 25)
    {
        var fit = new DampedPartials(sound, rate, model, parameters, decays, warp ?? default);
        fit.Improve(steps);
        return fit;
    }

    /// <summary>Standard uncertainty of a parameter under noise of any colour: the spectrum of what is left, smoothed, in place of one variance (White's sandwich, Econometrica 48, 1980, for a stationary series).</summary>
    public double Uncertainty(int parameter, NoiseSpectrum noise)
    {
        Linearise();
        var sensitivities = _inverse!.Column(parameter);
        var series = new double[_sound.Length];
        for (var j = 0; j < _jacobian!.Length; j++)
            Products.Add(series, sensitivities[j], _jacobian[j]);
        var along = _shares!.Multiply(sensitivities);
        for (var i = 0; i < Fit.Columns.Length; i++)
            Products.Add(series, -along[i], Fit.Columns[i]);
        return Math.Sqrt(noise.Variance(series) * _sound.Length / Degrees);
    }

    private void Improve(int steps)
    {
        var damping = 1e-3;
        for (var step = 0; step < steps; step++)
        {
            var jacobian = Jacobian();
            var (_, curvature) = Fit.Project(jacobian);
            var gradient = new DenseVector([.. jacobian.Select(column => Products.Sum(column, Rest))]);
            var before = Cost;
            var better = false;
            for (var attempt = 0; attempt < 8 && !better; attempt++)
            {
                var damped = curvature.Clone();
                for (var i = 0; i < damped.RowCount; i++)
                    damped[i, i] += (damping * Math.Abs(damped[i, i])) + 1e-200;
                var move = damped.LU().Solve(gradient);
                var tried = Held([.. Parameters.Select((p, i) => p + move[i])]);
                if (tried is not null)
                {
                    var (fit, coefficients, rest, cost) = Solved(tried);
                    if (cost < Cost)
                        (Parameters, Fit, Coefficients, Rest, Cost, better) = (tried, fit, coefficients, rest, cost, true);
                }

                damping *= better ? 1 : 10;
            }

            if (!better || before - Cost < Settled * before)
                return;
            damping = Math.Max(damping / 10, 1e-9);
        }
    }

    /// <summary>Parameters within what they may be; null where one is no number or a frequency ran away.</summary>
    private double[]? Held(double[] parameters)
    {
        if (!parameters.All(double.IsFinite) || !_model.Hold(parameters))
            return null;
        for (var k = 0; k < _partials; k++)
            parameters[_model.Count + k] = Math.Clamp(parameters[_model.Count + k], LeastDecay, LargestDecay);
        if (_warp.IsFitted)
            parameters[^1] = Math.Clamp(parameters[^1], 0.2 * _rate / _sound.Length, LargestDecay);
        return parameters;
    }

    private (LeastSquares Fit, double[] Coefficients, double[] Left, double Cost) Solved(double[] parameters)
    {
        var columns = new double[(2 * _partials) + 1][];
        var isWarped = WarpOf(parameters).Glide != 0;
        var times = isWarped ? Warped(parameters) : [];
        for (var k = 0; k < _partials; k++)
        {
            var (cosines, sines) = (new double[_sound.Length], new double[_sound.Length]);
            var (angle, decay) = (2 * Math.PI * _model.Frequency(parameters, k), parameters[_model.Count + k]);
            if (isWarped)
                Wave(cosines, sines, angle, decay, times);
            else
                Wave(cosines, sines, angle, decay);
            (columns[2 * k], columns[(2 * k) + 1]) = (cosines, sines);
        }

        columns[^1] = [.. Enumerable.Repeat(1.0, _sound.Length)];
        var fit = new LeastSquares(columns);
        var coefficients = fit.Solve(_sound);
        var rest = fit.Rest(_sound, coefficients);
        return (fit, coefficients, rest, Products.Sum(rest, rest));
    }

    private void Wave(double[] cosines, double[] sines, double angle, double decay, double[] times)
    {
        for (var i = 0; i < cosines.Length; i++)
        {
            var (sine, cosine) = Math.SinCos(angle * times[i]);
            var level = Math.Exp(-decay * i / _rate);
            (cosines[i], sines[i]) = (level * cosine, level * sine);
        }
    }

    // The same without a glide: each sample is the last one, turned and shrunk; 10 000 turns lose four digits of sixteen.
    private void Wave(double[] cosines, double[] sines, double angle, double decay)
    {
        var (turnSine, turnCosine) = Math.SinCos(angle / _rate);
        var shrink = Math.Exp(-decay / _rate);
        var (a, b, x, y) = (shrink * turnCosine, shrink * turnSine, 1.0, 0.0);
        for (var i = 0; i < cosines.Length; i++)
        {
            (cosines[i], sines[i]) = (x, y);
            (x, y) = ((a * x) - (b * y), (a * y) + (b * x));
        }
    }

    // w(t) at each sample.
    private double[] Warped(double[] parameters)
    {
        var (times, warp) = (new double[_sound.Length], WarpOf(parameters));
        for (var i = 0; i < times.Length; i++)
            times[i] = (i / _rate) + (warp.Glide == 0 ? 0 : warp.Glide * (1 - Math.Exp(-warp.Rate * i / _rate)) / warp.Rate);
        return times;
    }

    private PluckWarp WarpOf(double[] parameters) => _warp.IsFitted ? _warp with { Glide = parameters[GlideParameter], Rate = parameters[GlideParameter + 1] } : _warp;

    private double[][] Jacobian()
    {
        var columns = Enumerable.Range(0, Parameters.Length).Select(_ => new double[_sound.Length]).ToArray();
        var times = Warped(Parameters);
        var warp = WarpOf(Parameters);
        var (turned, timed) = (new double[_sound.Length], new double[_sound.Length]);
        for (var k = 0; k < _partials; k++)
        {
            var (a, b) = (Coefficients[2 * k], Coefficients[(2 * k) + 1]);
            var (cosines, sines, decays) = (Fit.Columns[2 * k], Fit.Columns[(2 * k) + 1], columns[_model.Count + k]);
            for (var i = 0; i < times.Length; i++)
            {
                turned[i] = 2 * Math.PI * ((b * cosines[i]) - (a * sines[i]));
                timed[i] = turned[i] * times[i];
                decays[i] = -(i / _rate) * ((a * cosines[i]) + (b * sines[i]));
            }

            for (var p = 0; p < _model.Count; p++)
            {
                if (_model.Slope(Parameters, k, p) is var slope and not 0)
                    Products.Add(columns[p], slope, timed);
            }

            if (!_warp.IsFitted)
                continue;
            var frequency = _model.Frequency(Parameters, k);
            for (var i = 0; i < times.Length; i++)
            {
                var (t, left) = (i / _rate, Math.Exp(-warp.Rate * i / _rate));
                columns[^2][i] += frequency * turned[i] * (1 - left) / warp.Rate;
                columns[^1][i] += frequency * turned[i] * warp.Glide * ((t * left) - ((1 - left) / warp.Rate)) / warp.Rate;
            }
        }

        return columns;
    }

    private void Linearise()
    {
        if (_inverse is not null)
            return;
        _jacobian = Jacobian();
        var (shares, curvature) = Fit.Project(_jacobian);
        for (var i = 0; i < curvature.RowCount; i++)
            curvature[i, i] = (curvature[i, i] * (1 + 1e-12)) + 1e-200;
        (_shares, _inverse) = (shares, curvature.Inverse());
    }
}

/// <summary>The glide of a fit: g and r of w(t) = t + g (1 - e^(-r t)) / r, where the fit starts or held. Nothing: no glide.</summary>
internal readonly record struct PluckWarp(double Glide, double Rate, bool IsFitted);
