using System;
using System.Threading;
using System.Threading.Tasks;

namespace Waywright;

/// <summary>Simulated errors of a profile, each less its own least-squares line: straightness sees no more of them.</summary>
internal sealed class ErrorTrials
{
    private const int Block = ErrorDraws.Block;

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
        private readonly ErrorDraws _draws = new(seed);
        private readonly double[] _values = new double[Block];
        private readonly double[] _spread = new double[Block];
        private readonly double[] _errors = new double[Block * trials.Stations.Count];

        public void Fill(int first, int count)
        {
            var errors = trials.Errors;
            var n = trials.Stations.Count;
            Array.Clear(_errors);
            _draws.OfStationSpread(errors.StationDegreesOfFreedom, first, _spread);
            for (var i = 0; i < errors.Station.Length; i++)
            {
                if (errors.Station[i] == 0)
                    continue;
                _draws.OfStation((uint)i, first, _values);
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
            _draws.OfShape(shape.IsRectangular, shape.DegreesOfFreedom, index, first, _values);
            for (var t = 0; t < count; t++)
            {
                for (var i = 0; i < heights.Length; i++)
                    _errors[(t * heights.Length) + i] += heights[i] * _values[t];
            }
        }
    }
}
