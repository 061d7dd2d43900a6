using System;
using System.Collections.Generic;
using System.Globalization;
using System.Linq;
using System.Threading;

namespace Waywright;

/// <summary>What a step made of one sweep.</summary>
internal sealed record SweepFinding(Sweep Sweep, IReadOnlyList<CleanedReading> Changed, IReadOnlyList<CleanedReading> Flagged, IReadOnlyList<string> Notes)
{
    public static SweepFinding Nothing(Sweep sweep, params string[] notes) => new(sweep, [], [], notes);
}

/// <summary>Runs the steps over each sweep, in their order, until a round changes nothing: so cleaning what is clean changes nothing.</summary>
internal sealed class CleaningChain
{
    private readonly CleaningOptions _options;
    private readonly (string Name, Func<Sweep, SweepFinding> Clean, Func<Tally, string> Found)[] _steps;
    private readonly Tally[] _tallies;

    public CleaningChain(CleaningOptions options)
    {
        _options = options;
        _steps =
        [
            ("roll-over", s => RollOver.Clean(s, options.TurnUm), RollOverFound),
            ("sign", s => MirroredPasses.Clean(s, options.FlipMirrored), SignFound),
            ("spikes", s => Spikes.Clean(s, options), SpikesFound),
            ("retrace", s => SweepFinding.Nothing(s, Retrace.Note(s)), _ => ""),
            ("drift", s => SweepFinding.Nothing(s, PassTilts.Note(s)), _ => ""),
        ];
        _tallies = [.. _steps.Select(_ => new Tally())];
    }

    public CleanedBatch Clean(SweepBatch batch, CancellationToken cancel)
    {
        var sweeps = new Sweep[batch.Sweeps.Count];
        for (var i = 0; i < sweeps.Length; i++)
        {
            cancel.ThrowIfCancellationRequested();
            sweeps[i] = Clean(batch.Sweeps[i]);
        }

        var after = _tallies.Any(t => t.Changed.Count > 0) ? new SweepBatch(batch.Source, FixedList<Sweep>.Own(sweeps), batch.ReadAs) : batch;
        var steps = _steps.Select((step, i) => new CleaningStep(step.Name, Found(i, sweeps), FixedList<CleanedReading>.Copy(_tallies[i].Changed), FixedList<CleanedReading>.Copy(_tallies[i].Flagged), FixedList<string>.Copy(_tallies[i].Notes)));
        return new CleanedBatch(batch, after, _options, FixedList<CleaningStep>.Copy(steps));
    }

    private Sweep Clean(Sweep sweep)
    {
        // What is flagged is the last round's; what is changed adds up.
        SweepFinding[] last;
        do
        {
            last = new SweepFinding[_steps.Length];
            for (var i = 0; i < _steps.Length; i++)
            {
                last[i] = _steps[i].Clean(sweep);
                sweep = last[i].Sweep;
                _tallies[i].Changed.AddRange(last[i].Changed);
            }
        }
        while (last.Any(f => f.Changed.Count > 0));
        for (var i = 0; i < last.Length; i++)
        {
            _tallies[i].Flagged.AddRange(last[i].Flagged);
            _tallies[i].Notes.AddRange(last[i].Notes.Where(n => n.Length > 0));
        }

        return sweep;
    }

    private string Found(int step, Sweep[] sweeps) => _steps[step].Name switch
    {
        "retrace" => Retrace.Found(sweeps),
        "drift" => PassTilts.Found(sweeps),
        _ => _steps[step].Found(_tallies[step]),
    };

    private string RollOverFound(Tally tally)
    {
        if (_options.TurnUm is not { } turn)
            return "Nothing changed: no turn of the pointer was given, so roll-over was not looked for.";
        var text = NumberText.Plain(turn);
        return tally.Changed.Count > 0
            ? $"{Readings(tally.Changed)} moved by a whole turn of {text} um."
            : $"Nothing changed: no jump of about a turn ({text} um) between neighbouring stations.{(tally.Notes.Count > 0 ? $" Jumps to look at in {Count(tally.Notes.Count, "pass")}." : "")}";
    }

    private static string SignFound(Tally tally)
    {
        if (tally.Changed.Count > 0)
            return $"{Passes(tally.Changed)} got the opposite sign.";
        if (tally.Flagged.Count > 0)
            return $"Nothing changed: {Passes(tally.Flagged)} {(tally.Flagged.Select(r => (r.Rail, r.Face, r.Pass)).Distinct().Count() == 1 ? "mirrors the other passes; flip it if it was" : "mirror the other passes; flip them if they were")} read with the opposite sign.";
        return tally.Notes.Count > 0 ? $"Nothing changed: {tally.Notes[0]}" : "Nothing changed: no pass mirrors the others of its face.";
    }

    private string SpikesFound(Tally tally)
    {
        var flagged = tally.Flagged.Count > 0 ? $"{Readings(tally.Flagged)} flagged as {(tally.Flagged.Count == 1 ? "a spike" : "spikes")}" : "";
        if (tally.Changed.Count > 0)
            return $"{Readings(tally.Changed)} dropped as {(tally.Changed.Count == 1 ? "a spike" : "spikes")}{(flagged.Length > 0 ? $"; {flagged} and kept" : "")}.";
        if (flagged.Length > 0)
            return $"Nothing changed: {flagged}{(_options.DropSpikes ? " and kept" : "")}.";
        return $"Nothing changed: no reading is a spike.{(tally.Notes.Count > 0 ? $" {Count(tally.Notes.Count, "face")} could not be judged in full." : "")}";
    }

    private static string Readings(List<CleanedReading> readings)
        => $"{Count(readings.Count, "reading")} of {Some(readings.Select(r => NameOf(r.Rail, r.Face)).Distinct().ToArray())}";

    private static string Passes(List<CleanedReading> readings)
        => Some(readings.Select(r => $"{NameOf(r.Rail, r.Face)} {r.Pass}").Distinct().ToArray());

    /// <summary>The first names of a list, and how many more.</summary>
    private static string Some(string[] names) => names.Length <= 3 ? string.Join(" and ", names) : $"{string.Join(", ", names[..2])} and {(names.Length - 2).ToString(CultureInfo.InvariantCulture)} more";

    private static string NameOf(string? rail, RailFace? face) => rail is null ? "the profile" : $"{rail} {(face == RailFace.Top ? "top" : "side")}";

    private static string Count(int count, string what) => string.Create(CultureInfo.InvariantCulture, $"{count} {what}{(count == 1 ? "" : what.EndsWith('s') ? "es" : "s")}");

    private sealed class Tally
    {
        public List<CleanedReading> Changed { get; } = [];

        public List<CleanedReading> Flagged { get; } = [];

        public List<string> Notes { get; } = [];
    }
}
