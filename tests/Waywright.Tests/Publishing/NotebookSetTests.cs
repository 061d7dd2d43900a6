using Waywright.Publishing;

namespace Waywright.Tests.Publishing;

public sealed class NotebookSetTests : IDisposable
{
    private readonly BuildFolder _build = new();

    public void Dispose() => _build.Dispose();

    [Fact]
    public void Without_arguments_the_notebooks_folder_is_looked_for_upwards()
    {
        _build.Notebook("b");
        _build.Notebook("a");
        _build.Notebook("sub/c");
        _build.Write("notebooks/.ipynb_checkpoints/a-checkpoint.ipynb", "{}");
        var below = Directory.CreateDirectory(Path.Combine(_build.Root, "rails", "raw")).FullName;
        var set = NotebookSet.Find([], below);
        Assert.Equal(_build.Root, set.BuildFolder);
        Assert.Equal(["notebooks/a.ipynb", "notebooks/b.ipynb", "notebooks/sub/c.ipynb"], set.Files.Select(set.PathInBuild));
    }

    [Fact]
    public void A_notebook_that_stands_alone_is_its_own_build()
    {
        _build.Write("alone/x.ipynb", "{}");
        var set = NotebookSet.Find(["alone/x.ipynb"], _build.Root);
        Assert.Equal(Path.Combine(_build.Root, "alone"), set.BuildFolder);
        Assert.Equal("notebooks/x.ipynb", set.PathInBuild(set.Files[0]));
    }

    [Theory]
    [InlineData("gone.ipynb", "gone.ipynb: found no such file or folder")]
    [InlineData("data.csv", "data.csv: found a file that is no notebook")]
    [InlineData("empty", "empty: found a folder without notebooks")]
    public void What_holds_no_notebook_is_named(string argument, string message)
    {
        _build.Write("data.csv", "a");
        Directory.CreateDirectory(Path.Combine(_build.Root, "empty"));
        Assert.StartsWith(message, Assert.Throws<InputException>(() => NotebookSet.Find([argument], _build.Root)).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Notebooks_of_two_builds_are_refused()
    {
        _build.Notebook("a");
        _build.Write("alone/x.ipynb", "{}");
        Assert.Contains("notebooks of 2 build folders", Assert.Throws<InputException>(() => NotebookSet.Find(["notebooks/a.ipynb", "alone/x.ipynb"], _build.Root)).Message, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Every_notebook_that_cannot_be_read_is_named_at_once()
    {
        _build.Write("notebooks/a.ipynb", "not JSON");
        _build.Write("notebooks/b.ipynb", "{}");
        var thrown = await Assert.ThrowsAsync<InputException>(() => new Publisher(new ScriptedSessions((_, _, _) => Output.Done()).StartAsync, TimeProvider.System)
            .PublishAsync(_build.Request(), null, TestContext.Current.CancellationToken));
        Assert.Equal(["notebooks/a.ipynb", "notebooks/b.ipynb"], thrown.Problems.Select(problem => problem.Source));
    }

    // SOURCE_DATE_EPOCH: 951 782 400 s is 29 February 2000, 00:00 UTC (checked with GNU date).
    [Fact]
    public void The_date_is_the_one_asked_for_or_that_of_the_source_or_none()
    {
        Assert.Equal(new DateOnly(2027, 3, 1), PublishDate.Choose("2027-03-01", "951782400"));
        Assert.Equal(new DateOnly(2000, 2, 29), PublishDate.Choose(null, "951782400"));
        Assert.Null(PublishDate.Choose(null, null));
        Assert.Null(PublishDate.Choose(null, ""));
        Assert.Throws<InputException>(() => PublishDate.Choose("1.3.2027", null));
        Assert.Throws<InputException>(() => PublishDate.Choose("2027-02-30", null));
        Assert.Throws<InputException>(() => PublishDate.Choose(null, "yesterday"));
        Assert.Throws<InputException>(() => PublishDate.Choose(null, "-1"));
        Assert.Throws<InputException>(() => PublishDate.Choose(null, "99999999999999"));
    }
}
