using System;
using System.Collections.Generic;
using System.Linq;
using UnitsNet;

namespace Waywright;

/// <summary>A recording of a plucked span with its plucks, and the note that they agree on.</summary>
/// <remarks>
/// Order of work: mains hum out, as fitted to the quiet before the first pluck; split at the onsets; which octave; partials followed; least squares of damped partials; see <see cref="Pluck"/> for the uncertainty.
/// Checked by 36 recorded strings of known pitch (Frank Wen's FluidR3 GM samples, MIT; four sets of instrument samples, CC-BY 3.0) and by invented plucks whose note is known: docs/plucks.md.
/// </remarks>
public sealed record PluckTake
{
    private readonly PluckSignal _signal;

    private PluckTake(PluckRecording recording, PluckSignal signal, MainsHum? hum, IEnumerable<Pluck> plucks)
    {
        (Source, _signal, MainsHumHz, Seconds) = (recording.Source, signal, hum?.FrequencyHz, recording.Seconds);
        Plucks = PluckAgreement.Checked(FixedList<Pluck>.Copy(plucks));
        Frequency = PluckAgreement.Note(Plucks.Any(p => p.IsUsable) ? Plucks.Where(p => p.IsUsable) : Plucks.Where(p => p.Frequency is not null));
    }

    /// <summary>The file as the caller named it.</summary>
    public string Source { get; }

    /// <summary>Length of the recording, s.</summary>
    public double Seconds { get; }

    /// <summary>Mains hum that was taken out, Hz; null where there was none to be seen.</summary>
    public double? MainsHumHz { get; }

    /// <summary>The plucks, in their order.</summary>
    public IReadOnlyList<Pluck> Plucks { get; }

    /// <summary>The median of the usable plucks (of all, where none is); null where no note was found.</summary>
    public Measured<Frequency>? Frequency { get; }

    /// <summary>Whether a pluck of it is to be used.</summary>
    public bool IsUsable => Plucks.Any(p => p.IsUsable);

    /// <summary>Why plucks are not to be used, each reason once.</summary>
    public IReadOnlyList<string> Reasons => FixedList<string>.Copy(Plucks.SelectMany(p => p.Reasons).Distinct(StringComparer.Ordinal));

    /// <summary>The result in a sentence, then what to do.</summary>
    public string Verdict => PluckText.Of(this);

    /// <summary>The sound that was analysed, hum taken out.</summary>
    internal PluckSignal Signal => _signal;

    /// <summary>Reads a WAV file and analyses it.</summary>
    /// <exception cref="InputException">No such file; as for <see cref="WavReader"/>.</exception>
    public static PluckTake Read(string path, PluckSearch? search = null)
    {
        ArgumentException.ThrowIfNullOrWhiteSpace(path);
        return Analyse(WavReader.Read(TextSource.ReadBytes(path), path), search);
    }

    /// <summary>Reads and analyses several files on all cores; the answers stand in the order of the files and don't depend on the number of cores.</summary>
    /// <exception cref="InputException">As for <see cref="Read"/>; the problems of all files together.</exception>
    public static IReadOnlyList<PluckTake> ReadAll(IReadOnlyList<string> paths, PluckSearch? search = null)
    {
        ArgumentNullException.ThrowIfNull(paths);
        var read = OnAllCores.Select(
            paths,
            path =>
            {
                try
                {
                    return (Take: Read(path, search), Wrong: (InputException?)null);
                }
                catch (InputException wrong)
                {
                    return (Take: (PluckTake?)null, Wrong: wrong);
                }
            },
            default);
        var problems = read.Where(r => r.Wrong is not null).SelectMany(r => r.Wrong!.Problems).ToArray();
        return problems.Length > 0 ? throw new InputException(problems) : FixedList<PluckTake>.Copy(read.Select(r => r.Take!));
    }

    /// <summary>Analyses a recording.</summary>
    /// <param name="recording">The recording.</param>
    /// <param name="search">What is known of the note; 18 to 420 Hz where null.</param>
    public static PluckTake Analyse(PluckRecording recording, PluckSearch? search = null)
    {
        ArgumentNullException.ThrowIfNull(recording);
        search ??= new PluckSearch();
        var signal = PluckSignal.Of(recording);
        var starts = PluckOnsets.Of(signal);
        var quiet = starts[0] - signal.Count(0.01);
        double? humming = quiet > signal.Count(0.05) ? signal.Power(0, quiet) : null;
        var hum = MainsHum.Find(signal, quiet, search.MainsHz);
        if (hum is not null)
        {
            signal = signal.Less(hum.Wave);
            starts = PluckOnsets.Of(signal);
        }

        return new(recording, signal, hum, starts.Select((start, i) => PluckAnalyser.Of(signal, Stretch(i), search)));

        // Up to 10 ms before the next pluck.
        PluckStretch Stretch(int i) => PluckStretch.Of(signal, starts[i], i + 1 < starts.Count ? starts[i + 1] - signal.Count(0.01) : signal.Samples.Length, i == 0) with { HummingPower = humming };
    }
}
