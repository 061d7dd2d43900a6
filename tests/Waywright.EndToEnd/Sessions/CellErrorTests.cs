using Waywright.Kernel;

namespace Waywright.EndToEnd.Sessions;

public sealed class CellErrorTests(SharedSession shared) : IClassFixture<SharedSession>
{
    private readonly ICellSession _session = shared.Session;

    [Fact]
    public async Task A_cell_that_throws_keeps_what_came_before_and_names_its_line()
    {
        var run = await _session.RunAsync("""
            Console.WriteLine("before");

            throw new InvalidOperationException("no rail");
            """);
        Assert.Equal(CellOutcome.Raised, run.Outcome);
        Assert.Equal("Cell 'the-cell' failed: no rail", run.Why);
        Assert.Equal("before\n", run.Stdout());
        Assert.Equal(
            """{"ename":"System.InvalidOperationException","evalue":"no rail","output_type":"error","traceback":["System.InvalidOperationException: no rail","   at the cell in the-cell:line 3"]}""",
            run.Error().ToJsonString().Replace("\\u0027", "'", StringComparison.Ordinal));
    }

    [Fact]
    public async Task The_trace_of_an_awaiting_cell_has_no_lines_of_the_machinery_and_no_folders()
    {
        var run = await _session.RunAsync("""
            async Task Deep() { await Task.Yield(); throw new FormatException("deep"); }
            await Deep();
            """);
        var trace = run.Error()["traceback"]!.AsArray().Select(line => (string)line!).ToList();
        Assert.Equal("   at the cell in the-cell:line 2", trace[^1]);
        Assert.DoesNotContain(trace, line => line.Contains("Microsoft.", StringComparison.Ordinal) || line.Contains("---", StringComparison.Ordinal) || line.Contains('/', StringComparison.Ordinal));
    }

    [Fact]
    public async Task Cells_go_on_after_one_that_threw_and_see_its_variables()
    {
        await _session.RunAsync("""var set = 7; throw new Exception("after");""");
        Assert.Equal("7", (await _session.RunAsync("Console.Write(set);")).Stdout());
    }

    [Fact]
    public async Task A_cell_that_does_not_compile_gives_a_line_for_each_reason()
    {
        var run = await _session.RunAsync("""
            var fine = 1;
            int bad = "text";
              var worse = missing;
            """);
        Assert.Equal(CellOutcome.Raised, run.Outcome);
        var error = run.Error();
        Assert.Equal("CompilationError", (string?)error["ename"]);
        Assert.Equal(
            ["line 2, column 11: error CS0029: Cannot implicitly convert type 'string' to 'int'", "line 3, column 15: error CS0103: The name 'missing' does not exist in the current context"],
            error["traceback"]!.AsArray().Select(line => (string)line!));
        Assert.Single(run.Outputs);
    }

    [Fact]
    public async Task Warnings_about_the_cell_are_shown_and_the_engines_own_are_not()
    {
        var run = await _session.RunAsync("""
            async Task Later() => await Task.Yield();
            Later();
            HTML("<i>shown</i>")
            """);
        var warning = Assert.Single(run.Streams());
        Assert.StartsWith("stderr: line 2, column 1: warning CS4014: ", warning, StringComparison.Ordinal);
        Assert.Equal(1, warning.Count(letter => letter == '\n'));
    }

    [Fact]
    public async Task A_directive_that_is_not_known_is_an_error_with_its_place()
    {
        var run = await _session.RunAsync("#!nosuch");
        Assert.Equal("line 1, column 1: error DNI101: Unknown magic command '#!nosuch'", (string?)run.Error()["evalue"]);
    }
}
