using Deedle;

namespace Waywright.Notebooks;

/// <summary>Deedle frames in and out: tables read strictly, results as columns for one's own figures.</summary>
public static class Frames
{
    /// <summary>
    /// Reads a delimited table (comma, semicolon or tab, decimal point or comma, <c>#</c> comments). A column of which every field is a number becomes a column of doubles, any other a column of texts;
    /// nothing is inferred from the first rows, and nothing becomes missing.
    /// </summary>
    /// <param name="path">The file.</param>
    /// <exception cref="InputException">The file can't be read, or a row has another number of fields than the header.</exception>
    public static Frame<int, string> Read(string path)
    {
        FrameHost.Require();
        using var table = TableReader.Open(path);
        var columns = table.Columns.Select(_ => new List<string>()).ToArray();
        while (table.MoveNext())
        {
            for (var c = 0; c < columns.Length; c++)
            {
                if (Number.TryRead(table.Text(c), out _, out var mark) && mark != DecimalMark.None)
                    table.Settle(c, mark);
                columns[c].Add(table.Text(c).ToString());
            }
        }

        table.Problems.ThrowIfAny();
        var builder = new FrameBuilder.Columns<int, string>();
        for (var c = 0; c < columns.Length; c++)
            builder.Add(table.Columns[c], AsNumbers(columns[c]) is { } numbers ? Column(numbers) : Column(columns[c]));
        return builder.Frame;
    }

    /// <summary>One row a face: rail, face, stations, passes, repeatability, STRt about each line, um.</summary>
    /// <param name="faces">Combined sweeps.</param>
    public static Frame<int, string> Of(IEnumerable<PooledSweep> faces)
    {
        FrameHost.Require();
        var all = faces.ToArray();
        return new FrameBuilder.Columns<int, string>
        {
            { "rail", Column(all.Select(f => f.Sweep.Rail ?? "")) },
            { "face", Column(all.Select(f => f.Sweep.FaceName ?? "")) },
            { "stations", Column(all.Select(f => f.Profile.Count)) },
            { "passes", Column(all.Select(f => f.Passes.Count)) },
            { "end_points_STRt_um", Column(all.Select(f => f.Straightness.EndPoints.STRtUm)) },
            { "least_squares_STRt_um", Column(all.Select(f => f.Straightness.LeastSquares.STRtUm)) },
            { "minimum_zone_STRt_um", Column(all.Select(f => f.Straightness.MinimumZone.Line.STRtUm)) },
        }.Frame;
    }

    /// <summary>One row a station: position in mm, combined height in um, and its distance from each reference line in um.</summary>
    /// <param name="face">A combined sweep.</param>
    public static Frame<int, string> Of(PooledSweep face)
    {
        FrameHost.Require();
        var (x, z, lines) = (face.Profile.PositionsMm, face.Profile.HeightsUm, face.Straightness);
        return new FrameBuilder.Columns<int, string>
        {
            { "position_mm", Column(x) },
            { "height_um", Column(z) },
            { "from_end_points_um", From(lines.EndPoints) },
            { "from_least_squares_um", From(lines.LeastSquares) },
            { "from_minimum_zone_um", From(lines.MinimumZone.Line) },
        }.Frame;

        Series<int, double> From(ReferenceLine line) => Column(x.Zip(z, (at, height) => height - line.HeightUm(at)));
    }

    /// <summary>One row a rail: grade, limiting feature, next step, and each feature's value in um, the drag's spread in % (missing where it could not be judged).</summary>
    /// <param name="graded">A graded batch.</param>
    public static Frame<int, string> Of(GradedBatch graded)
    {
        FrameHost.Require();
        var rails = graded.Rails;
        return new FrameBuilder.Columns<int, string>
        {
            { "rail", Column(rails.Select(r => r.Rail)) },
            { "grade", Column(rails.Select(r => r.Grade)) },
            { "limiting_feature", Column(rails.Select(r => r.LimitingFeature ?? "")) },
            { "side_um", Feature(RailFeature.Side) },
            { "side_local_um", Feature(RailFeature.SideLocal) },
            { "top_mounted_um", Feature(RailFeature.TopMounted) },
            { "top_local_um", Feature(RailFeature.TopLocal) },
            { "top_free_um", Feature(RailFeature.TopFree) },
            { "drag_percent", Feature(RailFeature.Drag) },
            { "next", Column(rails.Select(r => r.Next)) },
        }.Frame;

        // Deedle's mark for a missing value is NaN on the way in; it never comes out of the library as a figure.
        Series<int, double> Feature(string feature) => Column(rails.Select(r => r.ValueOf(feature) ?? double.NaN));
    }

    /// <summary>One row a belt: note in Hz and tension in N with their standard uncertainties.</summary>
    /// <param name="log">A log of plucks.</param>
    public static Frame<int, string> Of(BeltLog log)
    {
        FrameHost.Require();
        return new FrameBuilder.Columns<int, string>
        {
            { "belt", Column(log.Belts.Select(b => b.Belt)) },
            { "plucks", Column(log.Belts.Select(b => b.Plucks)) },
            { "frequency_hz", Column(log.Belts.Select(b => b.Tension.Frequency.Si.Value)) },
            { "frequency_u_hz", Column(log.Belts.Select(b => b.Tension.Frequency.Si.StandardUncertainty)) },
            { "tension_n", Column(log.Belts.Select(b => b.Tension.Tension.Si.Value)) },
            { "tension_u_n", Column(log.Belts.Select(b => b.Tension.Tension.Si.StandardUncertainty)) },
        }.Frame;
    }

    /// <summary>A frame's columns <c>position_mm</c> and <c>height_um</c> as a profile.</summary>
    /// <param name="frame">The frame; rows with a missing value are refused, not skipped.</param>
    /// <param name="name">What the profile is called.</param>
    /// <exception cref="InputException">A column is not there, is no column of numbers, or has a missing value.</exception>
    public static Profile ToProfile(this Frame<int, string> frame, string name = "frame")
    {
        ArgumentNullException.ThrowIfNull(frame);
        return new Profile(Numbers("position_mm"), Numbers("height_um"), name);

        double[] Numbers(string column)
        {
            if (!frame.ColumnKeys.Contains(column))
                throw new InputException(new InputProblem(name, null, null, $"no column {column}", "the columns position_mm and height_um"));
            var series = frame.GetColumn<double>(column);
            return series.ValueCount == frame.RowCount
                ? series.Values.ToArray()
                : throw new InputException(new InputProblem(name, null, null, $"{frame.RowCount - series.ValueCount} missing values in {column}", "a number in every row"));
        }
    }

    private static Series<int, T> Column<T>(IEnumerable<T> values) => values.ToOrdinalSeries();

    private static double[]? AsNumbers(List<string> fields)
    {
        var numbers = new double[fields.Count];
        for (var i = 0; i < numbers.Length; i++)
        {
            if (!Number.TryRead(fields[i], out numbers[i], out _))
                return null;
        }

        return numbers;
    }
}
