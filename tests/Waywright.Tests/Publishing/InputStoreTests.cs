using Waywright.Publishing;

namespace Waywright.Tests.Publishing;

public sealed class InputStoreTests : IDisposable
{
    // SHA-256 of the three bytes "abc": FIPS 180-4's published example.
    private const string Abc = "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad";

    private readonly BuildFolder _build = new();

    public InputStoreTests()
    {
        _build.Write("rails/sweeps.csv", "abc");
        _build.Notebook("1", "# One", "read", "again");
    }

    public void Dispose() => _build.Dispose();

    [Fact]
    public async Task A_file_is_copied_under_the_published_hash_of_its_bytes()
    {
        var result = await Publish(_ => new InputFile("rails/sweeps.csv", Abc, 3));
        Assert.Equal([new InputFile("rails/sweeps.csv", Abc, 3)], result.Record!.Inputs);
        Assert.Equal("abc", _build.Published("inputs/rails/sweeps.csv"));
    }

    [Theory]
    [InlineData("read", false)] // while it is read
    [InlineData("again", false)] // after its last reading
    [InlineData("again", true)] // between two readings
    public async Task A_file_that_changes_while_the_notebooks_run_is_refused_and_the_earlier_page_stays(string cell, bool isReadAfter)
    {
        await Publish(_ => _build.Input("rails/sweeps.csv"));
        var before = _build.Files(_build.Out);
        var thrown = await Assert.ThrowsAsync<InputException>(() => Publish(code =>
        {
            var read = _build.Input("rails/sweeps.csv");
            if (code == cell)
                _build.Write("rails/sweeps.csv", "abcd");
            return isReadAfter ? _build.Input("rails/sweeps.csv") : read;
        }));
        Assert.StartsWith("rails/sweeps.csv: found a file that changed while the notebooks ran, expected", thrown.Message, StringComparison.Ordinal);
        Assert.Equal(before, _build.Files(_build.Out));
        Assert.Equal(["gantry", "published"], Directory.EnumerateFileSystemEntries(_build.Parent).Select(Path.GetFileName).Order(StringComparer.Ordinal));
    }

    [Fact]
    public async Task A_notebook_whose_cells_change_while_it_runs_is_refused_and_one_that_is_only_saved_with_outputs_is_not()
    {
        var file = Path.Combine(_build.Root, "notebooks", "1.ipynb");
        var text = File.ReadAllText(file);
        Assert.Equal(PublishStatus.Published, (await Publish(_ =>
        {
            File.WriteAllText(file, text.Replace("\"outputs\":[]", "\"outputs\":[{\"output_type\":\"stream\",\"name\":\"stdout\",\"text\":\"1\"}]", StringComparison.Ordinal));
            return _build.Input("rails/sweeps.csv");
        })).Status);
        Assert.NotEqual(text, File.ReadAllText(file));
        var thrown = await Assert.ThrowsAsync<InputException>(() => Publish(_ =>
        {
            File.WriteAllText(file, text.Replace("again", "once more", StringComparison.Ordinal));
            return _build.Input("rails/sweeps.csv");
        }));
        Assert.StartsWith("notebooks/1.ipynb: found a file that changed", thrown.Message, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_file_that_is_gone_fails_the_cell()
    {
        var result = await Publish(_ => new InputFile("rails/gone.csv", Abc, 3));
        Assert.Contains("rails/gone.csv was read by a cell and is gone", result.Failure!.Why, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("../secret.csv")]
    [InlineData("/etc/hostname")]
    [InlineData("rails/../../secret.csv")]
    public async Task A_path_out_of_the_build_folder_fails_the_cell_in_one_sentence(string path)
    {
        File.WriteAllText(Path.Combine(_build.Parent, "secret.csv"), "abc");
        var forged = Output.Data(new() { ["application/vnd.waywright.input+json"] = new System.Text.Json.Nodes.JsonObject { ["bytes"] = 3, ["path"] = path, ["sha256"] = Abc } });
        var result = await new Publisher(new ScriptedSessions((_, _, _) => Output.Done(forged)).StartAsync, TimeProvider.System)
            .PublishAsync(_build.Request(), null, TestContext.Current.CancellationToken);
        Assert.Equal(PublishStatus.Failed, result.Status);
        Assert.Contains($"'{path}' is no path inside a build folder", result.Failure!.Why, StringComparison.Ordinal);
        Assert.DoesNotContain('\n', result.Failure.Why);
    }

    [Fact]
    public async Task A_link_that_leads_out_of_the_build_folder_is_not_followed()
    {
        var secret = Path.Combine(_build.Parent, "secret");
        Directory.CreateDirectory(secret);
        File.WriteAllText(Path.Combine(secret, "key.csv"), "abc");
        Directory.CreateSymbolicLink(Path.Combine(_build.Root, "data"), secret);
        var result = await Publish(_ => new InputFile("data/key.csv", Abc, 3));
        Assert.Contains("data/key.csv leads out of the build folder through a link", result.Failure!.Why, StringComparison.Ordinal);
        Assert.DoesNotContain("inputs/data/key.csv", _build.Files(_build.Failed).Keys);
    }

    [Fact]
    public async Task A_name_of_hostile_characters_is_only_a_name()
    {
        const string name = "rails/<img src=x onerror=alert(1)> & \"sweeps\".csv";
        _build.Write(name, "abc");
        var result = await Publish(_ => new InputFile(name, Abc, 3));
        Assert.Equal(PublishStatus.Published, result.Status);
        Assert.DoesNotContain("<img", _build.Published("index.html"), StringComparison.Ordinal);
    }

    private Task<PublishResult> Publish(Func<string, InputFile> read)
        => new Publisher(new ScriptedSessions((_, code, _) => Output.Done(Output.Input(read(code)))).StartAsync, TimeProvider.System)
            .PublishAsync(_build.Request(), null, TestContext.Current.CancellationToken);
}
