namespace Waywright.Tests;

/// <summary>Invented rails of 320 mm with a hole every 25 mm from 10 mm on.</summary>
internal static class Holes
{
    public static RailStock Of(params IEnumerable<string> rails)
        => RailStock.Parse("rail,width_mm,length_mm,pitch_mm,end_distance_mm\n" + string.Concat(rails.Select(r => $"{r},9,320,25,10\n")), "rails.csv");
}
