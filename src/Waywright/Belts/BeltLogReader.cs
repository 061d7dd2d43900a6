using System.Collections.Generic;
using System.Globalization;
using System.Linq;
using UnitsNet;

namespace Waywright;

/// <summary>Turns the rows of a belt log into belts, and notes what contradicts itself.</summary>
internal sealed class BeltLogReader(TableReader table)
{
    /// <summary>Overtones are a factor 2 and more apart; plucks of one span a few per cent.</summary>
    private const double MostApart = 1.5;

    private const int LongestName = 60;

    private static readonly string[] Needed = ["belt", "reel", "fixture", "span", "density", "frequency"];

    private readonly Dictionary<string, Rows> _belts = [];
    private readonly Dictionary<string, (string Text, int Line)> _shared = [];
    private readonly int[] _columns = [.. Needed.Select(table.IndexOf)];
    private int _count;

    private enum Column
    {
        Belt,
        Reel,
        Fixture,
        Span,
        Density,
        Frequency,
    }

    public BeltLog Read(string source)
    {
        for (var i = 0; i < Needed.Length; i++)
        {
            if (_columns[i] < 0)
                table.Problems.Add(table.HeaderLine, null, $"no column '{Needed[i]}'", $"the columns {string.Join(", ", Needed)}");
        }

        table.Problems.ThrowIfAny();
        while (table.MoveNext())
            ReadRow();
        if (_count == 0)
            table.Problems.Add(table.HeaderLine, null, "no row below the header", "a row for each pluck");
        table.Problems.ThrowIfAny();
        var unused = table.Columns.Where(c => table.IndexOf(c) is var index && !_columns.Contains(index)).ToArray();
        var notUsed = unused.Length == 0 ? "" : $", not used: {string.Join(", ", unused)}";
        return new BeltLog(source, string.Create(CultureInfo.InvariantCulture, $"{table.ReadAs}, {Count(_count, "pluck")} of {Count(_belts.Count, "belt")}{notUsed}"), _belts.Values.Select(r => r.ToBelt()));
    }

    private void ReadRow()
    {
        _count++;
        var belt = Name(Column.Belt);
        var span = Quantity(Column.Span, Dimension.Length);
        var density = Quantity(Column.Density, Dimension.LinearDensity);
        var frequency = Quantity(Column.Frequency, Dimension.Frequency);
        if (belt.Length == 0)
            table.Reject(Index(Column.Belt), belt, "the belt's name");
        if (belt.Length == 0)
            return;
        var (reel, fixture) = (Name(Column.Reel), Name(Column.Fixture));
        CheckShared(Column.Reel, $"the reel of belt '{belt}'");
        CheckShared(Column.Fixture, $"the fixture of belt '{belt}'");
        if (span is not null)
            CheckShared(Column.Span, fixture.Length > 0 ? $"the span in fixture '{fixture}'" : $"the span of belt '{belt}'");
        if (density is not null)
            CheckShared(Column.Density, reel.Length > 0 ? $"the density of reel '{reel}'" : $"the density of belt '{belt}'");
        if (span is null || density is null || frequency is null)
            return;
        if (!_belts.TryGetValue(belt, out var rows))
            _belts[belt] = rows = new Rows(belt, reel, fixture, span, density, table.Line);
        else if (frequency.SiValue / rows.Plucks[0].SiValue is > MostApart or < 1 / MostApart)
            table.Reject(Index(Column.Frequency), Text(Column.Frequency), string.Create(CultureInfo.InvariantCulture, $"a pluck within a factor 1.5 of the belt's first, in line {rows.Line} (is one an overtone?)"));
        rows.Plucks.Add(frequency);
    }

    /// <summary>Holds a text to what stood for the same thing before.</summary>
    private void CheckShared(Column column, string what)
    {
        var text = Text(column);
        if (!_shared.TryGetValue(what, out var before))
            _shared[what] = (text, table.Line);
        else if (before.Text != text)
            table.Reject(Index(column), text, string.Create(CultureInfo.InvariantCulture, $"{ProblemList.Shown(before.Text)} as in line {before.Line} for {what}"));
    }

    /// <summary>A name that results will show: what would act on a terminal or turn a line's direction is refused.</summary>
    private string Name(Column column)
    {
        var name = Text(column);
        if (name.Any(c => char.IsControl(c) || char.GetUnicodeCategory(c) == UnicodeCategory.Format) || name.Length > LongestName)
            table.Reject(Index(column), name, "a name of up to 60 printable characters");
        return name;
    }

    private QuantityReading? Quantity(Column column, Dimension dimension)
    {
        var index = Index(column);
        var mark = DecimalMark.None;
        if (!QuantityText.TryRead(table.Text(index), dimension, QuantityRange.Positive, ref mark, out var reading, out var fault))
            table.Problems.Add(table.Line, table.CharacterOf(index), fault.Found, $"{Needed[(int)column]} to be {fault.Expected}");
        if (mark != DecimalMark.None)
            table.Settle(index, mark);
        return reading;
    }

    private static string Count(int count, string what) => string.Create(CultureInfo.InvariantCulture, $"{count} {what}{(count == 1 ? "" : "s")}");

    private int Index(Column column) => _columns[(int)column];

    private string Text(Column column) => table.Text(Index(column)).ToString();

    private sealed record Rows(string Belt, string Reel, string Fixture, QuantityReading Span, QuantityReading Density, int Line)
    {
        public List<QuantityReading> Plucks { get; } = [];

        public LoggedBelt ToBelt()
        {
            var length = new Measured<Length>(Span, Fixture.Length > 0 ? $"span in fixture {Fixture}" : $"span of belt {Belt}");
            var density = new Measured<LinearDensity>(Density, Reel.Length > 0 ? $"density of reel {Reel}" : $"density of belt {Belt}");
            var note = PluckMean.Of(Belt, Plucks, out var scatterHz);
            return new LoggedBelt(Belt, new BeltSpan(length, density).Tension(note), Plucks.Count, scatterHz, Given(Reel), Given(Fixture));
        }

        private static string? Given(string text) => text.Length == 0 ? null : text;
    }
}
