using System;
using System.Collections.Generic;
using System.Linq;

namespace Waywright;

/// <summary>The set-ups of a build, from <c>setups.json</c>.</summary>
public sealed record SetupBook
{
    private SetupBook(string source, IReadOnlyList<Setup> setups) => (Source, Setups) = (source, setups);

    /// <summary>The file as the caller named it.</summary>
    public string Source { get; }

    /// <summary>In the file's order.</summary>
    public IReadOnlyList<Setup> Setups { get; }

    /// <summary>
    /// Reads <c>{"setups":[{"id":...}]}</c>: <c>id</c>, <c>guide</c>, <c>guide_known_from</c>, <c>guide_straightness_um</c>, <c>probe</c>, <c>held</c>, <c>instrument</c>,
    /// and, where known, <c>force_n</c>, <c>temperature_c</c>, <c>lever_angle_deg</c>, <c>lever_angle_u_deg</c>, <c>rail</c>, <c>note</c>.
    /// </summary>
    /// <remarks>
    /// <c>held</c>: <c>two supports at 71 mm, 249 mm</c>, <c>on a plate</c>, <c>screwed to base</c>, or <c>clamped at 20 mm, 300 mm</c>. <c>instrument</c>: <c>name</c>,
    /// <c>division_um</c>, <c>read_to</c>; then either <c>range_mm</c> and <c>turn_mm</c> (and <c>small</c>) of a dial in good order, see <see cref="DialLimits.Jis7503"/>, or
    /// <c>permissible_error_um</c>; and <c>repeatability_um</c>, <c>retrace_um</c> where tried. <c>rail</c>: <c>length_mm</c>, <c>bending_stiffness_top_nm2</c>,
    /// <c>bending_stiffness_side_nm2</c>, <c>mass_kg_per_m</c>, and <c>stiffness_u_percent</c> where known: with it, bending by weight and measuring force is corrected.
    /// </remarks>
    /// <param name="path">The file; docs/setups.schema.json is its JSON Schema.</param>
    /// <exception cref="InputException">The file can't be read, isn't JSON, misses a value, has one too many or out of range, or names a set-up twice.</exception>
    public static SetupBook Read(string path) => Parse(TextSource.ReadAll(path), path);

    /// <summary>Reads the same from a text.</summary>
    /// <param name="json">The document.</param>
    /// <param name="source">What messages call it.</param>
    /// <exception cref="InputException">As <see cref="Read"/>.</exception>
    public static SetupBook Parse(string json, string source)
    {
        ArgumentNullException.ThrowIfNull(json);
        return new SetupBook(source, SetupReader.Read(json, source));
    }

    /// <summary>The set-up of that name, or null.</summary>
    public Setup? Find(string id) => Setups.FirstOrDefault(s => s.Id == id);
}
