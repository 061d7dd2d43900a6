using IFrameFormattable = Deedle.Internal.IFrameFormattable;

namespace Waywright.Notebooks;

/// <summary>A value that rests on sheets: itself where it stands, else what is missing.</summary>
internal sealed class SheetView : IView
{
    public Type ResultType => typeof(Sheet<>);

    public string Verdict(object result) => ((ISheet)result) is { Value: { } value } ? Views.Find(value.GetType())?.Verdict(value) ?? value.ToString()! : Missing((ISheet)result);

    public string Html(object result) => ((ISheet)result).Value switch
    {
        null => $"<p class=\"ww-missing\">{Markup.Words(Missing((ISheet)result))}</p>",
        IFrameFormattable frame => FrameGrid.Of(frame).Html(),
        string text => $"<p>{Markup.Words(text)}</p>",
        var value => Views.Html(value),
    };

    public string Text(object result) => ((ISheet)result).Value switch
    {
        null => Missing((ISheet)result),
        IFrameFormattable frame => FrameGrid.Of(frame).Text(),
        string text => text,
        var value => Views.Text(value),
    };

    public IEnumerable<Figure> Figures(object result, string id) => ((ISheet)result).Value is { } value ? Views.Find(value.GetType())?.Figures(value, id) ?? [] : [];

    // How to fill each sheet stands once, in the state of the build; here its name does.
    private static string Missing(ISheet sheet)
    {
        var sheets = sheet.Missing.Where(m => !m.EndsWith('.')).ToArray();
        var names = sheets.Length switch { 0 => ".", 1 => $": fill in {sheets[0]} first.", _ => $": fill in {string.Join(", ", sheets.SkipLast(1))} and {sheets[^1]} first." };
        return $"Nothing to show yet{names}{string.Concat(sheet.Missing.Where(m => m.EndsWith('.')).Select(m => " " + m))}";
    }
}

/// <summary>Which sheets are still missing.</summary>
internal sealed class BuildStateView : View<BuildState>
{
    protected override string Verdict(BuildState result)
    {
        var missing = result.Missing;
        if (missing.Count == 0)
            return "Go on to the results: every sheet that the build needs is filled.";
        var next = missing[0].Next.Length == 0 ? "" : $" {missing[0].Next}";
        var rest = missing.Count == 1 ? "" : $" After it: {string.Join(", ", missing.Skip(1).Select(s => s.Name))}.";
        return $"Fill in {missing[0].Name} next: {(missing.Count == 1 ? "it is the last sheet that is" : $"{Shown.Count(missing.Count)} sheets are")} still missing.{next}{rest}";
    }

    protected override string Text(BuildState result) => $"{Verdict(result)}\n\n{Table(result)}";

    protected override string Html(BuildState result) => Markup.View(Verdict(result), Markup.Table(Table(result), "The sheets of this build"));

    protected override IEnumerable<Figure> Figures(BuildState result, string id)
        => [new Figure($"{id}/missing", "sheets still missing", result.Missing.Count, null, "1", method: "tables without rows, documents not yet edited")];

    private static TextTable Table(BuildState state)
    {
        var table = new TextTable("sheet", "state", "~what to do");
        foreach (var sheet in state.Sheets)
            table.Add(sheet.Name, sheet.IsFilled ? "filled" : sheet.IsOptional ? "empty, not needed" : "missing", sheet.IsFilled ? "" : sheet.Next);
        return table;
    }
}
