using System;
using System.Collections.Generic;
using System.Linq;
using UnitsNet;

namespace Waywright;

/// <summary>
/// How hard carriages are to push along rails, from <c>drag.csv</c>: columns <c>rail,carriage,direction,position_mm,force_n</c> and, where the hand felt something, <c>note</c>.
/// A place binds only if it stays with the rail in both directions and with two carriages; what moves with a carriage, or comes one way only, is no fault of the rail.
/// </summary>
/// <remarks>
/// A run is one carriage pulled along one rail without a stop: rows that stand together in the order in which they were read, positions rising <c>forward</c> and falling
/// <c>back</c>. A new one begins where rail, carriage or direction changes, or the position does not go on.
/// Start-up: the first reading of a run, and those after it while they fall and are high; it is in no other figure, and a place that lies in it was not gone over.
/// High is more than 3 x 1.4826 x MAD and more than 25 % above the median of the run, so a place takes less than half of a run. Stretches up to 10 mm apart are one place; a carriage has it in a
/// direction if more than half of its runs over the middle of the place do. These limits are common practice, no source.
/// Figures belong to rail, carriage and grease together, and have no uncertainty: the gauge's is not in the file.
/// A row without a force but with a note is kept as the note.
/// </remarks>
public sealed record DragLog
{
    // Normal gravity at sea level is 9.780 m/s2 at the equator and 9.832 at the poles (GRS 80, from memory); up to 1 km above it is within these limits.
    private const double StandardGravity = 9.80665;
    private const double GravityWithin = 0.03;

    internal DragLog(string source, string readAs, IEnumerable<CarriageDrag> carriages, IReadOnlyList<DragRun> runs, GradeRules rules)
    {
        Rules = rules;
        (Source, ReadAs) = (source, readAs);
        Carriages = FixedList<CarriageDrag>.Copy(carriages);
        Places = FixedList<DragPlace>.Copy(DragPlaces.Of(runs));
    }

    /// <summary>The file as the caller named it.</summary>
    public string Source { get; }

    /// <summary>How the file was taken: separator, decimal mark, unused columns.</summary>
    public string ReadAs { get; }

    /// <summary>Whose limits on the spread it is told by.</summary>
    public GradeRules Rules { get; }

    /// <summary>Rails with carriages, in the order in which the file first names them.</summary>
    public IReadOnlyList<CarriageDrag> Carriages { get; }

    /// <summary>Places of higher drag: those that stay with the rail first, then by <see cref="DragCause"/>.</summary>
    public IReadOnlyList<DragPlace> Places { get; }

    /// <summary>The drag of a carriage on a rail, or null.</summary>
    public CarriageDrag? Find(string rail, string carriage) => Carriages.FirstOrDefault(c => c.Rail == rail && c.Carriage == carriage);

    /// <summary>Reads a file.</summary>
    /// <param name="path">The file.</param>
    /// <param name="rules">Limits on the spread to tell it by; the starting ones when not given. Grading goes by its own.</param>
    /// <exception cref="InputException">No such file, a column missing, a value missing or wrong, a run of fewer than 5 readings, or one whose median force is 0; all of them are listed.</exception>
    public static DragLog Read(string path, GradeRules? rules = null)
    {
        ArgumentException.ThrowIfNullOrWhiteSpace(path);
        using var table = TableReader.Open(path);
        return new DragLogReader(table).Read(path, rules ?? GradeRules.Starting);
    }

    /// <summary>Reads a text as if it were the file <paramref name="source"/>.</summary>
    /// <param name="text">The rows.</param>
    /// <param name="source">What messages call it.</param>
    /// <param name="rules">As for <see cref="Read"/>.</param>
    /// <exception cref="InputException">As for <see cref="Read"/>.</exception>
    public static DragLog Parse(string text, string source, GradeRules? rules = null)
    {
        ArgumentNullException.ThrowIfNull(text);
        ArgumentException.ThrowIfNullOrWhiteSpace(source);
        using var table = TableReader.Parse(text, source);
        return new DragLogReader(table).Read(source, rules ?? GradeRules.Starting);
    }

    /// <summary>
    /// Drag without a gauge: F = m g sin(theta), for the tilt at which a carriage, once tapped, keeps sliding at an even speed. At the tilt at which it starts by itself it is the start-up.
    /// g is 9.80665 m/s2 within 0.03, wherever the bench stands below 1 km. Uncertainty to first order (JCGM 100:2008, 5.1.2).
    /// </summary>
    /// <param name="mass">Of all that slides, above 0.</param>
    /// <param name="tilt">Of the rail against the level, above 0 and below 90 degrees.</param>
    /// <exception cref="ArgumentOutOfRangeException">The mass or the tilt is outside its range.</exception>
    public static Measured<Force> ForceFromTilt(Measured<Mass> mass, Measured<Angle> tilt)
    {
        ArgumentNullException.ThrowIfNull(mass);
        ArgumentNullException.ThrowIfNull(tilt);
        if (!(mass.Si.Value > 0))
            throw new ArgumentOutOfRangeException(nameof(mass), mass.ToString(), "The mass of what slides is above 0.");
        if (tilt.Si.Value is not (> 0 and < Math.PI / 2))
            throw new ArgumentOutOfRangeException(nameof(tilt), tilt.ToString(), "The tilt is above 0 and below 90 degrees.");
        var angle = tilt.AsInput("tilt").Si;
        var gravity = Uncertain.Input("local gravity", StandardGravity, GravityWithin / Math.Sqrt(3));
        var force = mass.AsInput("mass").Si * gravity * Uncertain.Of(Math.Sin(angle.Value), [angle], [Math.Cos(angle.Value)]);
        return Quantity.FromSi<Force>(force, "F = m g sin(tilt) from mass, tilt and local gravity, to first order");
    }
}
