namespace Waywright.Tests;

/// <summary>Invented sweeps for checks of what a sweep is uncertain by.</summary>
internal static class Simulated
{
    /// <summary>17 stations over 320 mm.</summary>
    public static double[] Stations { get; } = [.. Enumerable.Range(0, 17).Select(i => 20.0 * i)];

    /// <summary>A set-up; <paramref name="instrument"/> and <paramref name="more"/> are members of JSON that begin with a comma.</summary>
    public static Setup Setup(string instrument = "", string more = "", string held = "two supports at 70 mm, 250 mm", string readTo = "whole", double division = 1, double guideUm = 0)
        => SetupBook.Parse(FormattableString.Invariant($$$"""
            {"setups":[{"id":"bench","guide":"plate","guide_straightness_um":{{{guideUm}}},"guide_known_from":"certificate","probe":"surface","held":"{{{held}}}",
            "instrument":{"name":"dial","division_um":{{{division}}},"read_to":"{{{readTo}}}"{{{instrument}}}}{{{more}}}}]}
            """), "setups.json").Setups[0];

    /// <summary>Passes over the stations, each a lay, a direction and readings in order of position.</summary>
    public static Sweep Sweep(Setup? setup, RailFace face, params (string Lay, string Direction, double[] Readings)[] passes)
        => new("R", face, setup?.Id, setup, [.. passes.Select((p, k) => new SweepPass($"{k + 1}", p.Direction, p.Lay, Stations, p.Readings))], "test");

    /// <summary>Gaussian numbers, one row for each pass and trial.</summary>
    public static double[] Noise(int trial, int pass, double sigma)
    {
        var values = new double[Stations.Length];
        new RandomDraws(20261125).Gaussian((uint)((1000 * trial) + pass), 0, values);
        return Array.ConvertAll(values, v => sigma * v);
    }

    public static double Straightness(IReadOnlyList<double> heights) => StraightnessFigures.Of(new Profile(Stations, heights)).MinimumZone.Line.STRtUm;
}
