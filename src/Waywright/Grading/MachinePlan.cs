using System;
using System.Collections.Generic;
using System.Linq;

namespace Waywright;

/// <summary>The places of a machine that want a rail, from <c>positions.json</c>: the builder's own names and needs.</summary>
public sealed record MachinePlan
{
    internal MachinePlan(string source, int machines, IEnumerable<MachinePosition> positions) => (Source, Machines, Positions) = (source, machines, FixedList<MachinePosition>.Copy(positions));

    /// <summary>The file as the caller named it.</summary>
    public string Source { get; }

    /// <summary>How many machines of this kind are built from one stock of rails.</summary>
    public int Machines { get; }

    /// <summary>The positions of one machine, in the file's order.</summary>
    public IReadOnlyList<MachinePosition> Positions { get; }

    /// <summary>How many rails it takes for all machines.</summary>
    public int RailCount => Machines * Positions.Sum(p => p.Count);

    /// <summary>
    /// Reads <c>{"machines":1,"positions":[{"name":...}]}</c>: <c>name</c>, <c>width_mm</c>, <c>length_mm</c>, <c>grade</c> (the lowest that will do), <c>face</c>
    /// (<c>side</c> or <c>top</c>) and, where wanted, <c>weight</c> (1), <c>pair</c> (the position whose rail's shape it should match), <c>count</c> (1), <c>ends</c>
    /// (what stands at the near and the far end: <c>["front","back"]</c>), <c>note</c>.
    /// </summary>
    /// <param name="path">The file; docs/positions.schema.json is its JSON Schema.</param>
    /// <exception cref="InputException">
    /// The file can't be read, isn't JSON, misses a value, has one too many or out of range, names a position twice, or a pair isn't two positions of the same length, face and
    /// count that are in no other pair.
    /// </exception>
    public static MachinePlan Read(string path) => Parse(TextSource.ReadAll(path), path);

    /// <summary>Reads the same from a text.</summary>
    /// <param name="json">The document.</param>
    /// <param name="source">What messages call it.</param>
    /// <exception cref="InputException">As <see cref="Read"/>.</exception>
    public static MachinePlan Parse(string json, string source)
    {
        ArgumentNullException.ThrowIfNull(json);
        return MachinePlanReader.Read(json, source);
    }

    /// <summary>The position of that name, or null.</summary>
    public MachinePosition? Find(string name) => Positions.FirstOrDefault(p => p.Name == name);
}

/// <summary>A place that wants a rail.</summary>
/// <param name="Name">The builder's name for it.</param>
/// <param name="WidthMm">Width of the rail, mm, above 0.</param>
/// <param name="LengthMm">Length of the rail, mm, above 0.</param>
/// <param name="Grade">The lowest grade that will do.</param>
/// <param name="Face">The face whose straightness matters here.</param>
/// <param name="Weight">Importance: what 1 um counts here beside 1 um elsewhere, 0.001 to 1,000.</param>
/// <param name="Pair">The position whose rail's shape this one should match; null when it stands alone.</param>
/// <param name="Count">How many of them a machine has.</param>
/// <param name="NearEnd">What stands at its near end, x = 0 of the place. The places of a pair count from the same end of the machine.</param>
/// <param name="FarEnd">What stands at its far end.</param>
public sealed record MachinePosition(
    string Name,
    double WidthMm,
    double LengthMm,
    string Grade,
    RailFace Face,
    double Weight = 1,
    string? Pair = null,
    int Count = 1,
    string NearEnd = "near end",
    string FarEnd = "far end")
{
    /// <summary>Line and column of the grade in its file: only whoever knows the rules can tell that it is none of them.</summary>
    internal (int Line, int Column)? GradeAt { get; init; }
}
