using Plotly.NET;

namespace Waywright.Notebooks;

/// <summary>The pictures of the views as Plotly.NET charts, to change or to combine. A cell that returns one shows it offline.</summary>
public static class Charts
{
    /// <summary>A face: single readings, combined stations, reference lines, minimum zone, contacts; heights in um, positions in mm from the dot.</summary>
    /// <param name="face">A combined sweep.</param>
    /// <param name="limitUm">A limit on STRt to draw beside it, um.</param>
    public static GenericChart Rail(PooledSweep face, double? limitUm = null)
    {
        ArgumentNullException.ThrowIfNull(face);
        return PlotlyPicture.Draw(RailPicture.Of(face, limitUm));
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
}
