using System.Globalization;
using Waywright.Tests.Reference;

namespace Waywright.Tests.Mounting;

/// <summary>Warmth against finite elements of both bars with sliding screws between them, loaded in steps, up and back (NumPy, SciPy's bounded least squares).</summary>
public sealed class WarmthSliderTests
{
    private const int Elements = 70;

    [Fact]
    public void Bow_end_moments_and_what_stays_are_those_of_two_bars_with_sliding_screws()
    {
        DebianPython.RequireSciPy();
        var cases = Cases().ToArray();
        var file = Path.GetTempFileName();
        try
        {
            File.WriteAllLines(file, cases.Select(Line));
            var lines = DebianPython.Run("warmth/two_bars_with_sliders.py", file);
            Assert.Equal(cases.Length, lines.Length);
            foreach (var (warmth, line) in cases.Zip(lines))
            {
                var expected = Array.ConvertAll(line.Split(' '), ReferenceFile.Number);
                var bow = expected.Take(Elements + 1).Max(Math.Abs);
                for (var i = 0; i <= Elements; i++)
                    Assert.Equal(expected[i], warmth.Held.HeightsUm[10 * i], 1e-4 * bow);
                // On the way back a screw may slide a little one way and then the other, which one step does not see: below 1 % of the warm bow in these cases.
                var stays = expected.Skip(Elements + 1).Take(Elements + 1).MaxBy(Math.Abs);
                Assert.Equal(stays, warmth.StaysUm, 0.01 * Math.Max(bow, Math.Abs(stays)));
                if (warmth.EndsHeld)
                    Assert.Equal(expected[^2..], warmth.EndMomentsNm.Select(m => 1000 * m), (a, b) => Math.Abs(a - b) < 1e-4 * Math.Abs(expected[^1]));
            }
        }
        finally
        {
            File.Delete(file);
        }
    }

    /// <summary>Invented sections and screws, symmetric and not, from hardly held to hardly sliding.</summary>
    private static IEnumerable<Warmth> Cases()
    {
        var random = new Random(5);
        double Any(double low, double high) => low + ((high - low) * random.NextDouble());
        var every = ScrewPattern.Every(350, 20, 5);
        ScrewPattern[] patterns = [every.EveryOther(), every, every.InHoles(1, 2, 3, 9, 17), every.OfCount(4), every.InHoles(1, 4, 5, 11, 12), every.OfCount(2)];
        for (var i = 0; i < 24; i++)
        {
            var rail = BarSection.Rectangle(206, Any(7, 15), Any(5, 12), 11.4);
            var under = new BarSection(69.5, Any(100, 400), Any(3000, 40_000), Any(8, 20), 23.4);
            yield return Warmth.Of(rail, under, 20, i % 5 == 0 ? -10 : 50, patterns[i / 2 % patterns.Length], Any(0.05, 1) * (i % 3 == 0 ? 8000 : 1500), 0.15, endsHeld: i % 2 == 1);
        }
    }

    private static string Line(Warmth w)
    {
        double[] numbers =
        [
            w.LengthMm, Elements, w.EndsHeld ? 1 : 0, w.Friction * w.ClampForceN, (w.Base.ExpansionPerMK - w.Rail.ExpansionPerMK) * 1e-6, w.ToC - w.FromC,
            1000 * w.Rail.YoungGPa, w.Rail.AreaMm2, w.Rail.MomentMm4, w.Rail.ToJointMm, 1000 * w.Base.YoungGPa, w.Base.AreaMm2, w.Base.MomentMm4, w.Base.ToJointMm, .. w.ScrewsMm,
        ];
        return string.Join(' ', numbers.Select(n => n.ToString("R", CultureInfo.InvariantCulture)));
    }
}
