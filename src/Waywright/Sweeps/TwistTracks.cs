using System;
using System.Collections.Generic;
using System.Linq;

namespace Waywright;

/// <summary>
/// Twist of a rail from two tracks along it: twist = (zA - zB) / distance at each station (um / mm = mrad). Only differences between stations say something: the height that a
/// track starts from is the dial's. A rail and a stand that nobody moved between the tracks are needed, for here tilt counts: a drift along one track is taken for twist.
/// </summary>
/// <remarks>Tracks 6 mm apart read with a 0.01 mm dial to whole divisions: 0.7 mrad of noise a station; a 60 mm bar across the carriage: 0.07 (sqrt 2 x 10 um / sqrt 12 / distance).</remarks>
public sealed record TwistTracks
{
    /// <summary>Share of cases without twist in which each of the two questions (total, uneven) is answered rightly.</summary>
    private const double Sure = 0.975;

    private readonly FixedList<double> _twist;

    private TwistTracks(Profile first, Profile second, double distanceMm, IReadOnlyList<double> stationUm, double freedom, double tiltUm, double tiltFreedom, double distanceUncertaintyMm)
    {
        (First, Second, DistanceMm, AreTiltsKnown) = (first, second, distanceMm, tiltUm > 0);
        var x = first.PositionsMm;
        var difference = Enumerable.Range(0, x.Count).Select(i => first.HeightsUm[i] - second.HeightsUm[i]).ToArray();
        _twist = FixedList<double>.Own(Array.ConvertAll(difference, z => z / distanceMm));
        RangeMrad = _twist.Max() - _twist.Min();
        NoiseMrad = Math.Sqrt(stationUm.Average(u => u * u)) / distanceMm;
        FloorMrad = StudentizedRange.Of(Sure, x.Count, freedom) * NoiseMrad;

        // The line through all stations, from the first to the last.
        var length = x[^1] - x[0];
        var level = SweepEdits.Level(x, difference, out var slope);
        UnevenMrad = (level.Max() - level.Min()) / distanceMm;
        var (mean, squares) = (x.Average(), 0.0);
        foreach (var at in x)
            squares += (at - mean) * (at - mean);
        var noiseUm = length * Math.Sqrt(Enumerable.Range(0, x.Count).Sum(i => Square((x[i] - mean) / squares * stationUm[i])));
        DoTiltsDominate = tiltUm * length > noiseUm;

        // The scatter of the passes' tilts holds the readings' own scatter already.
        var (u, nu) = DoTiltsDominate ? (tiltUm * length, tiltFreedom) : (noiseUm, freedom);
        TotalMrad = Uncertain.Input(new object(), "heights of the two tracks", slope * length, u, nu) / Uncertain.Input(new object(), "distance between the tracks", distanceMm, distanceUncertaintyMm, double.PositiveInfinity);
    }

    /// <summary>Track A.</summary>
    public Profile First { get; }

    /// <summary>Track B, over the same stations.</summary>
    public Profile Second { get; }

    /// <summary>From track to track, mm.</summary>
    public double DistanceMm { get; }

    /// <summary>Twist at each station of <see cref="First"/>, mrad: (zA - zB) / distance.</summary>
    public IReadOnlyList<double> TwistMrad => _twist;

    /// <summary>Twist from the first to the last station by the least-squares line, mrad, with its uncertainty from readings, tilts of the passes, and distance.</summary>
    public Uncertain TotalMrad { get; }

    /// <summary>Largest less smallest twist of a station, mrad: what a carriage goes through, noise included.</summary>
    public double RangeMrad { get; }

    /// <summary>The same about the least-squares line, mrad: twist that is not even along the rail. Tilts of the passes are not in it.</summary>
    public double UnevenMrad { get; }

    /// <summary>Standard uncertainty of the twist at one station, mrad: sqrt(uA2 + uB2) / distance.</summary>
    public double NoiseMrad { get; }

    /// <summary>The noise floor: what noise alone keeps <see cref="UnevenMrad"/> below in 97.5 % of cases or more, mrad (studentized range).</summary>
    public double FloorMrad { get; }

    /// <summary>Whether twist can be told from noise, at 5 %: the total is beyond its 97.5 % interval, or what is uneven beyond its floor.</summary>
    public bool IsTwisted => Math.Abs(TotalMrad.Value) > HalfIntervalMrad || UnevenMrad > FloorMrad;

    /// <summary>Whether the scatter of the passes' tilts is in the total's uncertainty.</summary>
    internal bool AreTiltsKnown { get; }

    /// <summary>Whether the passes' tilts differ by more than the readings' own scatter explains.</summary>
    internal bool DoTiltsDominate { get; }

    /// <summary>Half of the total's 97.5 % interval, mrad.</summary>
    internal double HalfIntervalMrad => TotalMrad.StandardUncertainty == 0 ? 0 : TotalMrad.Expanded(Sure).U;

    /// <summary>Twist from two combined sweeps, one for each track.</summary>
    /// <param name="first">Track A.</param>
    /// <param name="second">Track B.</param>
    /// <param name="distanceMm">From track to track, mm, above 0: measure it, it can't be told from the readings.</param>
    /// <param name="distanceUncertaintyMm">Its standard uncertainty, mm, 0 or more.</param>
    /// <exception cref="ArgumentOutOfRangeException">The distance is not above 0, or its uncertainty negative.</exception>
    /// <exception cref="InputException">
    /// Other stations, fewer than 3, one of them twice, a filtered profile, another rail or face, one track twice; or nothing says how well a reading repeats (neither repeated passes nor a set-up).
    /// </exception>
    public static TwistTracks Of(PooledSweep first, PooledSweep second, double distanceMm, double distanceUncertaintyMm = 0)
    {
        ArgumentNullException.ThrowIfNull(first);
        ArgumentNullException.ThrowIfNull(second);
        CheckDistance(distanceMm, distanceUncertaintyMm);
        if (ReferenceEquals(first, second))
            throw Problem(second.Sweep.Source, "one track given twice", "two tracks along the rail");
        if (first.Sweep.Rail != second.Sweep.Rail || first.Sweep.Face != second.Sweep.Face)
            throw Problem(second.Sweep.Source, $"{second.Sweep.Name} as the second track", $"{first.Sweep.Name} as the first");
        if (first.Sweep.Track is { } track && track == second.Sweep.Track)
            throw Problem(second.Sweep.Source, $"the track {ProblemList.Shown(track)} in both sweeps", "two tracks along the rail");
        CheckStations(first.Profile, first.Sweep.Source, second.Profile, second.Sweep.Source);
        var (a, b) = (StationErrors(first), StationErrors(second));
        var stations = a.StationUm.Zip(b.StationUm, (ua, ub) => Math.Sqrt((ua * ua) + (ub * ub))).ToArray();
        var (tilt, freedom) = Combined(TiltUm(first), first.Passes.Count - 1, TiltUm(second), second.Passes.Count - 1);
        var (_, readingFreedom) = Combined(a.StationUm.Max(), a.StationDegreesOfFreedom, b.StationUm.Max(), b.StationDegreesOfFreedom);
        return new TwistTracks(first.Profile, second.Profile, distanceMm, stations, readingFreedom, tilt, freedom, distanceUncertaintyMm);
    }

    /// <summary>Twist from two profiles.</summary>
    /// <param name="first">Track A.</param>
    /// <param name="second">Track B, over the same stations.</param>
    /// <param name="distanceMm">From track to track, mm, above 0.</param>
    /// <param name="heightUncertaintyUm">Standard uncertainty of a height of either track, um, 0 or more.</param>
    /// <param name="distanceUncertaintyMm">Standard uncertainty of the distance, mm, 0 or more.</param>
    /// <exception cref="ArgumentOutOfRangeException">The distance is not above 0, or an uncertainty negative.</exception>
    /// <exception cref="InputException">Other stations, fewer than 3, one of them twice, or a filtered profile.</exception>
    public static TwistTracks Of(Profile first, Profile second, double distanceMm, double heightUncertaintyUm, double distanceUncertaintyMm = 0)
    {
        ArgumentNullException.ThrowIfNull(first);
        ArgumentNullException.ThrowIfNull(second);
        CheckDistance(distanceMm, distanceUncertaintyMm);
        if (!(heightUncertaintyUm >= 0 && double.IsFinite(heightUncertaintyUm)))
            throw new ArgumentOutOfRangeException(nameof(heightUncertaintyUm), heightUncertaintyUm, "A standard uncertainty is 0 um or more.");
        CheckStations(first, first.Name.Length == 0 ? "first track" : first.Name, second, second.Name.Length == 0 ? "second track" : second.Name);
        var stations = Enumerable.Repeat(Math.Sqrt(2) * heightUncertaintyUm, first.Count).ToArray();
        return new TwistTracks(first, second, distanceMm, stations, double.PositiveInfinity, 0, double.PositiveInfinity, distanceUncertaintyMm);
    }

    /// <summary>What differs from station to station: from the set-up and the repeats, or from these alone.</summary>
    private static ProfileErrors StationErrors(PooledSweep track)
        => track.Errors
            ?? (track.RepeatabilityUm is { } s ? new ProfileErrors([.. track.Means.Counts.Select(n => s / Math.Sqrt(n))], track.DegreesOfFreedom, []) : null)
            ?? throw Problem(track.Sweep.Source, $"{track.Sweep.Name} swept once and without a set-up", "repeated passes, or a set-ups file with the dial's division: nothing says how well a reading repeats");

    /// <summary>Standard uncertainty of a track's tilt by the scatter of its passes' tilts, um/mm; 0 for a single pass.</summary>
    private static double TiltUm(PooledSweep track)
        => track.Passes.Count < 2 ? 0 : new Sample(track.Passes.Select(p => p.TiltUmPerM / 1000)).StandardDeviation / Math.Sqrt(track.Passes.Count);

    // Welch-Satterthwaite (JCGM 100:2008, G.4.1).
    private static (double U, double Freedom) Combined(double a, double freedomA, double b, double freedomB)
    {
        var fourth = (a > 0 ? Square(a * a) / freedomA : 0) + (b > 0 ? Square(b * b) / freedomB : 0);
        return (Math.Sqrt((a * a) + (b * b)), fourth > 0 ? Math.Max(1, Square((a * a) + (b * b)) / fourth) : double.PositiveInfinity);
    }

    private static void CheckStations(Profile first, string firstSource, Profile second, string secondSource)
    {
        StationMatch.Check(first, firstSource);
        StationMatch.Check(second, secondSource);
        StationMatch.Check(first, "first track", second, "second track", secondSource);
    }

    private static void CheckDistance(double distanceMm, double distanceUncertaintyMm)
    {
        if (!(distanceMm > 0 && double.IsFinite(distanceMm)))
            throw new ArgumentOutOfRangeException(nameof(distanceMm), distanceMm, "The distance between the tracks, mm, is above 0.");
        if (!(distanceUncertaintyMm >= 0 && double.IsFinite(distanceUncertaintyMm)))
            throw new ArgumentOutOfRangeException(nameof(distanceUncertaintyMm), distanceUncertaintyMm, "A standard uncertainty is 0 mm or more.");
    }

    private static double Square(double x) => x * x;

    private static InputException Problem(string source, string found, string expected) => new(new InputProblem(source, null, null, found, expected));
}
