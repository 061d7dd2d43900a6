namespace Waywright.Notebooks;

/// <summary>Figures of one profile about its three reference lines.</summary>
internal sealed class StraightnessFiguresView : View<StraightnessFigures>
{
    /// <summary>The figures as a table, one line each.</summary>
    public static TextTable Table(StraightnessFigures figures, Setup? setup = null)
    {
        var table = new TextTable("reference line", "#STRt um", "#STRp um", "#STRv um", "#STRq um", "#slope um/m");
        foreach (var line in new[] { figures.EndPoints, figures.LeastSquares, figures.MinimumZone.Line })
            table.Add(Name(line.Kind), Shown.Um(line.STRtUm, setup), Shown.Um(line.STRpUm, setup), Shown.Um(line.STRvUm, setup), Shown.Um(line.STRqUm, setup), Shown.Slope(line.SlopeUmPerM));
        return table;
    }

    /// <summary>Where the profile touches its zone.</summary>
    public static string Contacts(MinimumZone zone)
        => $"The profile touches the upper edge of its zone at {At(zone, ZoneSide.Upper)} and the lower edge at {At(zone, ZoneSide.Lower)}.";

    public static string Name(ReferenceLineKind kind) => kind switch
    {
        ReferenceLineKind.EndPoints => "end points",
        ReferenceLineKind.LeastSquares => "least squares",
        _ => "minimum zone",
    };

    protected override string Verdict(StraightnessFigures result)
        => $"{(result.Profile.Name.Length == 0 ? "Profile" : result.Profile.Name)}: straight to {Shown.Um(result.MinimumZone.Line.STRtUm)} um (STRt about the minimum zone, {Shown.Count(result.Profile.Count)} stations).";

    protected override string Text(StraightnessFigures result) => $"{Verdict(result)}\n{Table(result)}\n{Contacts(result.MinimumZone)}";

    protected override string Html(StraightnessFigures result)
        => Markup.View(Verdict(result), Markup.Table(Table(result), "Straightness about each reference line"), $"<p>{Markup.Encode(Contacts(result.MinimumZone))}</p>",
            Markup.Details("How it was worked out", Markup.List(Assumptions)));

    protected override IEnumerable<Figure> Figures(StraightnessFigures result, string id) => Of(result, id);

    /// <summary>STRt about each line, for the record.</summary>
    public static IEnumerable<Figure> Of(StraightnessFigures figures, string id)
    {
        var name = figures.Profile.Name.Length == 0 ? "profile" : figures.Profile.Name;
        yield return Strt("end-points", figures.EndPoints);
        yield return Strt("least-squares", figures.LeastSquares);
        yield return Strt("minimum-zone", figures.MinimumZone.Line);

        Figure Strt(string part, ReferenceLine line)
            => new($"{id}/{part}", $"{name}: STRt about the {Name(line.Kind)} line", line.STRtUm, null, "um", method: $"STRt, {Name(line.Kind)} line, {ShapeModesView.FilterOf(figures.Profile)}", relativeTolerance: 1e-9, absoluteTolerance: 1e-9);
    }

    /// <summary>What every straightness figure rests on.</summary>
    public static string[] Terms { get; } =
    [
        "In the terms of ISO 12780-1: STRt from highest to lowest about the line, STRp above it, STRv below it, STRq root mean square. The end-point line is that of ISO 230-1.",
        "The minimum zone is exact for the stations measured; between stations nothing is known.",
        "No filter unless the name says so.",
    ];

    /// <summary>The same for figures that come without uncertainty.</summary>
    public static string[] Assumptions { get; } = [.. Terms, "The figures hold no uncertainty yet: noise alone reads more than zero."];

    private static string At(MinimumZone zone, ZoneSide side) => $"{string.Join(", ", zone.Contacts.Where(c => c.Side == side).Select(c => Shown.Mm(c.PositionMm)))} mm";
}
