using System.Runtime.CompilerServices;
using Deedle;

namespace Waywright.Notebooks;

/// <summary>Frames need a newer FSharp.Core than some notebook hosts carry: said in one sentence, before anything of Deedle's is touched.</summary>
internal static class FrameHost
{
    private const string TooOld = "Frames can't be shown here: this notebook host carries an FSharp.Core too old for Deedle; Waywright's own kernel has one (waywright kernel install).";

    public static void Require()
    {
        try
        {
            Touch();
        }
        catch (Exception e) when (e is FileLoadException or FileNotFoundException or TypeLoadException or MissingMethodException or TypeInitializationException)
        {
            throw new NotSupportedException(TooOld);
        }
    }

    // Kept apart, so that it fails here and not where this is called.
    [MethodImpl(MethodImplOptions.NoInlining)]
    private static void Touch() => GC.KeepAlive(new FrameBuilder.Columns<int, string>());
}
