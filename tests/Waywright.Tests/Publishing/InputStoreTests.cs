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

    [Fact]
    public async Task A_file_that_changes_while_it_is_read_fails_the_cell_that_read_it()
    {
        var result = await Publish(_ =>
        {
            var read = _build.Input("rails/sweeps.csv");
            _build.Write("rails/sweeps.csv", "abcd");
            return read;
        });
        Assert.Equal("notebooks/1.ipynb, code cell 1 ('c2'): rails/sweeps.csv changed while it was read: run again when no other program writes to it", result.Failure!.ToString());
    }

    [Fact]
    public async Task A_file_that_changes_between_two_cells_fails_the_second()
    {
        var result = await Publish(code =>
        {
            if (code == "again")
                _build.Write("rails/sweeps.csv", "abcd");
            return _build.Input("rails/sweeps.csv");
        });
        Assert.Contains("('c3'): rails/sweeps.csv changed between two readings", result.Failure!.ToString(), StringComparison.Ordinal);
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
