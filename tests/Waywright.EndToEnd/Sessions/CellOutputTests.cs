using Waywright.Kernel;

namespace Waywright.EndToEnd.Sessions;

public sealed class CellOutputTests(SharedSession shared) : IClassFixture<SharedSession>
{
    private readonly ICellSession _session = shared.Session;

    [Fact]
    public async Task Values_carry_from_cell_to_cell()
    {
        await _session.RunAsync("var pitch = 25; int Twice(int x) => 2 * x;");
        var run = await _session.RunAsync("Console.Write(Twice(pitch));");
        Assert.Equal(CellOutcome.Done, run.Outcome);
        Assert.Null(run.Why);
        Assert.Equal("50", run.Stdout());
    }

    [Fact]
    public async Task Both_console_streams_are_kept_apart_and_in_order()
    {
        var run = await _session.RunAsync("""
            Console.Write("a");
            Console.WriteLine("b");
            Console.Error.WriteLine("c");
            Console.WriteLine(1.5);
            """);
        Assert.Equal(["stdout: ab\n", "stderr: c\n", "stdout: 1.5\n"], run.Streams());
    }

    [Fact]
    public async Task A_character_written_in_two_halves_arrives_whole()
    {
        var run = await _session.RunAsync("""Console.Write('\ud83d'); Console.Write('\ude00');""");
        Assert.Equal("\ud83d\ude00", run.Stdout());
    }

    [Fact]
    public async Task Listeners_hear_each_output_as_it_comes()
    {
        var heard = new List<string>();
        await _session.RunAsync("the-cell", """Console.Write("a"); Console.Write("b"); display("c"); "d" """, output => heard.Add((string)output["output_type"]!), TestContext.Current.CancellationToken);
        Assert.Equal(["stream", "stream", "display_data", "execute_result"], heard);
    }

    [Fact]
    public async Task A_display_and_a_value_are_two_outputs_and_only_the_value_has_a_count()
    {
        var run = await _session.RunAsync("""display("shown"); "returned" """);
        Assert.Equal("""{"data":{"text/plain":"shown"},"metadata":{},"output_type":"display_data"}""", run.Outputs[0].ToJsonString());
        Assert.Equal("returned", (string?)run.Outputs[1]["data"]!["text/plain"]);
        Assert.True((int)run.Outputs[1]["execution_count"]! > 0);
    }

    [Theory]
    [InlineData("""var shown = display("first");""")]
    [InlineData("""var shown = "first".Display();""")]
    public async Task An_update_takes_the_place_of_what_was_shown(string show)
    {
        var run = await _session.RunAsync($$"""{{show}} Console.WriteLine("between"); shown.Update("second"); shown.Update("third");""");
        Assert.Equal(["""{"text/plain":"third"}""", "between\n"], run.Outputs.Select(output => output["data"]?.ToJsonString() ?? (string)output["text"]!));
    }

    [Fact]
    public async Task An_update_of_what_an_earlier_cell_showed_is_shown_again()
    {
        await _session.RunAsync("""var earlier = display("first");""");
        var run = await _session.RunAsync("""earlier.Update("second"); earlier.Update("third");""");
        Assert.Equal("third", (string?)Assert.Single(run.Outputs)["data"]!["text/plain"]);
    }

    [Fact]
    public async Task Json_comes_as_json_and_types_come_in_ordinal_order()
    {
        var run = await _session.RunAsync("""
            using Microsoft.DotNet.Interactive.Formatting;
            new[] { new FormattedValue("text/plain", "p\r\nq"), new FormattedValue("application/vnd.waywright.figures+json", "{\"a\":[1,2.50]}"), new FormattedValue("text/html", "<p>"), new FormattedValue("application/json", "no json") }
            """);
        Assert.Equal("""{"application/json":"no json","application/vnd.waywright.figures\u002Bjson":{"a":[1,2.50]},"text/html":"\u003Cp\u003E","text/plain":"p\nq"}""", Assert.Single(run.Outputs)["data"]!.ToJsonString());
    }

    [Fact]
    public async Task What_is_written_past_the_console_is_an_output_too()
    {
        var run = await _session.RunAsync("""
            using (var raw = Console.OpenStandardOutput()) raw.Write("raw \u00e9\n"u8);
            using (var raw = Console.OpenStandardError()) raw.Write("wrong"u8);
            """);
        Assert.Equal(["stderr: wrong", "stdout: raw \u00e9\n"], run.Streams().Order(StringComparer.Ordinal));
    }

    [Fact]
    public async Task Text_written_past_the_console_is_cut_at_its_limit_and_says_so()
    {
        var run = await _session.RunAsync("""
            var line = new byte[100_000];
            Array.Fill(line, (byte)'x');
            using (var raw = Console.OpenStandardOutput()) for (var i = 0; i < 30; i++) raw.Write(line);
            """);
        Assert.Equal(CellOutcome.Done, run.Outcome);
        Assert.Equal(1_000_000, run.Stdout().Count(letter => letter == 'x'));
        Assert.EndsWith("is cut here, at 1 MB\n", run.Stdout(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_cell_that_asks_for_input_is_refused_in_one_sentence()
    {
        foreach (var asking in new[] { "Console.In.ReadLine()", "Console.Read()", "await Microsoft.DotNet.Interactive.Kernel.GetInputAsync(\"name\")" })
        {
            var run = await _session.RunAsync(asking);
            Assert.Equal("InputRefused", (string?)run.Error()["ename"]);
            Assert.Equal(RefusedInput.Why, (string?)run.Error()["evalue"]);
            Assert.Equal(RefusedInput.Why, (string?)Assert.Single(run.Error()["traceback"]!.AsArray()));
        }
    }

    [Fact]
    public async Task A_thread_that_a_cell_left_behind_says_nothing_in_the_next_one()
    {
        await _session.RunAsync("""
            using System.Threading;
            var go = new ManualResetEventSlim();
            var gone = new ManualResetEventSlim();
            new Thread(() => { go.Wait(); Console.WriteLine("late"); display("late"); gone.Set(); }) { IsBackground = true }.Start();
            """);
        var run = await _session.RunAsync("""go.Set(); gone.Wait(); Console.Write("mine");""");
        Assert.Equal(["stdout: mine"], run.Streams());
        Assert.Single(run.Outputs);
    }

    [Fact]
    public async Task Threads_of_the_cell_itself_are_heard()
    {
        var run = await _session.RunAsync("""await System.Threading.Tasks.Task.Run(() => Console.Write("from the pool"));""");
        Assert.Equal("from the pool", run.Stdout());
    }
}
