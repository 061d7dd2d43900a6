using System.Globalization;

namespace Waywright.Notebooks;

/// <summary>Twist of a rail from two tracks.</summary>
internal sealed class TwistTracksView : View<TwistTracks>
{
    private const int Most = 60;

    // A bar that fits across most carriages and stands over both sides of the bench's dial.
    private const double BarMm = 60;

    protected override string Verdict(TwistTracks result)
    {
        var name = result.First.Name.Length == 0 ? "the rail" : result.First.Name;
        if (result.IsTwisted)
            return $"Keep {name} for a place where twist of {Total(result)} from end to end does no harm: it stands out from the noise of the two tracks (uneven by {Two(result.UnevenMrad)} mrad beside, noise floor {Two(result.FloorMrad)} mrad).";
        var finer = result.DoTiltsDominate ? "To see finer, let nothing move from pass to pass, for their tilts differ by more than scatter explains; "
            : result.DistanceMm < BarMm ? $"To see finer, read both ends of a {Shown.Mm(BarMm)} mm bar across the carriage: noise falls from {Two(result.NoiseMrad)} to {Two(result.NoiseMrad * result.DistanceMm / BarMm)} mrad a station; " : "";
        return Shown.First($"{finer}{name} shows no twist beyond noise: {Total(result)} from end to end, uneven by {Two(result.UnevenMrad)} mrad beside, noise floor {Two(result.FloorMrad)} mrad.");
    }

    protected override string Text(TwistTracks result) => $"{Verdict(result)}\n{Table(result)}\n{string.Join('\n', Notes(result))}";

    protected override string Html(TwistTracks result)
        => Markup.View(
            Verdict(result),
            Markup.Table(Table(result), "Twist along the rail"),
            Markup.Details("Station by station", Markup.Table(Stations(result), "Twist at each station") + (result.TwistMrad.Count > Most ? Markup.Note($"{Shown.Count(result.TwistMrad.Count - Most)} more stations are in TwistMrad.") : "")),
            Markup.Details("What it rests on", Markup.List(Notes(result))));

    protected override IEnumerable<Figure> Figures(TwistTracks result, string id)
    {
        // Twist is a ratio of lengths: um/mm is mrad.
        yield return FigureOf.Uncertain($"{id}/total", "twist from the first to the last station", result.TotalMrad, "mrad", Method(result));
        yield return new Figure($"{id}/range", "largest less smallest twist of a station", result.RangeMrad, null, "mrad", method: Method(result), relativeTolerance: 1e-9, absoluteTolerance: 1e-9);
        yield return new Figure($"{id}/uneven", "largest less smallest twist of a station about the line", result.UnevenMrad, null, "mrad", method: Method(result), relativeTolerance: 1e-9, absoluteTolerance: 1e-9);
        yield return new Figure($"{id}/floor", "noise floor of the uneven part, 97.5 %", result.FloorMrad, null, "mrad", method: Method(result), relativeTolerance: 1e-6, absoluteTolerance: 1e-9);
    }

    private static string Method(TwistTracks result) => $"two tracks {Shown.Mm(result.DistanceMm)} mm apart";

    private static TextTable Table(TwistTracks result)
        => new TextTable("figure", "#mrad", "~what it is")
            .Add("total", Shown.ToSpread(result.TotalMrad.Value, result.HalfIntervalMrad), $"from the first to the last station along the line of least squares; 97.5 % interval +/- {Two(result.HalfIntervalMrad)}")
            .Add("range", Two(result.RangeMrad), "largest less smallest twist of a station, noise included")
            .Add("uneven", Two(result.UnevenMrad), "the same about the line")
            .Add("noise", Two(result.NoiseMrad), "standard uncertainty of the twist at one station")
            .Add("floor", Two(result.FloorMrad), "what noise alone keeps 'uneven' below in 97.5 % of cases or more");

    private static TextTable Stations(TwistTracks result)
    {
        var table = new TextTable("#position mm", "#track A um", "#track B um", "#twist mrad");
        for (var i = 0; i < Math.Min(Most, result.TwistMrad.Count); i++)
        {
            table.Add(Shown.Mm(result.First.PositionsMm[i]), Shown.Um(result.First.HeightsUm[i]), Shown.Um(result.Second.HeightsUm[i]),
                result.TwistMrad[i].ToString("0.00", CultureInfo.InvariantCulture));
        }

        return table;
    }

    private static IEnumerable<string> Notes(TwistTracks result)
    {
        yield return $"Twist is (A - B) / distance, {Shown.Mm(result.DistanceMm)} mm; only differences between stations say something.";
        yield return "Rail and stand must not have moved between the tracks, and the line counts: a drift along one track is taken for twist.";
        if (!result.AreTiltsKnown)
            yield return "Drift is not in the uncertainty: sweep each track forward and back to have it counted.";
    }

    private static string Total(TwistTracks result) => $"{Shown.ToSpread(result.TotalMrad.Value, result.HalfIntervalMrad)} +/- {Two(result.HalfIntervalMrad)} mrad";

    private static string Two(double mrad) => mrad == 0 ? "0" : Shown.ToSpread(mrad, mrad);
}
