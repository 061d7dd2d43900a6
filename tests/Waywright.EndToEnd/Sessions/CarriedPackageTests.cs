using Waywright.Kernel;

namespace Waywright.EndToEnd.Sessions;

public sealed class CarriedPackageTests(SharedSession shared) : IClassFixture<SharedSession>
{
    private readonly ICellSession _session = shared.Session;

    [Fact]
    public async Task The_first_line_of_a_notebook_is_blanked_and_every_other_line_keeps_its_number()
    {
        var run = await _session.RunAsync($"""
            // what every notebook begins with
            #r "nuget: Waywright.Notebooks, {CarriedPackages.Version}"
            using System.IO;
            var wrong = missing;
            """);
        Assert.StartsWith("line 4, column 13: error CS0103", (string?)run.Error()["evalue"], StringComparison.Ordinal);
    }

    [Fact]
    public async Task Another_version_is_one_sentence_and_nothing_is_run()
    {
        var run = await _session.RunAsync("""
            #r "nuget: Waywright.Notebooks, 99.1.0"
            Console.Write("run");
            """);
        Assert.Equal(CellOutcome.Raised, run.Outcome);
        Assert.Equal($"This notebook asks for Waywright.Notebooks 99.1.0, but this waywright carries {CarriedPackages.Version}: use waywright 99.1.0, or write {CarriedPackages.Version} in the notebook's '#r' line.", run.Why);
        Assert.Equal(run.Why, (string?)Assert.Single(run.Outputs)["evalue"]);
    }

    [Fact]
    public async Task Cells_use_the_carried_libraries_without_asking()
    {
        var run = await _session.RunAsync("""
            using Plotly.NET.CSharp;
            using Deedle;
            var frame = Frame.FromRecords(new[] { new { a = 1.5 } });
            var chart = Chart.Line<double, double, string>(new[] { 1.0, 2 }, new[] { 3.0, 4 });
            Console.Write($"{frame.RowCount} {Plotly.NET.GenericChart.toFigureJson(chart).Length > 20} {UnitsNet.Length.FromMillimeters(5).Meters} {MathNet.Numerics.SpecialFunctions.Gamma(4):f0}");
            """);
        Assert.Equal("1 True 0.005 6", run.Stdout());
    }

    [Fact]
    public async Task Other_packages_are_fetched_and_errors_below_them_keep_their_lines()
    {
        // A package that these tests are built with, so that it is on the machine already.
        var run = await _session.RunAsync("""
            #r "nuget: Deque.AxeCore.Commons, 4.14.0"
            using Deque.AxeCore.Commons;
            typeof(AxeResult).Name
            """);
        Assert.Equal(CellOutcome.Done, run.Outcome);
        Assert.Equal("AxeResult", (string?)Assert.Single(run.Outputs)["data"]!["text/plain"]);
        var broken = await _session.RunAsync("""
            #r "nuget: Deque.AxeCore.Commons, 4.14.0"

            var wrong = missing;
            """);
        Assert.StartsWith("line 3, column 13: error CS0103", (string?)broken.Error()["evalue"], StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("#r \"nuget: Waywright.Notebooks\"\n1", "\n1")]
    [InlineData("#r \"nuget:waywright.notebooks,*\"\r\n1", "\r\n1")]
    [InlineData("\n  #r \"nuget: Waywright\" \n#r \"nuget: Waywright.Placement\"", "\n\n")]
    [InlineData("#r \"nuget: Waywright.Other, 1.0.0\"", "#r \"nuget: Waywright.Other, 1.0.0\"")]
    [InlineData("var text = \"\"\"\n#r \"nuget: Waywright\"\n\"\"\";", "var text = \"\"\"\n#r \"nuget: Waywright\"\n\"\"\";")]
    public void Only_the_lines_of_carried_packages_are_blanked(string code, string blanked)
    {
        Assert.Equal(blanked, CarriedPackages.Blank(code, out var mismatch));
        Assert.Null(mismatch);
    }
}
