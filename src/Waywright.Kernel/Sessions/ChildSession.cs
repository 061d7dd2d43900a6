namespace Waywright.Kernel;

/// <summary>Cell sessions that run in a child process, so that no cell can harm or hang its caller.</summary>
public static class ChildSession
{
    /// <summary>The least <see cref="SessionOptions.MemoryLimitBytes"/>: two thirds of it are the engine's own.</summary>
    public const long LeastMemoryBytes = 600_000_000;

    /// <summary>Starts a child; the task is done when it can take cells. Cheap to call ahead of need: the work happens in the child.</summary>
    /// <exception cref="ArgumentException">A folder does not exist, or a limit is too small.</exception>
    /// <exception cref="InvalidOperationException">The child ended, or did not answer, before it was ready.</exception>
    public static Task<ICellSession> StartAsync(SessionOptions options, CancellationToken cancel) =>
        StartAsync(options, ChildCommand.Default(), cancel);

    internal static async Task<ICellSession> StartAsync(SessionOptions options, ChildCommand command, CancellationToken cancel)
    {
        if (!Directory.Exists(options.WorkingFolder)) throw new ArgumentException($"the working folder '{options.WorkingFolder}' does not exist", nameof(options));
        if (!Directory.Exists(options.BuildFolder)) throw new ArgumentException($"the build folder '{options.BuildFolder}' does not exist", nameof(options));
        // A timer holds no more than 49 days.
        if (options.CellLimit <= TimeSpan.Zero || options.CellLimit > TimeSpan.FromDays(40)) throw new ArgumentException($"the cell limit {options.CellLimit} is not between 0 and 40 days", nameof(options));
        if (options.MemoryLimitBytes < LeastMemoryBytes) throw new ArgumentException($"the memory limit must be at least {LeastMemoryBytes / 1_000_000} MB", nameof(options));

        var child = await ChildProcess.StartAsync(options, command, cancel);
        return new RunningSession(child, options);
    }
}
