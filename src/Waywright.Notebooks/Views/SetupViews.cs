using System.Globalization;

namespace Waywright.Notebooks;

/// <summary>One set-up.</summary>
internal sealed class SetupView : View<Setup>
{
    protected override string Verdict(Setup result)
        => result.IsGuideKnown
            ? $"Set-up {result.Id}: the guide is known, so its figures can grade a rail."
            : $"Set-up {result.Id}: find out how straight the guide is before grading; until then its figures are rail against guide.";

    protected override string Text(Setup result) => $"{Verdict(result)}\n{string.Join('\n', Lines(result))}";

    protected override string Html(Setup result) => Markup.View(Verdict(result), Markup.List(Lines(result)));

    private static IEnumerable<string> Lines(Setup setup)
    {
        yield return setup.ToString();
        yield return Limits(setup.Indicator);
        if (setup.Rail is { } rail)
        {
            yield return string.Create(
                CultureInfo.InvariantCulture,
                $"Rail: {rail.LengthMm} mm, bending stiffness {rail.TopStiffnessNm2} N m2 seen from the top and {rail.SideStiffnessNm2} N m2 from the side{(rail.StiffnessUPercent is { } u ? $" (u {u} %)" : "")}, {rail.MassKgPerM} kg/m; bending is corrected.");
        }
    }

    private static string Limits(Instrument dial)
        => dial.Dial is { } limits
                ? string.Create(CultureInfo.InvariantCulture, $"Dial: limits of JIS B 7503:2011, {limits.TenthTurnUm} um over a tenth of a turn of {limits.TurnUm / 1000} mm, {limits.HalfTurnUm} over half, {limits.OneTurnUm} over one, {limits.FullRangeUm} over all; retrace {dial.Retrace} um. They hold for a dial in good order: check yours.")
            : dial.PermissibleError is { } error
                ? string.Create(CultureInfo.InvariantCulture, $"Dial: permissible error {error} um; retrace {(dial.Retrace > 0 ? $"{dial.Retrace.ToString(CultureInfo.InvariantCulture)} um" : "not stated")}.")
            : "Dial: its own error is not stated (range_mm and turn_mm, or permissible_error_um), so it is in no figure.";
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
