using Waywright.Publishing;

namespace Waywright.Tests.Publishing;

public sealed class OutFolderTests : IDisposable
{
    private readonly BuildFolder _build = new();

    public OutFolderTests() => _build.Notebook("1", "# One", "cell");

    public void Dispose() => _build.Dispose();

    [Fact]
    public async Task An_empty_folder_is_used()
    {
        Directory.CreateDirectory(_build.Out);
        Assert.Equal(PublishStatus.Published, (await Publish()).Status);
    }

    [Theory]
    [InlineData("notes.txt", "my notes")]
    [InlineData("record.json", "{ \"format\": \"something else\" }")]
    [InlineData("record.json", "{ \"format\": \"waywright build record 1\" }")]
    [InlineData("run.json", "not even JSON")]
    public async Task A_folder_with_other_files_is_refused_before_a_cell_runs(string name, string text)
    {
        Directory.CreateDirectory(_build.Out);
        File.WriteAllText(Path.Combine(_build.Out, name), text);
        var sessions = new ScriptedSessions((_, _, _) => Output.Done());
        var thrown = await Assert.ThrowsAsync<InputException>(() => Publish(sessions));
        Assert.Contains($"found a folder with other files in it, such as '{name}'", thrown.Message, StringComparison.Ordinal);
        Assert.Empty(sessions.Ran);
        Assert.Equal(text, File.ReadAllText(Path.Combine(_build.Out, name)));
    }

    [Fact]
    public async Task A_file_that_a_person_put_into_an_earlier_build_is_not_lost()
    {
        await Publish();
        File.WriteAllText(Path.Combine(_build.Out, "notebooks", "mine.txt"), "mine");
        var thrown = await Assert.ThrowsAsync<InputException>(() => Publish());
        Assert.Contains("found 'notebooks/mine.txt', which Waywright did not write", thrown.Message, StringComparison.Ordinal);
        Assert.True(File.Exists(Path.Combine(_build.Out, "notebooks", "mine.txt")));
    }

    [Fact]
    public async Task A_file_in_place_of_the_folder_is_refused()
    {
        File.WriteAllText(_build.Out, "a file");
        Assert.Contains("found a file, expected", (await Assert.ThrowsAsync<InputException>(() => Publish())).Message, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_failed_folder_that_is_not_ours_is_refused_too()
    {
        Directory.CreateDirectory(_build.Failed);
        File.WriteAllText(Path.Combine(_build.Failed, "notes.txt"), "mine");
        await Assert.ThrowsAsync<InputException>(() => Publish());
        Assert.True(File.Exists(Path.Combine(_build.Failed, "notes.txt")));
    }

    [Fact]
    public async Task What_a_dead_run_left_beside_the_folder_is_cleaned_up()
    {
        Directory.CreateDirectory(Path.Combine(_build.Parent, ".published.waywright-new", "notebooks"));
        await Publish();
        Assert.Equal(["gantry", "published"], Directory.EnumerateFileSystemEntries(_build.Parent).Select(Path.GetFileName).Order(StringComparer.Ordinal));
    }

    [Fact]
    public async Task A_run_that_died_between_the_two_renames_costs_nothing()
    {
        await Publish();
        var before = _build.Files(_build.Out);
        Directory.Move(_build.Out, Path.Combine(_build.Parent, ".published.waywright-old"));
        await Publish(new ScriptedSessions((_, _, _) => Output.Raised("E", "no")));
        Assert.Equal(before, _build.Files(_build.Out));
    }

    [Fact]
    public async Task A_run_that_died_after_the_exchange_or_while_it_deleted_costs_nothing()
    {
        await Publish();
        var before = _build.Files(_build.Out);
        await Publish(new ScriptedSessions((_, _, _) => Output.Raised("E", "no")));
        Directory.Move(_build.Failed, Path.Combine(_build.Parent, ".published.waywright-gone"));
        File.Delete(Path.Combine(_build.Parent, ".published.waywright-gone", "run.json"));
        Directory.CreateDirectory(Path.Combine(_build.Parent, ".published.waywright-new", "half-deleted"));
        Directory.CreateDirectory(Path.Combine(_build.Parent, ".published.waywright-old", "half-deleted"));
        await Publish();
        Assert.Equal(before.Keys.Order(), _build.Files(_build.Out).Keys.Order());
        Assert.Equal(["gantry", "published"], Directory.EnumerateFileSystemEntries(_build.Parent).Select(Path.GetFileName).Order(StringComparer.Ordinal));
    }

    [Fact]
    public async Task A_file_that_a_person_puts_into_the_folder_while_the_cells_run_is_not_lost()
    {
        await Publish();
        var mine = Path.Combine(_build.Out, "photo.txt");
        var thrown = await Assert.ThrowsAsync<InputException>(() => Publish(new ScriptedSessions((_, _, _) =>
        {
            File.WriteAllText(mine, "mine");
            return Output.Done();
        })));
        Assert.Contains("found 'photo.txt', which Waywright did not write", thrown.Message, StringComparison.Ordinal);
        Assert.Equal("mine", File.ReadAllText(mine));
    }

    [Fact]
    public void Two_folders_change_places_in_one_step()
    {
        Assert.SkipUnless(OperatingSystem.IsLinux() || OperatingSystem.IsMacOS(), "the system can't");
        _build.Write("one/a.txt", "a");
        _build.Write("two/b.txt", "b");
        Assert.True(FolderSwap.TryExchange(Path.Combine(_build.Root, "one"), Path.Combine(_build.Root, "two")));
        Assert.Equal(("a", "b"), (File.ReadAllText(Path.Combine(_build.Root, "two/a.txt")), File.ReadAllText(Path.Combine(_build.Root, "one/b.txt"))));
        Assert.False(FolderSwap.TryExchange(Path.Combine(_build.Root, "one"), Path.Combine(_build.Root, "absent")));
    }

    [Fact]
    public async Task A_second_run_to_the_same_folder_waits_its_turn()
    {
        InputException? second = null;
        await Publish(new ScriptedSessions((_, _, token) =>
        {
            second = Assert.Throws<InputException>(() => Publish().WaitAsync(token).GetAwaiter().GetResult());
            return Output.Done();
        }));
        Assert.Contains("another run is publishing to", second!.Message, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_link_to_a_folder_stays_a_link()
    {
        var real = Directory.CreateDirectory(Path.Combine(_build.Parent, "real")).FullName;
        Directory.CreateSymbolicLink(_build.Out, real);
        await Publish();
        Assert.NotNull(new DirectoryInfo(_build.Out).LinkTarget);
        Assert.True(File.Exists(Path.Combine(real, "record.json")));
    }

    [Fact]
    public async Task Notebooks_of_a_published_build_are_no_sources()
    {
        await new Publisher(new ScriptedSessions((_, _, _) => Output.Done()).StartAsync, TimeProvider.System)
            .PublishAsync(_build.Request() with { OutFolder = Path.Combine(_build.Root, "notebooks", "published") }, null, TestContext.Current.CancellationToken);
        Assert.True(File.Exists(Path.Combine(_build.Root, "notebooks", "published", "notebooks", "1.ipynb")));
        Assert.Single(NotebookSet.Find([], _build.Root).Files);
    }

    private Task<PublishResult> Publish(ScriptedSessions? sessions = null)
        => new Publisher((sessions ?? new ScriptedSessions((_, _, _) => Output.Done())).StartAsync, TimeProvider.System)
            .PublishAsync(_build.Request(), null, TestContext.Current.CancellationToken);
}
