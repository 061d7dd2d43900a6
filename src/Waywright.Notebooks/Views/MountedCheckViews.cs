using System.Globalization;

namespace Waywright.Notebooks;

/// <summary>Two mounted rails against each other.</summary>
internal sealed class ParallelismView : View<Parallelism>
{
    protected override string Verdict(Parallelism result)
    {
        var (from, to) = (Shown.Mm(result.FromMm), Shown.Mm(result.ToMm));
        if (!result.IsOutOfParallel)
            return $"Leave rail {result.Moved} as it is: over {from} to {to} mm its run against {result.Guide} differs by {Interval(result.MoveUm)} um, which can't be told from parallel.";
        var (way, back) = result.MoveUm.Value > 0 ? ("away from", "towards") : ("towards", "away from");
        return $"Move the end of rail {result.Moved} at {to} mm by {Interval(Positive(result.MoveUm))} um {way} {result.Guide}, or the end at {from} mm by as much {back} it, then sweep again.";
    }

    protected override string Text(Parallelism result) => $"{Verdict(result)}\n{Table(result)}\n{string.Join('\n', Notes(result))}";

    protected override string Html(Parallelism result)
        => Markup.View(
            Verdict(result),
            Markup.Table(Table(result), "Run of one rail against the other"),
            Markup.Details("What it rests on", Markup.List(Notes(result))));

    protected override IEnumerable<Figure> Figures(Parallelism result, string id)
    {
        const string method = "differential sweep, straight line by least squares";
        yield return FigureOf.Uncertain($"{id}/slope", "slope of the difference", result.SlopeUmPerM, "um/m", method);
        yield return FigureOf.Uncertain($"{id}/move", $"move of the end at {Shown.Mm(result.ToMm)} mm, + away from the guide", result.MoveUm, "um", method);
        yield return new Figure($"{id}/variation", "largest less smallest height about the line", result.VariationUm, null, "um", method: method, relativeTolerance: 1e-9, absoluteTolerance: 1e-9);
    }

    private static TextTable Table(Parallelism result)
        => new TextTable("figure", "#value", "~what it is")
            .Add("move", $"{Interval(result.MoveUm)} um", $"of the end at {Shown.Mm(result.ToMm)} mm, + away from {result.Guide}; 95 % interval")
            .Add("slope", $"{Interval(result.SlopeUmPerM)} um/m", "of the readings, in the dial's sign; 95 % interval")
            .Add("variation", $"{Shown.Um(result.VariationUm)} um", "largest less smallest reading about the line, noise included: what is left after the move")
            .Add("distance", "unknown to the dial", $"its zero is anywhere; by tape or caliper {result.Apart.ToShortString()}");

    private static IEnumerable<string> Notes(Parallelism result)
    {
        yield return $"Dial on the carriage of {result.Guide}, on the face of {result.Moved} that {(result.DialBetween ? $"looks at {result.Guide}: readings grow where the rails come closer" : $"looks away from {result.Guide}: readings grow where the rails part")}.";
        yield return result.TapeSeesUm == 0
            ? $"The distance was given without uncertainty ({result.Apart.TakenAs}). A tape can't see 0.05 mm, so measuring both ends with one doesn't prove rails parallel."
            : $"Measured at both ends, that distance would show a difference from {Shown.ToSpread(result.TapeSeesUm, result.TapeSeesUm)} um on ({result.Apart.TakenAs}). A tape can't see 0.05 mm: it doesn't prove rails parallel.";
        yield return "The variation is of both rails together: it doesn't say which of them is bent, and no move of an end takes it out.";
        yield return result.Errors is null
            ? "Uncertainty from the scatter about the line: unevenness counts as noise, and what the dial and its arm do to all readings alike is not in it."
            : "Uncertainty from the readings' errors as the set-up states them.";
        yield return "Keep the contact level with the middle of the carriage along the rail: a contact before or behind it turns the carriage's yaw into a reading.";
    }

    private static Uncertain Positive(Uncertain x) => x.Value < 0 ? -x : x;

    private static string Interval(Uncertain x) => x.ToShortString();
}

/// <summary>A frame's sides and diagonals.</summary>
internal sealed class SquarenessView : View<Squareness>
{
    protected override string Verdict(Squareness result)
    {
        if (!result.Agrees)
            return $"Measure all six lengths again: no flat frame has them, they miss by {Two(Math.Abs(result.MissMm.Value))} mm where {Two(Limit(result.MissMm))} mm is the most to expect (chance {Chance(result)} %); a misread length or a frame that is not flat does this.";
        var worst = $"corner {Squareness.CornerNames[result.WorstCorner]} is {Corner(result, result.WorstCorner)}";
        if (!result.IsOutOfSquare)
            return $"Leave the frame: no corner can be told from square; the worst, {worst}.";
        if (!result.Leans)
            return $"Correct the lengths of the sides, not the diagonals: {worst}, although the diagonals agree; equal diagonals alone don't prove a frame square.";
        var (near, far) = result.LeanMrad.Value < 0 ? ("A", "C") : ("B", "D");
        return $"Push corners {near} and {far} towards each other by {Two(Math.Abs(result.DiagonalsMm.Value) / 2)} mm, until both diagonals are alike, then measure again: {worst}.";
    }

    protected override string Text(Squareness result) => $"{Verdict(result)}\n{Table(result)}\n{Lengths(result)}\n{string.Join('\n', Notes(result))}";

    protected override string Html(Squareness result)
        => Markup.View(
            Verdict(result),
            Markup.Table(Table(result), "Corners against a right angle"),
            Markup.Details("The six lengths", Markup.Table(Lengths(result), "Lengths as measured and as fitted")),
            Markup.Details("What it rests on", Markup.List(Notes(result))));

    protected override IEnumerable<Figure> Figures(Squareness result, string id)
    {
        const string method = "four sides and two diagonals, adjusted to close";
        for (var i = 0; i < result.CornersMrad.Count; i++)
            yield return FigureOf.Uncertain($"{id}/corner-{Squareness.CornerNames[i]}", $"angle at {Squareness.CornerNames[i]} less a right angle", result.CornersMrad[i], "mrad", method);
        yield return FigureOf.Uncertain($"{id}/lean", "angle of the midlines at A less a right angle", result.LeanMrad, "mrad", method);
        yield return FigureOf.Uncertain($"{id}/diagonals", "AC less BD", result.DiagonalsMm, "mm", "as measured");
        yield return FigureOf.Uncertain($"{id}/miss", "BD from the other five less BD", result.MissMm, "mm", "as measured");
        yield return new Figure($"{id}/chance", "chance that a flat frame misses by as much", result.Chance, null, "1", method: "miss against its uncertainty", relativeTolerance: 1e-6, absoluteTolerance: 1e-9);
    }

    private static TextTable Table(Squareness result)
    {
        var table = new TextTable("corner", "#angle error mrad (+ too wide)", "#over the longer side mm", "~verdict");
        for (var i = 0; i < result.CornersMrad.Count; i++)
            table.Add(Squareness.CornerNames[i], result.CornersMrad[i].ToShortString(), result.OverSideMm(i).ToShortString(), Squareness.IsNotZero(result.CornersMrad[i]) ? "out of square" : "can't be told from square");
        return table.Add("midlines", result.LeanMrad.ToShortString(), Shown.None, result.Leans ? "leans: diagonals differ" : "no lean to be told");
    }

    private static TextTable Lengths(Squareness result)
    {
        var table = new TextTable("length", "#measured", "#fitted mm", "~taken as");
        for (var i = 0; i < result.Readings.Count; i++)
            table.Add(Squareness.LengthNames[i], result.Readings[i].ToShortString(), result.FittedMm[i].ToString("0.00", CultureInfo.InvariantCulture), result.Readings[i].TakenAs);
        return table;
    }

    private static IEnumerable<string> Notes(Squareness result)
    {
        yield return $"Six lengths, five unknowns: one check. BD follows from the other five with a miss of {result.MissMm.ToShortString()} mm; chance {Chance(result)} %{(result.Agrees ? ", so they agree" : "")}. It can't see every misreading: two may cancel.";
        yield return $"AC less BD is {result.DiagonalsMm.ToShortString()} mm. Midlines: cos = (AC² - BD²) / (4 m n). Equal diagonals alone don't prove a frame square: a trapezoid of equal legs has them too.";
        yield return $"{(result.TapeZero is { } zero ? $"Tape's zero: {zero.ToShortString()} ({zero.TakenAs}), one and the same in all six. " : "")}An error of the tape's zero cancels in AC - BD; the errors of reading don't.";
        yield return "Intervals in the table are 95 % for each; a corner counts as out of square at 98.75 %, so that all four together are at 95 %.";
        yield return "Flat frame assumed; belts slack while it is squared.";
    }

    private static string Corner(Squareness result, int corner)
    {
        var error = result.CornersMrad[corner];
        return $"{Two(Math.Abs(error.Value))} mrad too {(error.Value < 0 ? "narrow" : "wide")} ({Interval(error)}), {Two(Math.Abs(result.OverSideMm(corner).Value))} mm over {Shown.Mm(Math.Round(result.LongerSideMm(corner)))} mm";
    }

    // Low and high of the shown error, without the value that stands before it.
    private static string Interval(Uncertain x)
    {
        var interval = x.Expanded();
        return $"{Shown.ToSpread(interval.Low, interval.U)} to {Shown.ToSpread(interval.High, interval.U)}";
    }

    private static double Limit(Uncertain miss) => miss.Expanded().U;

    private static string Chance(Squareness result) => Shown.Percent(result.Chance);

    private static string Two(double value) => value < 0.005 ? "0.00" : Shown.ToSpread(value, value);
}
