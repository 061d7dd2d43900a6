using System.Globalization;
using Waywright.Tests.Reference;

namespace Waywright.Tests.Straightness;

/// <summary>Against a general library: SciPy's linear program, HiGHS (Huangfu and Hall, Math. Prog. Comp. 10 (2018) 119-142).</summary>
public sealed class LinearProgramTests
{
    [Fact]
    public void Two_thousand_random_sweeps_have_the_width_that_a_linear_program_finds()
    {
        DebianPython.RequireSciPy();
        var profiles = RandomSweeps.Some(2000, seed: 20261125).ToArray();
        Assert.Contains(profiles, p => p.HasRepeatedStation);
        var file = Path.GetTempFileName();
        try
        {
            File.WriteAllLines(file, profiles.SelectMany(p => new[] { Row(p.PositionsMm), Row(p.HeightsUm) }));
            var widths = DebianPython.Run("minimum_zone_by_linear_program.py", file);
            Assert.Equal(profiles.Length, widths.Length);
            for (var i = 0; i < profiles.Length; i++)
            {
                var expected = ReferenceFile.Number(widths[i]);
                // Where all stations are on a line, the width is the rounding of readings of some hundred micrometres.
                Assert.Equal(expected, StraightnessFigures.Of(profiles[i]).MinimumZone.Line.STRtUm, (1e-9 * expected) + 1e-12);
            }
        }
        finally
        {
            File.Delete(file);
        }
    }

    private static string Row(IReadOnlyList<double> values) => string.Join(' ', values.Select(v => v.ToString("R", CultureInfo.InvariantCulture)));
}
