using System.Globalization;

namespace Waywright.Notebooks;

/// <summary>A beam's elastic line.</summary>
internal sealed class BeamLineView : View<BeamLine>
{
    private const int Places = 9;

    protected override string Verdict(BeamLine result)
        => result.Lifts
            ? $"The beam lifts off its support at {string.Join(", ", result.LiftsAtMm.Select(Shown.Mm))} mm: these figures hold it down there, so set another support or less force."
            : string.Create(CultureInfo.InvariantCulture, $"The beam moves by up to {Largest(result):0.0} um between and beyond its {result.Beam.SupportsMm.Count} supports.");

    protected override string Text(BeamLine result) => $"{Verdict(result)}\n{Table(result)}";

    protected override string Html(BeamLine result) => Markup.View(Verdict(result), Markup.Table(Table(result), "Deflection along the beam"));

    private static double Largest(BeamLine line) => Positions(line).Max(x => Math.Abs(line.DeflectionUm(x)));

    private static IEnumerable<double> Positions(BeamLine line) => Enumerable.Range(0, Places).Select(i => line.Beam.LengthMm * i / (Places - 1));

    private static TextTable Table(BeamLine line)
    {
        var table = new TextTable("#position mm", "#deflection um (+ up)");
        foreach (var x in Positions(line))
            table.Add(Shown.Mm(x), line.DeflectionUm(x).ToString("0.00", CultureInfo.InvariantCulture));
        return table;
    }
}
