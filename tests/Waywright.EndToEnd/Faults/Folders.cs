using System.Diagnostics;

namespace Waywright.EndToEnd.Faults;

/// <summary>Disks that are full and folders that can't be written: mounted for the case, by root on Linux only.</summary>
internal static class Folders
{
    /// <param name="times">How often, each with a different amount of room left.</param>
    public static async Task<Fault> FullDiskAsync(int times)
    {
        using var build = new TinyBuild();
        await using var disk = await Mount.SmallAsync(build.Site);
        Assert.Equal(0, (await build.PublishAsync()).ExitCode);
        var (edition, filler) = (build.Edition(), Path.Combine(build.Site, "filler"));
        var needed = Directory.EnumerateFiles(build.Out, "*", SearchOption.AllDirectories).Sum(file => new FileInfo(file).Length);
        return await RepeatAsync("Full disk", build, times, edition, i =>
        {
            var free = new DriveInfo(build.Site).AvailableFreeSpace;
            using var file = File.Create(filler);
            file.Write(new byte[free - (needed * i / times)]);
            return Task.CompletedTask;
        }, () =>
        {
            File.Delete(filler);
            return Task.CompletedTask;
        }, FormattableString.Invariant($"room for 0 to {100 * (times - 1) / times} % of the new page was left"));
    }

    public static async Task<Fault> ReadOnlyAsync(int times)
    {
        using var build = new TinyBuild();
        await using var disk = await Mount.SmallAsync(build.Site);
        Assert.Equal(0, (await build.PublishAsync()).ExitCode);
        return await RepeatAsync("Folder that can't be written", build, times, build.Edition(), _ => disk.RemountAsync("ro"), () => disk.RemountAsync("rw"), "mounted read-only");
    }

    private static async Task<Fault> RepeatAsync(string name, TinyBuild build, int times, string edition, Func<int, Task> harm, Func<Task> mend, string seen)
    {
        var (whole, clean, codes, message) = (0, 0, new SortedSet<int>(), "");
        for (var i = 0; i < times; i++)
        {
            await harm(i);
            var run = await build.PublishAsync();
            await mend();
            codes.Add(run.ExitCode);
            message = Fault.Told(run.Error, build);
            whole += build.Harm() is null && build.Edition() == edition && build.Neighbours().Length == 0 ? 1 : 0;
            clean += (await build.PublishAsync()).ExitCode == 0 && build.Harm() is null && build.Neighbours().Length == 0 ? 1 : 0;
            edition = build.Edition();
        }

        return new Fault(name, times, seen, whole, clean, times, codes, message);
    }
}

/// <summary>A small disk in memory at a folder, for as long as a case runs.</summary>
internal sealed class Mount(string folder) : IAsyncDisposable
{
    public static async Task<Mount> SmallAsync(string folder)
    {
        Assert.SkipUnless(OperatingSystem.IsLinux(), "mounts a disk in memory, as Linux does it");
        Assert.SkipUnless(await RunAsync("mount", "-t", "tmpfs", "-o", "size=32m", "tmpfs", folder) == 0, "this user may not mount");
        return new Mount(folder);
    }

    public async Task RemountAsync(string how) => Assert.Equal(0, await RunAsync("mount", "-o", "remount," + how, folder));

    public async ValueTask DisposeAsync() => Assert.Equal(0, await RunAsync("umount", folder));

    private static async Task<int> RunAsync(params string[] command)
    {
        using var process = Process.Start(new ProcessStartInfo(command[0], command[1..]) { RedirectStandardError = true })!;
        await process.StandardError.ReadToEndAsync();
        await process.WaitForExitAsync();
        return process.ExitCode;
    }
}
