using System.Globalization;
using CsCheck;

namespace Waywright.Tests;

public class SweepOrderTests
{
    private const string Header = "rail,face,pass,direction,position_mm,reading_um\n";

    private static readonly string[] Rows =
    [
        .. from rail in new[] { "R01", "R02" }
           from face in new[] { "side", "top" }
           from pass in new[] { "1,forward", "2,back", "3,forward" }
           from station in Enumerable.Range(0, 5)
           select string.Create(CultureInfo.InvariantCulture, $"{rail},{face},{pass},{(pass[0] == '3' ? 7 : 10) * station},{rail[2]}{station}.{pass[0]}"),
    ];

    private static Dictionary<string, SweepPass> Passes(IEnumerable<string> rows)
        => SweepBatch.Parse(Header + string.Join('\n', rows), "s.csv").Sweeps.SelectMany(s => s.Passes.Select(p => (Name: $"{s.Name} {p}", Pass: p))).ToDictionary(p => p.Name, p => p.Pass);

    [Fact]
    public void Rows_in_any_order_give_the_same_passes()
    {
        var expected = Passes(Rows);
        Assert.Equal(12, expected.Count);
        Assert.Equal([0, 7, 14, 21, 28], expected["R02 top pass 3 forward"].PositionsMm);
        Assert.Equal([20.3, 21.3, 22.3, 23.3, 24.3], expected["R02 top pass 3 forward"].ReadingsUm);
        Gen.Shuffle(Rows).Sample(rows =>
        {
            var passes = Passes(rows);
            return passes.Count == expected.Count && passes.All(p => p.Value == expected[p.Key]);
        });
    }

    [Fact]
    public void A_pass_swept_from_the_far_end_is_turned_round()
        => Assert.Equal(Passes(Rows)["R01 top pass 2 back"], Passes(Rows.Reverse())["R01 top pass 2 back"]);

    [Fact]
    public void Problems_among_rows_that_repeat_each_other_keep_their_line_and_column()
    {
        const string text = Header + "R01,side,1,forward,10,1\n\n# a break\nR01,side,1,forward,20,2.5\nR01,side,1,forward,-30,3\nR01,side,1,forward,40,\"3,5\"\nR01,side,1,forward,40,3\nR01,side,1,forward,50,x\nR01,side,1,forward\n";
        Assert.Equal(
            "s.csv:6:20: found '-30', expected a position from 0 mm, the end with the dot\n" +
            "s.csv:7:23: found a decimal comma in '3,5', expected one decimal mark in the file: line 5 has a decimal point\n" +
            "s.csv:9:23: found 'x', expected reading_um to be a number such as 12.5\n" +
            "s.csv:10: found 4 fields, expected 6 fields as in the header",
            Assert.Throws<InputException>(() => SweepBatch.Parse(text, "s.csv")).Message);
    }

    [Fact]
    public void One_station_is_told_by_the_last_line_of_its_last_pass()
        => Assert.Equal(
            "s.csv:4: found one station for R01 side, expected at least two stations at different positions",
            Assert.Throws<InputException>(() => SweepBatch.Parse(Header + "R01,side,1,forward,10,1\nR01,side,1,forward,10,2\nR01,side,1,forward,10,3\nR01,top,1,forward,10,1\nR01,top,1,forward,20,1\n", "s.csv")).Message);
}
