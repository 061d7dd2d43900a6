using System.Diagnostics;
using System.Globalization;

namespace Waywright.Kernel;

/// <summary>The program that started the kernel, if it says who it is: a kernel without it would run on for nobody.</summary>
internal static class ParentWatch
{
    private const string Variable = "JPY_PARENT_PID";

    /// <summary>Ends when that program has ended; never, when it is not named.</summary>
    public static async Task WaitAsync(CancellationToken cancel)
    {
        // On Windows the variable holds a handle of the front end's own, which says nothing here.
        if (OperatingSystem.IsWindows() || !int.TryParse(Environment.GetEnvironmentVariable(Variable), NumberStyles.None, CultureInfo.InvariantCulture, out var id))
        {
            await Task.Delay(Timeout.Infinite, cancel);
            return;
        }

        Process parent;
        try
        {
            parent = Process.GetProcessById(id);
        }
        catch (ArgumentException)
        {
            return;
        }

        using (parent) await parent.WaitForExitAsync(cancel);
    }
}
