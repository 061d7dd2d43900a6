using System;
using System.Collections.Generic;
using System.Linq;

namespace Waywright;

/// <summary>
/// The rails of a build, from <c>rails.csv</c>: columns <c>rail,width_mm,length_mm,pitch_mm,end_distance_mm</c>, optionally <c>counterbore_mm</c> (diameter), <c>mass_g</c> and
/// <c>note</c>, one row for each rail. Other columns are not used, and <see cref="ReadAs"/> names them.
/// </summary>
public sealed record RailStock
{
    internal RailStock(string source, string readAs, IEnumerable<Rail> rails) => (Source, ReadAs, Rails) = (source, readAs, FixedList<Rail>.Copy(rails));

    /// <summary>The file as the caller named it.</summary>
    public string Source { get; }

    /// <summary>How the file was taken: separators, decimal mark, columns that were passed over.</summary>
    public string ReadAs { get; }

    /// <summary>In the file's order.</summary>
    public IReadOnlyList<Rail> Rails { get; }

    /// <summary>Reads a file.</summary>
    /// <param name="path">The file.</param>
    /// <exception cref="InputException">The file can't be read, a column is missing, a rail is there twice or has no name, a size is missing, not above 0, or at odds with another.</exception>
    public static RailStock Read(string path)
    {
        ArgumentException.ThrowIfNullOrWhiteSpace(path);
        using var table = TableReader.Open(path);
        return new RailStockReader(table).Read(path);
    }

    /// <summary>Reads the same from a text.</summary>
    /// <param name="text">The table.</param>
    /// <param name="source">What messages call it.</param>
    /// <exception cref="InputException">As for <see cref="Read"/>.</exception>
    public static RailStock Parse(string text, string source)
    {
        ArgumentNullException.ThrowIfNull(text);
        using var table = TableReader.Parse(text, source);
        return new RailStockReader(table).Read(source);
    }

    /// <summary>The rail of that name, or null; capitals matter.</summary>
    public Rail? Find(string name) => Rails.FirstOrDefault(r => r.Name == name);

    /// <summary>One rail as its maker and a caliper describe it. Positions count from the end with the dot.</summary>
    /// <param name="Name">Its name, as sweeps give it.</param>
    /// <param name="WidthMm">Width, mm, above 0.</param>
    /// <param name="LengthMm">Length, mm, above 0.</param>
    /// <param name="PitchMm">From hole to hole, mm, above 0.</param>
    /// <param name="EndDistanceMm">From the end with the dot to the first hole's middle, mm, above 0.</param>
    /// <param name="CounterboreMm">Diameter of the counterbores, mm; null when not stated.</param>
    /// <param name="MassG">Mass, g; null when not stated.</param>
    /// <param name="Note">What somebody wrote beside it; may be empty.</param>
    public sealed record Rail(string Name, double WidthMm, double LengthMm, double PitchMm, double EndDistanceMm, double? CounterboreMm, double? MassG, string Note)
    {
        // A length read to a tenth may end a hair before or after a hole.
        private const double Slack = 1e-9;

        /// <summary>Middles of the holes, mm from the dot: end distance + k pitch, as many as the rail holds.</summary>
        public IReadOnlyList<double> HolesMm
            => FixedList<double>.Copy(Enumerable.Range(0, HoleCount).Select(k => EndDistanceMm + (k * PitchMm)));

        /// <summary>From the last hole's middle to the far end, mm.</summary>
        public double FarEndDistanceMm => LengthMm - HolesMm[^1];

        /// <summary>
        /// Where to read a dial, mm from the dot: midway between neighbouring holes (at even steps of about 25 mm where holes are far apart, closer where the rail is short) and near both
        /// ends; 8 or more. Common practice, no source.
        /// </summary>
        public IReadOnlyList<double> StationsMm => RailStations.Of(LengthMm, PitchMm, HolesMm);

        /// <summary>Middle of the hole that is nearest to a position, mm.</summary>
        internal double NearestHoleMm(double positionMm)
            => EndDistanceMm + (Math.Clamp(Math.Round((positionMm - EndDistanceMm) / PitchMm), 0, HoleCount - 1) * PitchMm);

        private int HoleCount => 1 + Math.Max(0, (int)Math.Floor(((LengthMm - EndDistanceMm) / PitchMm) - Slack));
    }
}
