namespace Waywright.Notebooks;

/// <summary>Whether the running cell is asked to stop. A thread that an earlier cell left behind sees that cell's signal, not the next one's.</summary>
internal static class StopSignal
{
    private static readonly AsyncLocal<CancellationToken?> Given = new();

    /// <summary>The signal of the cell that runs in this execution context: given by our host, else the engine's, else none.</summary>
    public static CancellationToken Current => Given.Value ?? EngineBridge.Cancellation;

    /// <summary>Called by the host in the execution context that the cell will run in.</summary>
    public static void Give(CancellationToken stop) => Given.Value = stop;
}
