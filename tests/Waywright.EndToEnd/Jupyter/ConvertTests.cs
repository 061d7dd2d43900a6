using System.Diagnostics;
using System.Text.Json.Nodes;
using Waywright.EndToEnd.Commands;

namespace Waywright.EndToEnd.Jupyter;

/// <summary>Debian's nbconvert runs every shipped notebook through the kernel.</summary>
public sealed class ConvertTests(InstalledKernel kernel)
{
    [Fact]
    public async Task Every_shipped_notebook_gives_the_same_outputs_by_nbconvert_as_by_publish()
    {
        Needed.OfClient();
        Needed.OfConverter();
        using var folder = new TemporaryFolder();
        var (converted, published) = (Path.Combine(folder.Path, "converted"), Path.Combine(folder.Path, "published"));
        var notebooks = Directory.GetFiles(Path.Combine(Command.Repository, "notebooks"), "*.ipynb");
        Assert.Null(await ConvertAsync(notebooks, converted));
        var publish = await Command.RunAsync("publish", "--out", published, "--date", "2026-03-01");
        Assert.True(publish.ExitCode == 0, publish.Error);
        Assert.NotEmpty(notebooks);
        foreach (var name in notebooks.Select(file => Path.GetFileName(file)!))
        {
            var (own, theirs) = (Cells(Path.Combine(published, "notebooks", name)), Cells(Path.Combine(converted, name)));
            Assert.Equal(own.Count, theirs.Count);
            Assert.Contains(own, cell => cell!["outputs"]!.AsArray().Count > 0);
            foreach (var (one, other) in own.Zip(theirs))
            {
                Assert.Equal((string?)one!["id"], (string?)other!["id"]);
                Assert.Equal(Joined(one["outputs"])!.ToJsonString(), Joined(other["outputs"])!.ToJsonString());
            }
        }
    }

    private static List<JsonNode?> Cells(string notebook) =>
        [.. JsonNode.Parse(File.ReadAllText(notebook))!["cells"]!.AsArray().Where(cell => (string?)cell!["cell_type"] == "code")];

    // The same output in one spelling: a text may stand as one string or as a list of its lines, fields in any order, a number with either exponent letter.
    private static JsonNode? Joined(JsonNode? node) => node switch
    {
        JsonArray { Count: > 0 } list when list.All(item => item is JsonValue value && value.TryGetValue(out string? _)) => string.Concat(list.Select(item => (string)item!)),
        JsonArray list => new JsonArray([.. list.Select(Joined)]),
        JsonObject fields => new JsonObject(fields.OrderBy(field => field.Key, StringComparer.Ordinal).Select(field => KeyValuePair.Create(field.Key, Joined(field.Value)))),
        JsonValue value when value.GetValueKind() == System.Text.Json.JsonValueKind.Number => value.GetValue<double>(),
        _ => node?.DeepClone(),
    };

    // Null when all went well, else what it complains of.
    private async Task<string?> ConvertAsync(string[] notebooks, string folder)
    {
        var start = new ProcessStartInfo(Needed.Python, ["-m", "nbconvert", "--to", "notebook", "--execute", "--output-dir", folder, .. notebooks]) { RedirectStandardError = true };
        kernel.Show(start);
        using var python = Process.Start(start)!;
        var said = await python.StandardError.ReadToEndAsync(TestContext.Current.CancellationToken);
        await python.WaitForExitAsync(TestContext.Current.CancellationToken);
        return python.ExitCode == 0 ? null : said;
    }
}
