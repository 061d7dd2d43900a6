using System;
using System.Collections.Generic;
using System.Linq;
using System.Threading;

namespace Waywright;

/// <summary>
/// The sweeps of one file: a tidy table <c>rail,face,pass,direction,position_mm,reading_um</c> (or <c>reading_mm</c>, <c>reading_in</c>, <c>reading_div</c>)
/// with optional <c>setup</c>, <c>lay</c>, <c>track</c>, <c>temperature_c</c>; or a bare profile <c>position_mm,reading_um</c>.
/// Comma, semicolon or tab; decimal point or comma; <c>#</c> comments.
/// </summary>
public sealed record SweepBatch
{
    internal SweepBatch(string source, IReadOnlyList<Sweep> sweeps, string readAs)
        => (Source, Sweeps, ReadAs) = (source, FixedList<Sweep>.Copy(sweeps), readAs);

    /// <summary>The file as the caller named it.</summary>
    public string Source { get; }

    /// <summary>One for each rail and face, in the file's order.</summary>
    public IReadOnlyList<Sweep> Sweeps { get; }

    /// <summary>How the file was taken: separators, decimal mark, unit of the readings, columns that were passed over.</summary>
    public string ReadAs { get; }

    /// <summary>Names of the rails, in the file's order; none for a bare profile.</summary>
    public IReadOnlyList<string> Rails => FixedList<string>.Copy(Sweeps.Select(s => s.Rail).OfType<string>().Distinct());

    /// <summary>Reads a sweeps file.</summary>
    /// <param name="path">The file.</param>
    /// <param name="setups">Set-ups that the column <c>setup</c> names; the only one of a book serves a file without that column.</param>
    /// <exception cref="InputException">The file can't be read, or something in it is wrong: every problem is listed with its line.</exception>
    public static SweepBatch Read(string path, SetupBook? setups = null)
    {
        using var table = TableReader.Open(path);
        return SweepTable.Read(table, path, setups);
    }

    /// <summary>Reads the same from a text.</summary>
    /// <param name="text">The table.</param>
    /// <param name="source">What messages call it.</param>
    /// <param name="setups">As for <see cref="Read"/>.</param>
    /// <exception cref="InputException">As for <see cref="Read"/>.</exception>
    public static SweepBatch Parse(string text, string source, SetupBook? setups = null)
    {
        ArgumentNullException.ThrowIfNull(text);
        using var table = TableReader.Parse(text, source);
        return SweepTable.Read(table, source, setups);
    }

    /// <summary>
    /// Combines the passes of every face, in the file's order. How much a bow varies from lay to lay is taken from all faces of one set-up together,
    /// which tells more than the few lays of one face.
    /// </summary>
    /// <exception cref="InputException">The passes of a face can't be aligned.</exception>
    public IReadOnlyList<PooledSweep> Pool()
    {
        var alone = OnAllCores.Select(Sweeps, s => s.Pool(), default);
        var lays = alone.Where(p => p.Sweep.Setup is not null).GroupBy(p => p.Sweep.Setup!.Id).ToDictionary(g => g.Key, g => BatchLays.Of(g));
        return FixedList<PooledSweep>.Copy(alone.Select(p => p.Sweep.Setup is { } setup ? p with { BatchLays = lays[setup.Id] } : p));
    }

    /// <summary>The sweep of one face, or null.</summary>
    public Sweep? Find(string rail, RailFace face) => Sweeps.FirstOrDefault(s => s.Rail == rail && s.Face == face);

    /// <summary>
    /// The cleaning chain, in this order: roll-over of the pointer, sign of passes that mirror the others, spikes, retrace, drift. Each step says what it changed; without
    /// <paramref name="options"/> nothing is changed, and cleaning a cleaned batch changes nothing. Retrace and drift are told only: a line in a pass is tilt, and alignment takes it off.
    /// </summary>
    /// <param name="options">What may be changed; null: nothing.</param>
    /// <param name="cancel">Ends it early.</param>
    public CleanedBatch Clean(CleaningOptions? options = null, CancellationToken cancel = default) => new CleaningChain(options ?? new CleaningOptions()).Clean(this, cancel);

    /// <summary>Holds every station against the rail it was read on, and gives the batch back when all are in place. A station in a counterbore reads the screw's seat, not the rail.</summary>
    /// <param name="stock">The rails.</param>
    /// <param name="tipRadiusMm">Radius of the dial's tip, mm, 0 or more: top faces are then held against the counterbores (radius + tip). Null: only against the rail's ends.</param>
    /// <exception cref="ArgumentOutOfRangeException">The radius is negative or not finite.</exception>
    /// <exception cref="InputException">A station is off its rail or in a counterbore, a rail is not in the stock, or its counterbores are not stated: all are listed.</exception>
    public SweepBatch Check(RailStock stock, double? tipRadiusMm = null)
    {
        ArgumentNullException.ThrowIfNull(stock);
        StationCheck.Check(this, stock, tipRadiusMm);
        return this;
    }
}
