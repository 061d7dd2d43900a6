namespace Waywright.Notebooks;

/// <summary>What makes a figure uncertain, as bars, the largest on top, each with what averages it out.</summary>
internal static class BudgetPicture
{
    private const int Most = 12;
    private const double RowHeight = 58;

    // What a phone has room for.
    private const double WidestName = 290;

    /// <param name="figure">What the components move: <c>STRt</c>.</param>
    /// <param name="budget">Components with their effect on it.</param>
    /// <param name="unit">The effects' unit, as a reader writes it.</param>
    public static Picture Of(string figure, IEnumerable<UncertaintyComponent> budget, string unit = "µm")
    {
        var lines = Sorted(budget).Take(Most).ToArray();
        var largest = lines[0].StandardUncertainty;
        var x = Axis.Covering($"one standard uncertainty of it moves {figure} by", unit, [0, largest > 0 ? largest : 1]);
        x = x.Reaching(0, Math.Max(x.High, 1.18 * largest));
        var rows = lines.Select((line, i) => (Line: line, Y: (double)(lines.Length - i))).ToArray();
        var y = Axis.Covering("", "", [0, 1]).Reaching(0.4, lines.Length + 0.6, new Interval(-2, -1));
        return new Picture($"What makes {figure} uncertain", string.Join(" ", lines.Select(l => $"{l.Name}: {Size(l)} {unit}.")), x, y, new Panel(rows.SelectMany(r => Bar(r.Line, r.Y, unit)))) { PlotHeight = (int)(RowHeight * lines.Length) + 8 };
    }

    /// <summary>First what to do, then why.</summary>
    public static string Caption(IEnumerable<UncertaintyComponent> budget)
    {
        var lines = Sorted(budget);
        return lines[0].StandardUncertainty > 0 ? $"{Shown.First(lines[0].Remedy.TrimEnd('.'))}: the largest part is {lines[0].Name}." : "Nothing in it is uncertain.";
    }

    /// <summary>The components as a table.</summary>
    public static TextTable Data(string figure, IEnumerable<UncertaintyComponent> budget, string unit = "um")
    {
        var table = new TextTable("input", $"#moves {figure} by {unit}", "averages out by", "~what makes it smaller");
        foreach (var line in Sorted(budget))
            table.Add(line.Name, Size(line), Averages(line.AveragesOut), line.Remedy);
        return table;
    }

    /// <summary>How a component gets smaller by doing again, in words.</summary>
    public static string Averages(AveragesOut by) => by switch
    {
        AveragesOut.Repeating => "repeating",
        AveragesOut.Relaying => "laying anew",
        _ => "nothing",
    };

    private static UncertaintyComponent[] Sorted(IEnumerable<UncertaintyComponent> budget)
    {
        var lines = budget.OrderByDescending(c => c.StandardUncertainty).ToArray();
        return lines.Length > 0 ? lines : throw new ArgumentException("A budget needs a component.", nameof(budget));
    }

    private static IEnumerable<Layer> Bar(UncertaintyComponent line, double y, string unit)
    {
        var (key, role) = line.AveragesOut switch
        {
            AveragesOut.Repeating => ("averages out by repeating", Role.Zone),
            AveragesOut.Relaying => ("averages out by laying anew", Role.Undecided),
            _ => ("nothing averages it out", Role.Context),
        };
        Interval across = new(y - 0.4, y - 0.14);
        if (line.StandardUncertainty > 0)
            yield return new BandLayer(key, role, FixedList<double>.Copy([0, line.StandardUncertainty]), FixedList<Interval>.Copy([across, across]));
        yield return new TextLayer(new Point(line.StandardUncertainty, across.Middle), $"{Size(line)} {unit}", Beside.Right);
        yield return new TextLayer(new Point(0, y + 0.17), $"{TextFit.Shorten(line.Name, WidestName, PictureLayout.FontSize)}\n{key}", Beside.Right);
    }

    private static string Size(UncertaintyComponent line) => UncertaintyText.Two(line.StandardUncertainty);
}
