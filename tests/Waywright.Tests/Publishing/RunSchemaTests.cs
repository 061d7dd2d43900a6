using System.Text.Json.Nodes;
using Waywright.Kernel;
using Waywright.Publishing;
using Waywright.Tests.Reference;

namespace Waywright.Tests.Publishing;

public sealed class RunSchemaTests : IDisposable
{
    private static readonly ShippedSchema Runs = new("run.schema.json");
    private static readonly ShippedSchema Records = new("record.schema.json");

    private readonly BuildFolder _build = new();

    public void Dispose() => _build.Dispose();

    [Fact]
    public async Task What_a_run_writes_is_valid_published_failed_or_stopped_and_not_when_it_is_broken()
    {
        _build.Write("rails/sweeps.csv", "abc");
        _build.Notebook("1-rails", "# Rails", "//#parameters\nint seed = 7;\nstring limit = \"30 um\";", "keep");
        await Publish(_ => Output.Done(
            Output.Input(_build.Input("rails/sweeps.csv")),
            Output.Kept(new KeptResult("rails/grades", "Use R03.", "14 um", [new Figure("rails/r03/side", "R03 side", 14.2, null, "um", 2.6), new Figure("rails/r03/grade", "R03 grade", null, "gantry", "1")]), "<p>Use R03.</p>")));
        var (record, published) = (_build.Published("record.json"), _build.Published("run.json"));
        Assert.Equal([true], Records.Accepts(record));
        await Publish(_ => Output.Raised("Waywright.InputException", "sweeps.csv:4:17: found 'abc', expected a number"));
        var failed = File.ReadAllText(Path.Combine(_build.Failed, "run.json"));
        await Publish(_ => new CellRun(CellOutcome.Stopped, [], null));
        var stopped = File.ReadAllText(Path.Combine(_build.Failed, "run.json"));
        Assert.Contains("\"stopped\"", stopped, StringComparison.Ordinal);
        Assert.Equal([true, true, true], Runs.Accepts(published, failed, stopped));

        Assert.All(Runs.Accepts(
            Broken(published, run => run.Remove("format")),
            Broken(published, run => run["weather"] = "fair"),
            Broken(published, run => run["failure"] = "none"),
            Broken(published, run => run["status"] = "done"),
            Broken(published, run => run["seconds"] = -1),
            Broken(published, run => run["started"] = "today"),
            Broken(published, run => run["files"]!.AsObject().Remove("record.json")),
            Broken(published, run => run["files"]!["index.html"] = "abc"),
            Broken(published, run => run["files"]!["run.json"] = run["files"]!["index.html"]!.DeepClone()),
            Broken(failed, run => run.Remove("failure")),
            Broken(failed, run => run["files"]!["record.json"] = run["files"]!["index.html"]!.DeepClone())), Assert.False);
    }

    [Fact]
    public void Every_member_is_described() => Runs.DescribesEveryMember();

    private static string Broken(string run, Action<JsonObject> harm)
    {
        var root = JsonNode.Parse(run)!.AsObject();
        harm(root);
        return root.ToJsonString();
    }

    private Task<PublishResult> Publish(Func<string, CellRun> cell)
        => new Publisher(new ScriptedSessions((_, code, _) => code == "keep" ? cell(code) : Output.Done()).StartAsync, TimeProvider.System).PublishAsync(_build.Request(), null, TestContext.Current.CancellationToken);
}
