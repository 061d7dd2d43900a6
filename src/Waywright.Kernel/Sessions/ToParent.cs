using System.Diagnostics;

namespace Waywright.Kernel;

/// <summary>The child's mouth: whole lines, one after another, from whichever thread.</summary>
internal sealed class ToParent(Stream pipe)
{
    private readonly Lock _gate = new();

    public void Send(SessionMessage message)
    {
        var line = Wire.Line(message);
        if (line.Length > CellOutputs.LargestBytes && message is CellSaid)
            line = Wire.Line(new CellSaid(new StreamWritten("stderr", $"waywright: an output of {line.Length / 1_000_000} MB is left out\n")));
        try
        {
            lock (_gate) pipe.Write(line);
        }
        catch (IOException)
        {
            // Nobody is left to hear it.
            Process.GetCurrentProcess().Kill();
        }
    }
}
