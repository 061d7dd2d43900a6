using System;
using System.Threading;
using System.Threading.Tasks;
using MathNet.Numerics;

namespace Waywright;

/// <summary>Simulated errors of a profile, each less its own least-squares line: straightness sees no more of them.</summary>
internal sealed class ErrorTrials
{
    private const int Block = 256;
    private const uint ShapeInputs = 1 << 20;
    private const uint SpreadInput = 1 << 21;
    private const double FewDegrees = 4;

    private readonly double[] _all;
    private readonly double[] _stations;

    private ErrorTrials(PreparedStations stations, HeightErrors errors, int trials)
    {
        (Stations, Errors, Trials) = (stations, errors, trials);
        _all = new double[trials * stations.Padded];
        _stations = errors.Shapes.Count == 0 ? _all : new double[_all.Length];
    }

    public PreparedStations Stations { get; }

    public HeightErrors Errors { get; }

    public int Trials { get; }

    /// <summary>Residuals of one trial, padded.</summary>
    public ReadOnlySpan<double> All(int trial) => _all.AsSpan(trial * Stations.Padded, Stations.Padded);

    /// <summary>Residuals of the same trial without the shapes: what differs from station to station alone.</summary>
    public ReadOnlySpan<double> OfStations(int trial) => _stations.AsSpan(trial * Stations.Padded, Stations.Padded);

    /// <summary>The same trials for any number of threads: each draw is addressed by seed, input and trial.</summary>
    public static ErrorTrials Draw(PreparedStations stations, HeightErrors errors, int trials, ulong seed, CancellationToken cancel)
    {
        var made = new ErrorTrials(stations, errors, trials);
        var blocks = (trials + Block - 1) / Block;
        Parallel.For(0, blocks, new ParallelOptions { CancellationToken = cancel }, () => new Worker(made, seed), (block, _, worker) =>
        {
            worker.Fill(block * Block, Math.Min(Block, trials - (block * Block)));
            return worker;
        }, _ => { });
        return made;
    }

    private sealed class Worker(ErrorTrials trials, ulong seed)
    {
        private readonly RandomDraws _draws = new(seed);
        private readonly double[] _values = new double[Block];
        private readonly double[] _spread = new double[Block];
        private readonly double[] _errors = new double[Block * trials.Stations.Count];

        public void Fill(int first, int count)
        {
            var errors = trials.Errors;
            var n = trials.Stations.Count;
            Array.Clear(_errors);
            Spread(SpreadInput, errors.StationDegreesOfFreedom, first);
            for (var i = 0; i < errors.Station.Length; i++)
            {
                if (errors.Station[i] == 0)
                    continue;
                _draws.Gaussian((uint)i, first, _values);
                for (var t = 0; t < count; t++)
                    errors.Add(i, errors.Station[i] * _spread[t] * _values[t], _errors.AsSpan(t * n, n));
            }

            if (errors.Shapes.Count > 0)
                Store(trials._stations, first, count);
            for (var j = 0; j < errors.Shapes.Count; j++)
                AddShape(errors.Shapes[j], (uint)j, first, count);
            Store(trials._all, first, count);
        }

        private void Store(double[] residuals, int first, int count)
        {
            var (n, stride) = (trials.Stations.Count, trials.Stations.Padded);
            var axis = trials.Stations.Axis;
            for (var t = 0; t < count; t++)
                LeastSquaresKernel.Solve(axis, _errors.AsSpan(t * n, n), residuals.AsSpan((first + t) * stride, stride));
        }

        private void AddShape(ErrorShape shape, uint index, int first, int count)
        {
            var heights = shape.Heights;
            if (shape.IsRectangular)
            {
                _draws.Uniform(ShapeInputs + index, first, _values);
                RandomDraws.Scale(_values, -Math.Sqrt(3), 2 * Math.Sqrt(3));
            }
            else
            {
                _draws.Gaussian(ShapeInputs + index, first, _values);
                Spread(SpreadInput + 1 + index, shape.DegreesOfFreedom, first);
                for (var t = 0; t < count; t++)
                    _values[t] *= _spread[t];
            }

            for (var t = 0; t < count; t++)
            {
                for (var i = 0; i < heights.Length; i++)
                    _errors[(t * heights.Length) + i] += heights[i] * _values[t];
            }
        }

        // A standard deviation found from few repeats may be too small: sqrt(nu / chi-squared).
        private void Spread(uint input, double degreesOfFreedom, int first)
        {
            if (double.IsInfinity(degreesOfFreedom))
                Array.Fill(_spread, 1);
            else if (degreesOfFreedom < FewDegrees)
                ExactSpread(input, degreesOfFreedom, first);
            else
                CloseSpread(input, degreesOfFreedom, first);
        }

        private void ExactSpread(uint input, double degreesOfFreedom, int first)
        {
            _draws.Uniform(input, first, _spread);
            foreach (ref var s in _spread.AsSpan())
                s = Math.Sqrt(degreesOfFreedom / 2 / SpecialFunctions.GammaLowerRegularizedInv(degreesOfFreedom / 2, s));
        }

        // Cube-root approximation of Wilson and Hilferty (Proc. Nat. Acad. Sci. 17 (1931) 684, from memory).
        private void CloseSpread(uint input, double degreesOfFreedom, int first)
        {
            _draws.Gaussian(input, first, _spread);
            var part = 2 / (9 * degreesOfFreedom);
            foreach (ref var s in _spread.AsSpan())
            {
                var root = Math.Max(0.05, 1 - part + (s * Math.Sqrt(part)));
                s = 1 / Math.Sqrt(root * root * root);
            }
        }
    }
}
