using System.Globalization;
using System.Text.RegularExpressions;
using Waywright.Notebooks;

namespace Waywright.Tests.Mounting;

/// <summary>The order of the screws as it is drawn: right places, right numbers, and room for each.</summary>
public partial class TighteningPictureTests
{
    public static TheoryData<double, double, int> Rails => new() { { 320, 25, 1 }, { 350, 20, 1 }, { 1000, 25, 1 }, { 160, 40, 1 }, { 1000, 25, 2 } };

    private static ScrewPattern Pattern(double length, double pitch, int every) => every == 1 ? ScrewPattern.Every(length, pitch, pitch / 4) : ScrewPattern.Every(length, pitch, pitch / 4).EveryOther();

    [Theory]
    [MemberData(nameof(Rails))]
    public void Each_round_has_every_screw_at_its_place_with_its_turn_and_numbers_keep_clear_of_each_other(double length, double pitch, int every)
    {
        var pattern = Pattern(length, pitch, every);
        var numbers = Numbers(TighteningPicture.Of(pattern));
        var order = pattern.TighteningRounds[0];
        Assert.Equal(2 * order.Count, numbers.Length);
        foreach (var round in new[] { numbers[..order.Count], numbers[order.Count..] })
        {
            for (var turn = 1; turn <= order.Count; turn++)
            {
                var number = Assert.Single(round, n => n.Turn == turn);
                Assert.Equal(12 + (316 * pattern.HolesMm[order[turn - 1] - 1] / length), number.X, 0.06);
            }

            foreach (var (a, b) in round.SelectMany(a => round.Where(b => b.Turn > a.Turn).Select(b => (a, b))))
                Assert.True(Math.Abs(a.X - b.X) >= 16 || Math.Abs(a.Y - b.Y) >= 12, $"{a} and {b}");
        }
    }

    [Fact]
    public void The_second_round_differs_from_the_first_by_words_and_strokes_not_by_colour()
    {
        var svg = TighteningPicture.Of(Pattern(320, 25, 2));
        Assert.Contains("1st round, snug", svg);
        Assert.Contains("2nd round, final", svg);
        Assert.Contains("stroke=\"currentColor\" stroke-width=\"0.8\"", svg);
        Assert.Contains("stroke=\"currentColor\" stroke-width=\"2.2\"", svg);
        Assert.Contains("stroke-dasharray", svg);
        Assert.Contains("dot<", svg);
        Assert.Contains("Dotted holes stay empty.", Views.Html(Pattern(320, 25, 2)));
        Assert.DoesNotContain("Dotted holes", Views.Html(Pattern(320, 25, 1)));
    }

    private static (double X, double Y, int Turn)[] Numbers(string svg)
        => [.. NumberPattern().Matches(svg).Select(m => (Number(m.Groups[1].Value), Number(m.Groups[2].Value), int.Parse(m.Groups[3].Value, CultureInfo.InvariantCulture)))];

    private static double Number(string text) => double.Parse(text, CultureInfo.InvariantCulture);

    [GeneratedRegex("<text x=\"([0-9.]+)\" y=\"([0-9.]+)\" text-anchor=\"middle\"[^>]*>([0-9]+)<")]
    private static partial Regex NumberPattern();
}
