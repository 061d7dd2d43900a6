using System;
using System.Collections.Generic;
using System.Linq;

namespace Waywright;

/// <summary>A recording of a plucked span, with its plucks.</summary>
public sealed record PluckTake
{
    private PluckTake(string source, MainsHum? hum, IEnumerable<Pluck> plucks)
    {
        (Source, MainsHumHz) = (source, hum?.FrequencyHz);
        Plucks = FixedList<Pluck>.Copy(plucks);
    }

    /// <summary>The file as the caller named it.</summary>
    public string Source { get; }

    /// <summary>Mains hum that was taken out, Hz; null where there was none to be seen.</summary>
    public double? MainsHumHz { get; }

    /// <summary>The plucks, in their order.</summary>
    public IReadOnlyList<Pluck> Plucks { get; }

    /// <summary>Analyses a recording.</summary>
    public static PluckTake Analyse(PluckRecording recording, PluckSearch? search = null)
    {
        ArgumentNullException.ThrowIfNull(recording);
        search ??= new PluckSearch();
        var signal = PluckSignal.Of(recording);
        var starts = PluckOnsets.Of(signal);
        var hum = MainsHum.Find(signal, starts[0] - signal.Count(0.01), search.MainsHz);
        if (hum is not null)
        {
            signal = signal.Less(hum.Wave);
            starts = PluckOnsets.Of(signal);
        }

        return new(recording.Source, hum, starts.Select((start, i) => PluckAnalyser.Of(signal, PluckStretch.Of(signal, start, i + 1 < starts.Count ? starts[i + 1] - signal.Count(0.01) : signal.Samples.Length, i == 0), search)));
    }
}
