namespace Waywright.Placement;

/// <summary>How rails are told to fit, and how long is searched.</summary>
/// <param name="Effort">
/// Most work of the solver, in its own deterministic time (roughly seconds of one core, but counted in steps), above 0 to 10,000. The same effort gives the same answer on every run:
/// no clock is read.
/// </param>
/// <param name="WidthToleranceMm">How far a rail's width may be from the width asked for, mm, 0 to 1. Common practice, no source.</param>
/// <param name="LengthToleranceMm">How far a rail's length may be from the length asked for, mm, 0 to 100. Common practice, no source.</param>
/// <exception cref="ArgumentOutOfRangeException">A value is outside its range.</exception>
public sealed record PlacementOptions(double Effort = 60, double WidthToleranceMm = 0.2, double LengthToleranceMm = 1)
{
    /// <summary>Most work of the solver, in its deterministic time.</summary>
    public double Effort { get; } = Effort is > 0 and <= 10_000 ? Effort : throw new ArgumentOutOfRangeException(nameof(Effort), Effort, "An effort above 0 and up to 10,000 is needed.");

    /// <summary>How far a rail's width may be off, mm.</summary>
    public double WidthToleranceMm { get; } = Within(WidthToleranceMm, 1, nameof(WidthToleranceMm));

    /// <summary>How far a rail's length may be off, mm.</summary>
    public double LengthToleranceMm { get; } = Within(LengthToleranceMm, 100, nameof(LengthToleranceMm));

    private static double Within(double value, double most, string name)
        => value >= 0 && value <= most ? value : throw new ArgumentOutOfRangeException(name, value, $"A length from 0 to {most.ToString(System.Globalization.CultureInfo.InvariantCulture)} mm is needed.");
}
