namespace Waywright.Publishing;

/// <summary>A sheet of paper that measuring sheets are made for.</summary>
/// <param name="Folder">Where its sheets lie.</param>
/// <param name="Size">As CSS names it (CSS Paged Media, page sizes).</param>
/// <param name="WidthMm">Upright.</param>
/// <param name="HeightMm">Upright.</param>
internal sealed record Paper(string Folder, string Size, double WidthMm, double HeightMm)
{
    // ISO 216, and ANSI/ASME Y14.1 size A: 8.5 by 11 inches.
    public static IReadOnlyList<Paper> All { get; } = [new("a4", "A4", 210, 297), new("letter", "letter", 215.9, 279.4)];

    /// <summary>Kept free at left and right.</summary>
    public const double MarginMm = 12;

    /// <summary>Of what is printed.</summary>
    public double ColumnMm => WidthMm - (2 * MarginMm);
}
