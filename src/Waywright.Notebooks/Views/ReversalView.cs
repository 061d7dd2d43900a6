namespace Waywright.Notebooks;

/// <summary>Rail and guide told apart: what to write down, then both.</summary>
internal sealed class ReversalView : View<Reversal>
{
    private const int Most = 60;

    protected override string Verdict(Reversal result)
        => result.Unresolved is { } shared
            ? $"Roll the rail and sweep the same face to divide the rest: end for end gives the bow alone (rail {Um(result.Rail)}, guide {Um(result.Guide)}), and an odd part of {Um(shared)} belongs to rail and guide together."
            : $"Set guide_straightness_um to {Shown.Um(result.GuideAtMostUm ?? StrtUm(result.Guide))} and guide_known_from to reversal: the guide is straight to {Um(result.Guide)}{(result.GuideAtMostUm is { } most ? $", to {Shown.Um(most)} um with what the runs leave uncertain" : "")}, {result.Rail.Name} to {Um(result.Rail)} (STRt about the minimum zone).";

    protected override string Text(Reversal result) => $"{Verdict(result)}\n{Table(result)}\n{string.Join('\n', Notes(result))}";

    protected override string Html(Reversal result)
        => Markup.View(
            Verdict(result),
            Markup.Table(Table(result), "Rail and guide"),
            Markup.Details("Station by station", Markup.Table(Stations(result), "Heights of rail and guide") + (result.Rail.Count > Most ? Markup.Note($"{Shown.Count(result.Rail.Count - Most)} more stations are in the profiles.") : "")),
            Markup.Details("What it rests on", Markup.List(Notes(result))));

    protected override IEnumerable<Figure> Figures(Reversal result, string id)
    {
        yield return Of("rail", result.Rail);
        yield return Of("guide", result.Guide);
        if (result.Unresolved is { } shared)
            yield return Of("unresolved", shared);
        if (result.GuideAtMostUm is { } most)
            yield return new Figure($"{id}/guide-at-most", $"{result.Guide.Name}: straightness with what the runs leave uncertain", most, null, "um", method: $"reversal, {result.Arrangement}", relativeTolerance: 1e-6, absoluteTolerance: 1e-9);

        Figure Of(string part, Profile profile)
            => new($"{id}/{part}", $"{profile.Name}: STRt about the minimum zone line", StrtUm(profile), null, "um", method: $"reversal, {result.Arrangement}", relativeTolerance: 1e-9, absoluteTolerance: 1e-9);
    }

    private static TextTable Table(Reversal result)
    {
        var table = new TextTable("profile", "#STRt minimum zone um", "#STRt least squares um", "#largest u of a height um");
        Add(result.Unresolved is null ? $"rail: {result.Rail.Name}" : $"rail: {result.Rail.Name}, even part", result.Rail, result.RailErrors);
        Add(result.Unresolved is null ? $"guide: {result.Guide.Name}" : $"guide: {result.Guide.Name}, even part", result.Guide, result.GuideErrors);
        if (result.Unresolved is { } shared)
            Add("both together, odd part", shared, null);
        return table;

        void Add(string name, Profile profile, ProfileErrors? errors)
        {
            var figures = StraightnessFigures.Of(profile);
            table.Add(name, Shown.Um(figures.MinimumZone.Line.STRtUm), Shown.Um(figures.LeastSquares.STRtUm), errors is { } e ? Shown.Um(e.StationUm.Max()) : Shown.None);
        }
    }

    private static TextTable Stations(Reversal result)
    {
        var table = new TextTable("#position mm", "#rail um", "#guide um", "#u um");
        for (var i = 0; i < Math.Min(Most, result.Rail.Count); i++)
            table.Add(Shown.Mm(result.Rail.PositionsMm[i]), Shown.Um(result.Rail.HeightsUm[i]), Shown.Um(result.Guide.HeightsUm[i]), result.RailErrors is { } e ? Shown.Um(e.StationUm[i]) : Shown.None);
        return table;
    }

    private static IEnumerable<string> Notes(Reversal result)
    {
        yield return $"Arrangement: {result.Arrangement}. Positions count from the rail's dot in both runs; + is material towards the dial; the guide's height is what it added to a reading of the first run.";
        yield return "Heights and tilts are never resolved: least-squares lines were taken off both runs.";
        if (result.MismatchUm is { } um)
            yield return $"Of half the runs' difference {Shown.Um(um)} um (root mean square) is odd and should be nothing: that is what scatter, or a rail that was moved, leaves.";
        yield return result.RailErrors is not { } errors
            ? "Nothing was repeated in at least one of the runs and no set-up was given, so the heights come without uncertainty."
            : errors.Shapes.Count == 0
                ? "u counts how well the readings of both runs repeat, and nothing else: lay the rail again for each run to see what laying does."
                : $"u counts how well the readings of both runs repeat. Beside it, for the whole profile: {string.Join(", ", errors.Shapes.Select(s => s.Input).Take(6))}{(errors.Shapes.Count > 6 ? " and more" : "")}.";
        yield return "On an upright sweep take the sag off both runs first: rolling the rail turns its sign.";
    }

    private static string Um(Profile profile) => $"{Shown.Um(StrtUm(profile))} um";

    private static double StrtUm(Profile profile) => StraightnessFigures.Of(profile).MinimumZone.Line.STRtUm;
}
