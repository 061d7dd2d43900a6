using System;
using System.Collections.Concurrent;
using System.Collections.Generic;
using System.Linq;
using System.Threading;

namespace Waywright;

/// <summary>What the rails of a batch share while they are graded; nothing on it depends on a rail's readings.</summary>
/// <param name="rails">How many rails there are.</param>
/// <param name="trials">Simulations for each figure.</param>
/// <param name="seed">Of their random numbers.</param>
/// <param name="cancel">Stops them.</param>
internal sealed class TrialShelf(int rails, int trials, ulong seed, CancellationToken cancel)
{
    // A rail's figures with their trials take about 2 MB.
    private const int MostKept = 50;

    // What is told of one rail takes its figures several times: those of two rails or more.
    private const int Recent = 16;

    private readonly ConcurrentDictionary<Numbers, Lazy<StationLayout>> _layouts = new();
    private readonly ConcurrentDictionary<(uint Index, bool IsRectangular, double DegreesOfFreedom), Lazy<double[]>> _draws = new();

    private readonly object?[] _recent = new object?[Recent];
    private int _next;

    /// <summary>Whether figures are kept once they were asked for.</summary>
    public bool IsKept { get; } = rails <= MostKept;

    public int Trials { get; } = trials;

    public ulong Seed { get; } = seed;

    public CancellationToken Cancel { get; } = cancel;

    /// <summary>Keeps a figure, or a set of trials, until some others were asked for.</summary>
    public T Hold<T>(T simulated)
        where T : class
    {
        _recent[(uint)Interlocked.Increment(ref _next) % Recent] = simulated;
        return simulated;
    }

    /// <summary>Of a face as it lay free.</summary>
    public StationLayout Free(Profile profile)
        => _layouts.GetOrAdd(new([.. profile.PositionsMm]), _ => new(() => new StationLayout([.. profile.PositionsMm], null, Trials, Seed, Cancel))).Value;

    /// <summary>Of a top held by its screws.</summary>
    public StationLayout Held(Profile profile, ScrewPattern screws)
        => _layouts.GetOrAdd(new([.. profile.PositionsMm, double.NegativeInfinity, screws.LengthMm, .. screws.HolesMm, double.NegativeInfinity, .. screws.ScrewsMm]), _ => new(() =>
        {
            double[] positions = [.. profile.PositionsMm];
            return new StationLayout(positions, new MountedMap(positions, screws), Trials, Seed, Cancel);
        })).Value;

    /// <summary>How far from 0 a shape is drawn, in the order of the trials; of <see cref="FewerDegrees"/>.</summary>
    public double[] DrawsOf(ErrorShape shape, int index)
    {
        var degrees = FewerDegrees.Of(shape.DegreesOfFreedom);
        return _draws.GetOrAdd(((uint)index, shape.IsRectangular, degrees), _ => new(() =>
        {
            var draws = new ErrorDraws(Seed);
            var (all, block) = (new double[Trials], new double[ErrorDraws.Block]);
            for (var first = 0; first < Trials; first += block.Length)
            {
                draws.OfShape(shape.IsRectangular, degrees, (uint)index, first, block);
                for (var t = 0; t < block.Length && first + t < Trials; t++)
                    all[first + t] = Math.Abs(block[t]);
            }

            return all;
        })).Value;
    }

    // A list of numbers as a key.
    private sealed class Numbers(double[] values) : IEquatable<Numbers>
    {
        private readonly double[] _values = values;
        private readonly int _hash = Hash(values);

        public bool Equals(Numbers? other) => other is not null && _values.AsSpan().SequenceEqual(other._values);

        public override bool Equals(object? obj) => Equals(obj as Numbers);

        public override int GetHashCode() => _hash;

        private static int Hash(IEnumerable<double> values)
        {
            var hash = default(HashCode);
            foreach (var value in values)
                hash.Add(value);
            return hash.ToHashCode();
        }
    }
}
