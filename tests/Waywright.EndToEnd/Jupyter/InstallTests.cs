using System.Text.Json.Nodes;
using Waywright.EndToEnd.Commands;

namespace Waywright.EndToEnd.Jupyter;

public sealed class InstallTests
{
    [Fact]
    public async Task An_install_is_found_run_again_and_removed_without_a_trace()
    {
        using var folder = new TemporaryFolder();
        var prefix = Path.Combine(folder.Path, "a place with spaces");
        var spec = Path.Combine(prefix, "share", "jupyter", "kernels", "waywright");
        for (var i = 0; i < 2; i++)
        {
            var installed = await Command.RunAsync("kernel", "install", "--prefix", prefix);
            Assert.True(installed.ExitCode == 0, installed.Error);
            Assert.EndsWith(spec, installed.Out.TrimEnd(), StringComparison.Ordinal);
        }

        var description = JsonNode.Parse(await File.ReadAllTextAsync(Path.Combine(spec, "kernel.json"), TestContext.Current.CancellationToken))!;
        var command = description["argv"]!.AsArray().Select(word => (string)word!).ToArray();
        Assert.Equal(("C# (Waywright)", "C#", "message"), ((string)description["display_name"]!, (string)description["language"]!, (string)description["interrupt_mode"]!));
        Assert.True(File.Exists(command[0]) && File.Exists(command[1]));
        Assert.StartsWith(Path.Combine(prefix, "share", "waywright", "kernel"), command[1], StringComparison.Ordinal);
        Assert.Equal(["kernel", "run", "{connection_file}"], command[2..]);
        Assert.Equal(["kernel.json"], Directory.GetFileSystemEntries(spec).Select(Path.GetFileName));
        Assert.Single(Directory.GetFileSystemEntries(Path.GetDirectoryName(Path.GetDirectoryName(command[1]))!));

        var removed = await Command.RunAsync("kernel", "remove", "--prefix", prefix);
        Assert.True(removed.ExitCode == 0, removed.Error);
        Assert.Empty(Directory.GetFiles(prefix, "*", SearchOption.AllDirectories));
        var again = await Command.RunAsync("kernel", "remove", "--prefix", prefix);
        Assert.Equal(0, again.ExitCode);
        Assert.StartsWith("Nothing to remove", again.Out, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_folder_that_can_not_be_written_is_one_message_and_nothing_is_changed()
    {
        using var folder = new TemporaryFolder();
        // A file where a folder would have to be: not even root can write below it.
        folder.Write("share/jupyter/kernels", "");
        var refused = await Command.RunAsync("kernel", "install", "--prefix", folder.Path);
        refused.IsRefused(Path.Combine(folder.Path, "share", "jupyter", "kernels"), "a folder that can't be written", "--prefix DIR names another");
        Assert.Single(refused.Error.Trim().Split('\n'));
        Assert.Equal([Path.Combine(folder.Path, "share", "jupyter", "kernels")], Directory.GetFiles(folder.Path, "*", SearchOption.AllDirectories));
        Assert.Equal(["jupyter"], Directory.GetDirectories(Path.Combine(folder.Path, "share")).Select(Path.GetFileName));
    }

    [Fact]
    public async Task A_folder_that_can_not_hold_the_program_leaves_no_description_behind()
    {
        using var folder = new TemporaryFolder();
        folder.Write("share/waywright", "");
        (await Command.RunAsync("kernel", "install", "--prefix", folder.Path)).IsRefused("can't be written");
        Assert.Equal(["waywright"], Directory.GetFileSystemEntries(Path.Combine(folder.Path, "share")).Select(Path.GetFileName));
    }

    [Fact]
    public async Task Another_programs_kernel_of_that_name_is_left_alone()
    {
        using var folder = new TemporaryFolder();
        var file = folder.Write("share/jupyter/kernels/waywright/kernel.json", """{"argv":["other"],"display_name":"Other","language":"C#"}""");
        foreach (var verb in new[] { "install", "remove" })
            (await Command.RunAsync("kernel", verb, "--prefix", folder.Path)).IsRefused(Path.GetDirectoryName(file)!, "a kernel of this name that waywright did not install");
        Assert.Contains("other", await File.ReadAllTextAsync(file, TestContext.Current.CancellationToken));
    }
}
