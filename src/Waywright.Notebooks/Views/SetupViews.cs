namespace Waywright.Notebooks;

/// <summary>One set-up.</summary>
internal sealed class SetupView : View<Setup>
{
    protected override string Verdict(Setup result)
        => result.IsGuideKnown
            ? $"Set-up {result.Id}: the guide is known, so its figures can grade a rail."
            : $"Set-up {result.Id}: find out how straight the guide is before grading; until then its figures are rail against guide.";

    protected override string Text(Setup result) => $"{Verdict(result)}\n{result}";

    protected override string Html(Setup result) => Markup.View(Verdict(result), Markup.List(result.ToString()));
}

/// <summary>The set-ups of a build.</summary>
internal sealed class SetupBookView : View<SetupBook>
{
    protected override string Verdict(SetupBook result)
    {
        var unknown = result.Setups.Where(s => !s.IsGuideKnown).Select(s => s.Id).ToArray();
        var count = result.Setups.Count == 1 ? "1 set-up" : $"{Shown.Count(result.Setups.Count)} set-ups";
        return unknown.Length == 0 ? $"{count}, each with a known guide." : $"{count}; find out how straight the guide is for {string.Join(", ", unknown)}.";
    }

    protected override string Text(SetupBook result) => $"{Verdict(result)}\n{Table(result)}";

    protected override string Html(SetupBook result) => Markup.View(Verdict(result), Markup.Table(Table(result), "How sweeps were taken"));

    private static TextTable Table(SetupBook book)
    {
        var table = new TextTable("set-up", "guide", "#straight to um", "known from", "dial", "#division um", "read to", "probe", "~held", "#force N", "#°C");
        foreach (var s in book.Setups)
        {
            table.Add(s.Id, s.Guide, s.GuideStraightnessUm is { } um ? Shown.Mm(um) : Shown.None, s.GuideKnownFrom, s.Instrument, Shown.Mm(s.DivisionUm), s.ReadTo, s.Probe, s.Held,
                s.ForceN is { } n ? Shown.Mm(n) : Shown.None, s.TemperatureC is { } t ? Shown.Mm(t) : Shown.None);
        }

        return table;
    }
}
