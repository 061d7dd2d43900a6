using System;
using System.Collections.Generic;
using System.Linq;

namespace Waywright;

/// <summary>Finds the columns of a sweeps table in its header and says what is wrong with it.</summary>
internal sealed class SweepColumns
{
    private static readonly string[] Tidy = ["rail", "face", "pass", "direction"];
    private static readonly string[] Optional = ["setup", "lay", "track", "temperature_c"];

    public SweepColumns(TableReader table)
    {
        IsBare = Tidy.All(name => table.IndexOf(name) < 0);
        Rail = Required(table, "rail", !IsBare);
        Face = Required(table, "face", !IsBare);
        Pass = Required(table, "pass", !IsBare);
        Direction = Required(table, "direction", !IsBare);
        Position = FindQuantity(table, "position_", ["position_mm"], out _);
        Reading = FindQuantity(table, "reading_", ["reading_um", "reading_mm", "reading_in", "reading_div"], out var unit);
        Unit = unit;
        Setup = table.IndexOf("setup");
        Lay = table.IndexOf("lay");
        Track = table.IndexOf("track");
        Temperature = table.IndexOf("temperature_c");
        int[] used = [Rail, Face, Pass, Direction, Position, Reading, .. Optional.Select(table.IndexOf)];
        PassedOver = table.Columns.Where((_, i) => !used.Contains(i)).ToArray();
        table.Problems.ThrowIfAny();
    }

    /// <summary>Only positions and readings: heights of one profile.</summary>
    public bool IsBare { get; }

    public int Rail { get; }

    public int Face { get; }

    public int Pass { get; }

    public int Direction { get; }

    public int Position { get; }

    public int Reading { get; }

    public int Setup { get; }

    public int Lay { get; }

    public int Track { get; }

    public int Temperature { get; }

    /// <summary><c>um</c>, <c>mm</c>, <c>in</c> or <c>div</c>.</summary>
    public string Unit { get; }

    public IReadOnlyList<string> PassedOver { get; }

    private static int Required(TableReader table, string name, bool required)
    {
        var index = table.IndexOf(name);
        if (index < 0 && required)
            table.Problems.Add(table.HeaderLine, null, $"no column {name}", "the columns rail,face,pass,direction,position_mm,reading_um (or only position_mm,reading_um)");
        return index;
    }

    private static int FindQuantity(TableReader table, string prefix, string[] names, out string unit)
    {
        unit = "";
        var found = table.Columns.Where(c => c.StartsWith(prefix, StringComparison.OrdinalIgnoreCase) || string.Equals(c, prefix[..^1], StringComparison.OrdinalIgnoreCase)).ToArray();
        var expected = names.Length == 1 ? names[0] : $"one of {string.Join(", ", names)}";
        if (found.Length == 0)
            table.Problems.Add(table.HeaderLine, null, $"no column {names[0]}", expected);
        else if (found.Length > 1)
            table.Problems.Add(table.HeaderLine, null, $"the columns {string.Join(" and ", found)}", expected);
        else if (!names.Contains(found[0], StringComparer.OrdinalIgnoreCase))
            table.Problems.Add(table.HeaderLine, null, $"the column {ProblemList.Shown(found[0])}", $"{expected}: the unit is part of the name");
        else
            unit = found[0][prefix.Length..].ToLowerInvariant();
        return found.Length == 1 ? table.IndexOf(found[0]) : -1;
    }
}
