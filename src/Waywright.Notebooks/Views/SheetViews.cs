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

    // A list would be longer than what it stands for: each says it in one line.
    private static string Missing(ISheet sheet) => $"Nothing to show yet. {string.Join(" ", sheet.Missing.Select(m => m.EndsWith('.') ? m : m + "."))}";
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
        return $"Fill in {missing[0].Name} next, {Shown.Count(missing.Count)} of {Shown.Count(result.Sheets.Count(s => !s.IsOptional))} sheets {(missing.Count == 1 ? "is" : "are")} still missing.{next}{rest}";
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
