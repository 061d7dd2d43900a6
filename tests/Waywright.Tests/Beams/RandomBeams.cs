using CsCheck;

namespace Waywright.Tests.Beams;

/// <summary>Beams, forces and stations at random, on a grid of a two-hundredth of the length, so that how well they are conditioned is known.</summary>
static class RandomBeams
{
    const int Grid = 200;

    // Zero or not tiny: a force of 1e-60 N proves nothing, and decimals end at 1e-28.
    static readonly Gen<double> Hundredths = Gen.Int[-500, 500].Select(i => i / 100.0);

    /// <summary>A beam on 2 to 5 supports, level or not, with up to 4 forces that may push up and may stand on a support, and 18 stations.</summary>
    public static Gen<(SupportedBeam Beam, PointForce[] Forces, double[] Stations)> Cases { get; } =
        from length in Gen.Double[50, 2000]
        from stiffness in Gen.Double[0.1, 500]
        from weight in Gen.OneOf(Gen.Const(0.0), Gen.Double[0.1, 50])
        from supports in Places(2, 5)
        from heights in Gen.OneOf(Gen.Const(new double[5]), Hundredths.Array[5])
        from forces in Gen.Select(Gen.Int[0, Grid], Hundredths, (at, newtons) => new PointForce(Place(at, length), newtons)).Array[0, 4]
        from stations in Places(18, 18)
        select (new SupportedBeam(length, stiffness, weight, [.. supports.Select(i => Place(i, length))], heights[..supports.Length]), forces, stations.Select(i => Place(i, length)).ToArray());

    /// <summary>Size of a beam's figures, um: its heights drawn out over its length, and what loads and reactions could do to it as a cantilever.</summary>
    public static double ScaleUm(BeamLine line)
    {
        var metres = line.Beam.LengthMm / 1000;
        var newtons = (line.Beam.WeightNPerM * metres) + line.Forces.Sum(f => Math.Abs(f.DownwardN)) + line.ReactionsN.Sum(Math.Abs);
        return (line.Beam.SupportHeightsUm.Max(Math.Abs) * line.Beam.LengthMm / ClosestMm(line.Beam)) + (1e6 * newtons * Math.Pow(metres, 3) / line.Beam.BendingStiffnessNm2);
    }

    public static double ClosestMm(SupportedBeam beam) => beam.SupportsMm.Zip(beam.SupportsMm.Skip(1), (a, b) => b - a).Min();

    // The last place is the end itself, not a rounding away from it.
    static double Place(int i, double length) => i == Grid ? length : i * (length / Grid);

    static Gen<int[]> Places(int least, int most) => Gen.Shuffle(Enumerable.Range(0, Grid + 1).ToArray(), least, most);
}
