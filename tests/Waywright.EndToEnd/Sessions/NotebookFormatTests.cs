using System.Diagnostics;
using System.Text.Json.Nodes;

namespace Waywright.EndToEnd.Sessions;

public sealed class NotebookFormatTests
{
    private const string Python = "/usr/bin/python3";

    /// <summary>Checked by Jupyter's own nbformat, against its schema of format 4.5.</summary>
    [Fact]
    public async Task Outputs_of_every_kind_make_a_valid_notebook()
    {
        if (await RunAsync("import nbformat", "") is { } absent)
        {
            Assert.SkipUnless(Environment.GetEnvironmentVariable("WAYWRIGHT_REQUIRE_ALL") == "1", $"no nbformat for Python here: {absent}");
            Assert.Fail(absent);
        }

        await using var session = await Cells.StartAsync(limitSeconds: 2);
        var cells = new JsonArray();
        string[] sources =
        [
            """Console.WriteLine("a"); Console.Error.Write("b"); display("c"); 1.5""",
            """using Microsoft.DotNet.Interactive.Formatting; new[] { new FormattedValue("application/json", "[1]"), new FormattedValue("application/vnd.waywright.figures+json", "{}"), new FormattedValue("text/plain", "x") }""",
            """throw new Exception("no");""",
            "does not compile",
            "while (true) { }",
            "1",
        ];
        foreach (var source in sources)
        {
            var run = await session.RunAsync(source);
            Assert.NotEmpty(run.Outputs);
            cells.Add(new JsonObject
            {
                ["cell_type"] = "code",
                ["id"] = $"cell-{cells.Count}",
                ["execution_count"] = cells.Count + 1,
                ["metadata"] = new JsonObject(),
                ["source"] = source,
                ["outputs"] = new JsonArray([.. run.Outputs]),
            });
        }

        var notebook = new JsonObject { ["cells"] = cells, ["metadata"] = new JsonObject(), ["nbformat"] = 4, ["nbformat_minor"] = 5 };
        Assert.Null(await RunAsync("import nbformat, json, sys; nbformat.validate(json.load(sys.stdin))", notebook.ToJsonString()));
        Assert.Equal(
            ["stream", "stream", "display_data", "execute_result", "execute_result", "error", "error", "error", "error"],
            cells.SelectMany(cell => cell!["outputs"]!.AsArray()).Select(output => (string?)output!["output_type"]));
    }

    // Null when the program ends well, else what it complains of.
    private static async Task<string?> RunAsync(string program, string input)
    {
        if (!File.Exists(Python)) return $"{Python} does not exist";
        using var python = Process.Start(new ProcessStartInfo(Python, ["-c", program]) { RedirectStandardInput = true, RedirectStandardError = true })!;
        await python.StandardInput.WriteAsync(input);
        python.StandardInput.Close();
        var complaint = await python.StandardError.ReadToEndAsync(TestContext.Current.CancellationToken);
        await python.WaitForExitAsync(TestContext.Current.CancellationToken);
        return python.ExitCode == 0 ? null : complaint.Trim().Split('\n')[^1];
    }
}
