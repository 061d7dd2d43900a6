using Waywright.Notebooks;

namespace Waywright.Tests.Notebooks;

public sealed class SheetTests : IDisposable
{
    private const string Header = "rail,width_mm,length_mm,pitch_mm,end_distance_mm\n";

    private readonly string _folder = Directory.CreateTempSubdirectory("waywright-").FullName;

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [Theory]
    [InlineData("# To do: measure each rail.\n" + Header, false)]
    [InlineData(Header, false)]
    [InlineData("\uFEFF# To do: measure each rail.\r\n\r\n" + Header + "  # a remark\n", false)]
    [InlineData("# To do: measure each rail.\n" + Header + "R01,9,320,25,10\n", true)]
    [InlineData("\"# To do: measure each rail, then type.\",,,,\r\nrail,width_mm,length_mm,pitch_mm,end_distance_mm\r\n,,,,\r\n", false)]
    [InlineData(Header + "\"# 1\",9,320,25,10\n", true)]
    [InlineData("", true)]
    public void A_table_is_empty_where_it_holds_a_header_and_no_rows(string text, bool filled)
        => Assert.Equal(filled, SheetText.Of(Write("rails.csv", text), "rails.csv").IsFilled);

    [Theory]
    [InlineData("{ \"note\": \"To do: edit.\", \"setups\": [] }", false)]
    [InlineData("{ \"note\": \"ours\", \"setups\": [] }", true)]
    [InlineData("{ \"setups\": [] }", true)]
    [InlineData("[ 1 ]", true)]
    [InlineData("{ not json", true)]
    public void A_document_is_missing_while_its_note_says_to_do_and_what_is_wrong_in_it_is_left_to_its_reader(string text, bool filled)
        => Assert.Equal(filled, SheetText.Of(Write("setups.json", text), "setups.json").IsFilled);

    [Fact]
    public void What_to_do_is_still_told_of_an_empty_sheet_that_a_spreadsheet_has_saved()
        => Assert.Equal("Measure each rail, then type.", SheetText.Of(Write("rails.csv", "\"# To do: measure each rail, then type.\",,,,\r\n" + Header), "rails.csv").Next);

    [Fact]
    public void What_rests_on_two_empty_sheets_names_both_and_runs_nothing()
    {
        var first = Sheet.Answers("Set wanted", "");
        var second = Sheet.Answers("Set friction.", "2 N", " ");
        var both = first.Then<IReadOnlyList<string>, string>(second, (_, _) => throw new InvalidOperationException("must not run"));
        Assert.Equal(["Set wanted.", "Set friction."], both.Missing);
        Assert.Null(both.OrNull);
        Assert.Equal("Nothing to show yet. Set wanted. Set friction.", Views.Text(both));
        Assert.Equal(both.Missing, both.Then(text => text.Length).Keep("never").Missing);
    }

    [Fact]
    public void A_value_that_stands_is_shown_as_itself()
    {
        var stock = Sheet.Answers("Set it.", "x").Then(_ => RailStock.Parse(Header + "R01,9,320,25,10\n", "rails.csv"));
        Assert.Equal(Views.Text(stock.OrNull!), Views.Text(stock));
        Assert.Equal(Views.Html(stock.OrNull!), Views.Html(stock));
        Assert.Equal(["Enough rails."], stock.Needs(s => s.Rails.Count > 1, "Enough rails").Missing);
    }

    [Fact]
    public void The_state_of_a_build_says_first_what_to_fill_in_next_and_leaves_out_what_it_can_do_without()
    {
        var state = StateOf(
            Write("rails.csv", "# To do: measure each rail.\n" + Header), Write("drag.csv", "# If you like: pull.\nrail\n"), Write("spans.csv", "# To do: pluck <b>.\nbelt\n"), Write("full.csv", "a\n1\n"), Path.Combine(_folder, "gone.csv"));
        var said = Views.Text(state);
        Assert.Matches("^Fill in rails.csv next: 3 sheets are still missing. Measure each rail. After it: spans.csv, gone.csv.\n", said);
        Assert.Contains("empty, not needed", said);
        Assert.Contains("no such file", said);
        Assert.Contains("&lt;b&gt;", Views.Html(state));
    }

    [Fact]
    public void A_build_with_every_sheet_filled_says_to_go_on()
        => Assert.StartsWith("Go on to the results", Views.Text(StateOf(Write("full.csv", "a\n1\n"), Write("drag.csv", "# If you like: pull.\nrail\n"))));

    private static BuildState StateOf(params string[] paths) => new([.. paths.Select(path => SheetText.Of(path, Path.GetFileName(path)))]);

    private string Write(string name, string text)
    {
        var path = Path.Combine(_folder, name);
        File.WriteAllText(path, text);
        return path;
    }
}
