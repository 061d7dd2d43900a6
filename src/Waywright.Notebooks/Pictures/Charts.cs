using Plotly.NET;

namespace Waywright.Notebooks;

/// <summary>The pictures of the views as Plotly.NET charts, to change or to combine. A cell that returns one shows it offline.</summary>
public static class Charts
{
    /// <summary>A face: single readings, combined stations, reference lines, minimum zone, contacts; heights in um, positions in mm from the dot. With a set-up also the interval of STRt and the noise floor.</summary>
    /// <param name="face">A combined sweep.</param>
    /// <param name="limitUm">A limit on STRt to draw beside it, um.</param>
    public static GenericChart Rail(PooledSweep face, double? limitUm = null)
    {
        ArgumentNullException.ThrowIfNull(face);
        return PlotlyPicture.Draw(RailPicture.Of(face, limitUm, sure: face.Uncertainty()));
    }

    /// <summary>A batch as small pictures on one scale, sorted by what to do next.</summary>
    /// <param name="graded">A graded batch.</param>
    /// <exception cref="ArgumentException">No rail of it has a face that was swept.</exception>
    public static GenericChart Batch(GradedBatch graded)
    {
        ArgumentNullException.ThrowIfNull(graded);
        return PlotlyPicture.Draw(BatchPicture.Of(graded) ?? throw new ArgumentException("No rail of the batch has a face to draw.", nameof(graded)));
    }

    /// <summary>Tension in N over the note of the span in Hz, with the reading and its 95 % interval.</summary>
    /// <param name="belt">A span with note and tension.</param>
    /// <param name="name">What the belt is called.</param>
    public static GenericChart Tension(BeltTension belt, string name = "the span")
    {
        ArgumentNullException.ThrowIfNull(belt);
        return PlotlyPicture.Draw(BeltPicture.Tension(belt, name));
    }

    /// <summary>Figures below each other, um: estimate with its 95 % interval, what was read, what noise alone reads, and the limit if given.</summary>
    /// <param name="rows">Label, figure and limit in um of each row, the first on top: the rails of a batch, say.</param>
    /// <exception cref="ArgumentException">No row.</exception>
    public static GenericChart Intervals(params IEnumerable<(string Label, UncertainFigure Figure, double? LimitUm)> rows)
    {
        ArgumentNullException.ThrowIfNull(rows);
        IntervalRow[] drawn = [.. rows.Select(r => new IntervalRow(r.Label, r.Figure, r.LimitUm))];
        if (drawn.Length == 0)
            throw new ArgumentException("Nothing to draw: give a row.", nameof(rows));
        return PlotlyPicture.Draw(IntervalPicture.Of("Straightness with its intervals", "", drawn));
    }

    /// <summary>STRt of a profile about each reference line, um, with estimate, interval and noise floor.</summary>
    /// <param name="straightness">Figures with their uncertainty.</param>
    public static GenericChart Intervals(StraightnessUncertainty straightness)
    {
        ArgumentNullException.ThrowIfNull(straightness);
        return PlotlyPicture.Draw(IntervalPicture.Of("Straightness with its intervals", "reference line", StraightnessUncertaintyView.Rows(straightness)));
    }

    /// <summary>What makes STRt of a profile uncertain: by how many um one standard uncertainty of each input moves it, the largest on top.</summary>
    /// <param name="straightness">Figures with their uncertainty.</param>
    public static GenericChart Budget(StraightnessUncertainty straightness)
    {
        ArgumentNullException.ThrowIfNull(straightness);
        return PlotlyPicture.Draw(BudgetPicture.Of("STRt", straightness.Budget));
    }

    /// <summary>The same for components from elsewhere: an instrument's, say.</summary>
    /// <param name="budget">Components with their effect on the figure.</param>
    /// <param name="figure">What they move.</param>
    /// <param name="unit">Unit of the effects.</param>
    /// <exception cref="ArgumentException">No component.</exception>
    public static GenericChart Budget(IEnumerable<UncertaintyComponent> budget, string figure, string unit)
    {
        ArgumentNullException.ThrowIfNull(budget);
        return PlotlyPicture.Draw(BudgetPicture.Of(figure, budget, unit));
    }
}
