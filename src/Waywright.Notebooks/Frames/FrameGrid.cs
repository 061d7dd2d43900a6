using System.Globalization;
using System.Text;
using IFrameFormattable = Deedle.Internal.IFrameFormattable;
using ISeriesFormattable = Deedle.Internal.ISeriesFormattable;

namespace Waywright.Notebooks;

/// <summary>The part of a Deedle frame or series that a cell shows: its first and last rows, and a sentence on what is left out.</summary>
internal sealed record FrameGrid(HtmlTable Table, string Remark)
{
    private const int MostRows = 20;
    private const int MostColumns = 12;
    private const int LongestCell = 60;
    private const int LargestHtml = 28_000;
    private const string Missing = "<missing>";
    private const string Absent = "missing";

    public static FrameGrid Of(IFrameFormattable frame) => Fitting(rows => OfFrame(frame, rows));

    public static FrameGrid Of(ISeriesFormattable series) => Fitting(rows => OfSeries(series, rows));

    public string Html() => $"{Table.Html("Frame")}<p>{SvgText.Encode(Remark)}</p>";

    public string Text()
    {
        var widths = Table.Columns.Select((heading, c) => Table.Rows.Select(r => r[c].Length).Append(heading.Length).Max()).ToArray();
        var text = new StringBuilder();
        foreach (var row in Table.Rows.Prepend(Table.Columns))
            text.AppendLine(string.Join("  ", row.Select((cell, c) => Table.AreNumbers[c] ? cell.PadLeft(widths[c]) : cell.PadRight(widths[c]))).TrimEnd());
        return text.Append(Remark).ToString().ReplaceLineEndings("\n");
    }

    private static FrameGrid Fitting(Func<int, FrameGrid> make)
    {
        var rows = MostRows;
        var grid = make(rows);
        while (rows > 2 && Encoding.UTF8.GetByteCount(grid.Html()) > LargestHtml)
            grid = make(rows /= 2);
        return grid;
    }

    private static FrameGrid OfFrame(IFrameFormattable frame, int most)
    {
        var (rows, columns) = frame.GetDimensions();
        var (headings, keys) = (frame.GetColLevels(), frame.GetRowLevels());
        var grid = Invariantly(() => frame.InteractiveFormat(Cap(rows, most), Cap(columns, MostColumns), false));
        var header = Enumerable.Range(0, grid[0].Length).Select(c => string.Join(" / ", grid.Take(headings).Select(r => r[c])));
        var missing = frame.GetMissingValueCount();
        var leftOut = Cap(columns, MostColumns) < columns ? string.Create(CultureInfo.InvariantCulture, $" {columns - MostColumns} of {columns} columns are left out where the dots are.") : "";
        return Make(header, grid.Skip(headings).ToArray(), keys, rows, missing, leftOut);
    }

    private static FrameGrid OfSeries(ISeriesFormattable series, int most)
    {
        var (count, keys) = (series.GetKeyCount(), series.GetKeyLevels());
        var grid = Invariantly(() => series.InteractiveFormat(Cap(count, most)));
        return Make(Enumerable.Repeat("", keys + 1).Append("value"), grid, keys, count, count - series.GetValueCount(), "");
    }

    // Deedle sets an arrow between keys and values, and one row of dots in place of two or more that are left out.
    private static FrameGrid Make(IEnumerable<string> header, string[][] body, int keys, int rows, int missing, string columnsLeftOut)
    {
        var shortened = false;
        var shown = body.Select(r => (IReadOnlyList<string>)Cells(r, keys).Select(c => Shown(c, ref shortened)).ToArray()).ToArray();
        var dots = shown.Length == rows ? -1 : Array.FindIndex(shown, r => r[0] is ":" or "...");
        if (dots >= 0)
            shown[dots] = Enumerable.Repeat("…", shown[dots].Count).ToArray();
        var remark = new StringBuilder();
        remark.Append(CultureInfo.InvariantCulture, $"{rows} {(rows == 1 ? "row" : "rows")}");
        remark.Append(shown.Length == rows ? "." : string.Create(CultureInfo.InvariantCulture, $", of which {rows - (shown.Length - 1)} are left out where the dots are."));
        remark.Append(columnsLeftOut);
        if (missing > 0)
            remark.Append(CultureInfo.InvariantCulture, $" Missing values: {missing}.");
        if (shortened)
            remark.Append(" Long values are shown shortened.");
        var headings = Cells(header.ToArray(), keys).ToArray();
        var numbers = headings.Select((_, c) => shown.Length > 0 && shown.All(r => r[c] is "…" or Absent || IsNumber(r[c]))).ToArray();
        return new FrameGrid(new HtmlTable(headings, shown, numbers), remark.ToString());
    }

    // Dots in place of a single row would take as much room as the row; asked for one row, Deedle gives dots alone.
    private static int Cap(int count, int most) => count <= most + 1 ? Math.Max(2, count) : most;

    private static IEnumerable<string> Cells(string[] row, int keys) => row.Where((_, c) => c != keys);

    private static string Shown(string cell, ref bool shortened)
    {
        if (cell == Missing)
            return Absent;
        var shown = cell;
        if (cell.Length > 9 && cell.Contains('.', StringComparison.Ordinal) && double.TryParse(cell, CultureInfo.InvariantCulture, out var number) && Math.Abs(number) < 1e5)
            shown = number.ToString("G6", CultureInfo.InvariantCulture);
        else if (cell.Length > LongestCell)
            shown = cell[..(LongestCell - 1)] + "…";
        shortened |= shown != cell;
        return shown;
    }

    private static bool IsNumber(string cell) => double.TryParse(cell, CultureInfo.InvariantCulture, out _);

    private static string[][] Invariantly(Func<string[][]> format)
    {
        var culture = CultureInfo.CurrentCulture;
        CultureInfo.CurrentCulture = CultureInfo.InvariantCulture;
        try
        {
            return format();
        }
        finally
        {
            CultureInfo.CurrentCulture = culture;
        }
    }
}
