using System.Globalization;

namespace Waywright.Notebooks;

/// <summary>What was corrected in a combined sweep, and what its heights are still uncertain by.</summary>
internal static class SweepErrorsText
{
    /// <summary>In plain text; empty where the set-up says nothing.</summary>
    public static string Of(PooledSweep pooled)
    {
        var text = "";
        if (pooled.Corrections.Count > 0)
            text += $"\nCorrected:\n{CorrectionTable(pooled)}";
        if (pooled.Errors is { } errors)
            text += $"\nUncertain by:\n{ErrorTable(errors)}\n{LeftOut(pooled)}";
        return text.TrimEnd('\n');
    }

    public static string Corrections(PooledSweep pooled)
        => pooled.Corrections.Count == 0 ? "" : Markup.Details("What was corrected", Markup.Table(CorrectionTable(pooled), "Corrections and their size"));

    /// <summary>The inputs as a table; empty without a set-up.</summary>
    public static string Errors(PooledSweep pooled)
        => pooled.Errors is not { } errors ? "" : Markup.Table(ErrorTable(errors), "Inputs and the straightness that one standard uncertainty of each makes");

    /// <summary>What the set-up leaves open, each named so that nobody takes its absence for its smallness; empty where it states all.</summary>
    public static string LeftOut(PooledSweep pooled)
    {
        var setup = pooled.Sweep.Setup!;
        var left = new List<string>();
        if (!setup.IsGuideKnown)
            left.Add("the guide's own straightness");
        if (setup.Indicator is { Dial: null, PermissibleError: null, Check: null })
            left.Add("the dial's own error (range_mm and turn_mm, or permissible_error_um)");
        if (setup.Rail is null && setup.Holding is { Kind: HoldingKind.TwoSupports })
            left.Add("bending by weight and measuring force (rail)");
        return left.Count == 0 ? "" : $"Not in the uncertainty, because the set-up doesn't state it: {string.Join("; ", left)}.";
    }

    private static TextTable CorrectionTable(PooledSweep pooled)
    {
        var table = new TextTable("correction", "#size um", "~from");
        foreach (var correction in pooled.Corrections)
            table.Add(correction.Name, Two(correction.SizeUm), correction.Note);
        return table;
    }

    private static TextTable ErrorTable(ProfileErrors errors)
    {
        var (least, most) = (Two(errors.StationUm.Min()), Two(errors.StationUm.Max()));
        var table = new TextTable("input", "#standard uncertainty um", "#degrees of freedom", "averages out by", "~what makes it smaller")
            .Add("height of a station", least == most ? least : $"{least} to {most}", Degrees(errors.StationDegreesOfFreedom), "repeating, laying anew", "take more passes, some after lifting the rail and laying it again");
        foreach (var shape in errors.Shapes)
            table.Add(shape.Input, Two(shape.HeightsUm.Max() - shape.HeightsUm.Min()), Degrees(shape.DegreesOfFreedom), BudgetPicture.Averages(shape.AveragesOut), shape.Remedy);
        return table;
    }

    private static string Degrees(double degrees) => degrees > 1000 ? Shown.None : degrees.ToString("0", CultureInfo.InvariantCulture);

    private static string Two(double um) => um < 0.005 ? "0.00" : um.ToString(um < 9.95 ? "0.00" : "0.0", CultureInfo.InvariantCulture);
}

/// <summary>Whether the rail's bow varied from lay to lay.</summary>
internal sealed class LaysTestView : View<LaysTest>
{
    protected override string Verdict(LaysTest result) => result.Verdict;

    protected override string Text(LaysTest result) => result.BowUm.Count == 0 ? result.Verdict : $"{result.Verdict}\n{Table(result)}";

    protected override string Html(LaysTest result) => Markup.View(result.Verdict, result.BowUm.Count == 0 ? "" : Markup.Table(Table(result), "The bow as each lay shows it"));

    private static TextTable Table(LaysTest test)
    {
        var table = new TextTable("lay", "#bow um");
        foreach (var (lay, bow) in test.Lays.Zip(test.BowUm))
            table.Add(lay.Length == 0 ? Shown.None : lay, Shown.Um(bow));
        return table;
    }
}
