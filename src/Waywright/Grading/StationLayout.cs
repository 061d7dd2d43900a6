using System;
using System.Collections.Concurrent;
using System.Threading;

namespace Waywright;

/// <summary>
/// What all faces have in common that were swept at the same stations: trials of unit errors, simulated once for a batch. They depend on the stations, the
/// degrees of freedom, the number of trials and the seed, on no rail; so it makes no difference which rails are in the batch.
/// </summary>
/// <param name="positions">Stations, mm.</param>
/// <param name="map">From their heights to the mounted top; null for a face as it lay free.</param>
/// <param name="trials">Simulations.</param>
/// <param name="seed">Of their random numbers.</param>
/// <param name="cancel">Stops it.</param>
internal sealed class StationLayout(double[] positions, MountedMap? map, int trials, ulong seed, CancellationToken cancel)
{
    private readonly ConcurrentDictionary<(double? WindowMm, double DegreesOfFreedom), Lazy<double[]>> _units = new();
    private readonly ConcurrentDictionary<double, Lazy<double[]>> _between = new();

    public MountedMap? Map { get; } = map;

    public PreparedStations Stations { get; } = new(map?.Places ?? positions);

    /// <summary>The figure of the whole length, or of the worst stretch of a window.</summary>
    public ZoneFigure FigureOf(double? windowMm, Profile profile) => windowMm is { } window ? new ZoneFigure(Stations, profile, LocalStraightness.Windows(profile, window)) : new ZoneFigure(Stations);

    /// <summary>T of independent errors of unit size at the stations, in the order of the trials; of <see cref="FewerDegrees"/>.</summary>
    public double[] UnitNoise(double? windowMm, Profile profile, HeightErrors errors) => UnitNoise(windowMm, profile, FewerDegrees.Of(errors.StationDegreesOfFreedom), errors);

    private double[] UnitNoise(double? windowMm, Profile profile, double degrees, HeightErrors errors)
    {
        return _units.GetOrAdd((windowMm, degrees), _ => new(() => double.IsInfinity(degrees)
            ? FigureWork.NoiseByTrial(FigureOf(windowMm, profile), ErrorTrials.Draw(Stations, errors.Unit(), trials, seed, cancel), cancel)
            : Spread(UnitNoise(windowMm, profile, double.PositiveInfinity, errors), degrees))).Value;
    }

    // A scatter known from few repeats makes all stations' errors of a trial larger by one factor.
    private double[] Spread(double[] noise, double degrees)
    {
        var draws = new ErrorDraws(seed);
        var (spread, block) = (new double[trials], new double[ErrorDraws.Block]);
        for (var t = 0; t < trials; t++)
        {
            if (t % block.Length == 0)
                draws.OfStationSpread(degrees, t, block);
            spread[t] = noise[t] * block[t % block.Length];
        }

        return spread;
    }

    /// <summary>T of what a face of unit roughness may be off between the stations, sorted.</summary>
    public double[] UnitBetween(double? windowMm, Profile profile)
        => _between.GetOrAdd(windowMm ?? 0, _ => new(() => FigureWork.Noise(FigureOf(windowMm, profile), ErrorTrials.Draw(Stations, HeightErrors.OfShapes(Map!.UnitBetween), trials, seed, cancel), cancel))).Value;
}
