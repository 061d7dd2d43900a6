namespace Waywright.Notebooks;

/// <summary>The drag along rails: a line for each carriage and direction, places of higher drag as bands.</summary>
internal static class DragPicture
{
    /// <summary>More rails than this are not drawn: the tables have them.</summary>
    public const int Most = 6;

    public const string Caption = "Each line is one run: solid forward (away from the dot), dashed back; start-ups are left out. A band is a place where a run needs much more than its usual force; what it goes with stands in it.";

    private static readonly Role[] Colours = [Role.Ink, Role.Fitted, Role.Contact, Role.Context];

    /// <summary>Rails of a log, those with the gravest places first; null where only notes were written down.</summary>
    public static Picture? Of(DragLog log)
    {
        var rails = log.Carriages.Where(c => c.Path.Count > 0).GroupBy(c => c.Rail)
            .Select(rail => (Rail: rail.Key, Carriages: rail.ToArray(), Places: log.Places.Where(p => p.Rail == rail.Key).ToArray()))
            .OrderBy(r => r.Places.Select(p => (int)p.Cause).DefaultIfEmpty(int.MaxValue).Min()).ThenByDescending(r => r.Carriages.Max(c => c.SpreadPercent)).Take(Most);
        return Draw([.. rails]);
    }

    /// <summary>One rail; null where the log doesn't have it.</summary>
    public static Picture? Of(GradedRail rail) => rail.Drag.Any(c => c.Path.Count > 0) ? Draw([(rail.Rail, [.. rail.Drag.Where(c => c.Path.Count > 0)], [.. rail.DragPlaces])]) : null;

    private static Picture? Draw((string Rail, CarriageDrag[] Carriages, DragPlace[] Places)[] rails)
    {
        if (rails.Length == 0)
            return null;
        var runs = rails.SelectMany(r => r.Carriages).SelectMany(c => c.Path).ToArray();
        var y = Axis.Covering("force", "N", [0, .. runs.SelectMany(r => r.RunningN)], 4);
        var far = runs.Max(r => r.RunningMm.Max());
        var x = Axis.Covering("position from the dot", "mm", [0, far], 4).Reaching(0, 1.03 * far);
        var told = rails.Select(r => $"{r.Rail}: {(r.Places.Length == 0 ? "no place stands out" : string.Join("; ", r.Places.Select(p => $"{p.Where}, {Word(p.Cause)}")))}.");
        return new Picture("Drag along the rail, by carriage and direction", string.Join(" ", told), x, y, rails.Select(r => PanelOf(r.Rail, r.Carriages, r.Places, y.High, rails.Length > 1))) { Columns = 2 };
    }

    private static Panel PanelOf(string rail, CarriageDrag[] carriages, DragPlace[] places, double top, bool named)
    {
        var layers = new List<Layer>();
        foreach (var place in places.Where(p => p.ToMm > p.FromMm))
        {
            layers.Add(new BandLayer(Word(place.Cause), RoleOf(place.Cause), FixedList<double>.Copy([place.FromMm, place.ToMm]), FixedList<Interval>.Copy([new(0, top), new(0, top)])));
            layers.Add(new TextLayer(new Point((place.FromMm + place.ToMm) / 2, 0.06 * top), Word(place.Cause), Beside.Above));
        }

        for (var i = 0; i < carriages.Length; i++)
        {
            var name = named ? $"{Ordinal(i)} carriage" : $"carriage {carriages[i].Carriage}";
            foreach (var run in carriages[i].Path)
                layers.Add(new LineLayer($"{name} {run.Direction}", Colours[Math.Min(i, Colours.Length - 1)], Point.Of([.. run.RunningMm], [.. run.RunningN]), run.Direction == "forward" ? Dash.Solid : Dash.Dashed, 1.5));
        }

        var who = string.Join(", ", carriages.Select((c, i) => $"{Ordinal(i)} {c.Carriage} {GradedBatchView.Percent(c.SpreadPercent)} %"));
        return new Panel(named ? rail : "", named ? $"Spread: {who}." : "", FixedList<Layer>.Copy(layers));
    }

    private static string Ordinal(int place) => place switch { 0 => "first", 1 => "second", 2 => "third", _ => "a further" };

    private static string Word(DragCause cause) => cause switch
    {
        DragCause.Rail => "rail binds",
        DragCause.Carriage => "the carriage",
        DragCause.Direction => "one way only",
        DragCause.NotRepeated => "not repeated",
        _ => "not proven",
    };

    private static Role RoleOf(DragCause cause) => cause switch
    {
        DragCause.Rail => Role.Limit,
        DragCause.Undecided => Role.Undecided,
        _ => Role.Zone,
    };
}
