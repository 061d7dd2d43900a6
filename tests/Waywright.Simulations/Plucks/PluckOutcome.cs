namespace Waywright.Simulations.Plucks;

/// <summary>Errors of one take, cents; a note that was not found counts as an error without end.</summary>
internal sealed record PluckOutcome(double TruthHz, double KitCents, double FitCents, double AllCents, bool IsUsable, string Reason, double PeakCents, double AutocorrelationCents, double HarmonicSumCents)
{
    public static PluckOutcome Of(InventedTake take, ulong seed)
    {
        var recording = WavReader.Read(take.Wav(seed), "take");
        var plucks = PluckTake.Analyse(recording).Plucks;
        var pluck = plucks.MaxBy(p => p.IsUsable ? 1 : 0)!;
        var truth = take.Pluck.FrequencyHz;
        var note = pluck.Frequency?.Si;
        var signal = PluckSignal.Of(recording);
        var from = signal.Count(take.QuietSeconds + 0.03);
        var sound = signal.Samples.AsSpan(from, Math.Min(signal.Samples.Length - from, signal.Count(1))).ToArray();
        return new(
            truth,
            note is null ? double.PositiveInfinity : PluckCents.Between(truth, note.Value),
            note is null ? 0 : PluckCents.Of(pluck.FitUncertaintyHz, note.Value),
            note is null ? 0 : PluckCents.Of(note.StandardUncertainty, note.Value),
            pluck.IsUsable,
            pluck.Reasons.Count > 0 ? pluck.Reasons[0] : "",
            PluckCents.Between(truth, SimplePitch.Peak(sound, signal.Rate)),
            PluckCents.Between(truth, SimplePitch.Autocorrelation(sound, signal.Rate)),
            PluckCents.Between(truth, SimplePitch.HarmonicSum(sound, signal.Rate)));
    }
}
