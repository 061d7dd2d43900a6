namespace Waywright.Notebooks;

/// <summary>What a build analysis found.</summary>
internal sealed class BuildRecordView : View<BuildRecord>
{
    private const int Most = 60;

    protected override string Verdict(BuildRecord result)
        => result.Decisions.Count == 0 ? $"{result.Title}: {Shown.Count(result.Figures.Count)} figures kept." : string.Join(' ', result.Decisions.Select(d => d.Verdict));

    protected override string Text(BuildRecord result) => $"{Verdict(result)}\n{Table(result)}{Left(result)}";

    protected override string Html(BuildRecord result)
        => Markup.View(Verdict(result), Markup.Table(Table(result), "Figures of the record"), Markup.List($"{Shown.Count(result.Inputs.Count)} files were read, by {Shown.Count(result.Notebooks.Count)} notebooks.{Left(result)}"));

    private static string Left(BuildRecord record) => record.Figures.Count > Most ? $" {Shown.Count(record.Figures.Count - Most)} more figures are in record.json." : "";

    private static TextTable Table(BuildRecord record)
    {
        var table = new TextTable("figure", "name", "#value", "unit");
        foreach (var figure in record.Figures.Take(Most))
            table.Add(figure.Id, figure.Name, figure.Text ?? figure.Value!.Value.ToString("G6", System.Globalization.CultureInfo.InvariantCulture), figure.Unit);
        return table;
    }
}
