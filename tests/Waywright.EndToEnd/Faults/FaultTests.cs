namespace Waywright.EndToEnd.Faults;

/// <summary>A few of each fault; <see cref="FaultTable"/> does many and writes down what it saw.</summary>
public sealed class FaultTests
{
    [Fact]
    public async Task A_run_that_is_killed_at_any_moment_leaves_a_whole_page_and_a_clean_next_run()
    {
        Assert.SkipWhen(OperatingSystem.IsWindows(), "the exit code of a killed process is of Unix");
        var fault = await Kills.RunAsync(8, seed: 20260301);
        Assert.Equal((8, 8, 8), (fault.Whole, fault.Clean, fault.Looked));
    }

    [Fact]
    public async Task A_full_disk_is_told_in_one_line_and_the_earlier_page_stays()
        => (await Folders.FullDiskAsync(3)).IsTold("page: found a disk that is full");

    [Fact]
    public async Task A_folder_that_is_read_only_is_told_in_one_line_and_the_earlier_page_stays()
        => (await Folders.ReadOnlyAsync(1)).IsTold("page: found a folder that can't be written", "ead-only");

    [Fact]
    public async Task Data_that_changes_while_the_notebooks_run_is_told_in_one_line_and_the_earlier_page_stays()
        => (await Meanwhile.ChangedInputAsync(2)).IsTold("data/notes.txt: found a file that changed while the notebooks ran");

    [Fact]
    public async Task Of_two_publishes_to_one_folder_one_publishes_and_the_other_is_told()
        => Assert.StartsWith("2 of 4 runs published", (await Meanwhile.TwoAtOnceAsync(2)).IsTold("page: found a folder that another run is publishing to").Seen);
}
