using System;
using System.Collections.Generic;
using System.Linq;
using UnitsNet;

namespace Waywright;

/// <summary>The note of a span from all usable plucks of several takes: their median, its u as for the plucks of one take.</summary>
public sealed record PluckNote
{
    private PluckNote(IEnumerable<PluckTake> takes)
    {
        Takes = FixedList<PluckTake>.Copy(takes);
        var plucks = PluckAgreement.Checked(FixedList<Pluck>.Copy(Takes.SelectMany(t => t.Plucks).Where(p => p.IsUsable)));
        Disagreement = plucks.SelectMany(p => p.Reasons).FirstOrDefault();
        UsedPlucks = plucks.Count(p => p.IsUsable);
        Frequency = PluckAgreement.Note(plucks.Where(p => p.IsUsable));
    }

    /// <summary>The takes.</summary>
    public IReadOnlyList<PluckTake> Takes { get; }

    /// <summary>How many plucks the note comes from.</summary>
    public int UsedPlucks { get; }

    /// <summary>The note; null where no pluck is usable or they disagree.</summary>
    public Measured<Frequency>? Frequency { get; }

    /// <summary>What is wrong where takes give different notes; null where they agree.</summary>
    public string? Disagreement { get; }

    /// <summary>The result in a sentence, then what to do.</summary>
    public string Verdict => PluckText.Of(this);

    /// <summary>Combines takes of one span under one tension.</summary>
    /// <exception cref="ArgumentException">No take.</exception>
    public static PluckNote Of(params IEnumerable<PluckTake> takes)
    {
        ArgumentNullException.ThrowIfNull(takes);
        var note = new PluckNote(takes);
        return note.Takes.Count > 0 ? note : throw new ArgumentException("One take or more is needed.", nameof(takes));
    }
}
