using System.Reflection;
using System.Text;
using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.Scripting;
using Microsoft.DotNet.Interactive.CSharp;

namespace Waywright.Kernel;

/// <summary>
/// Has cells compiled with optimisation and with the lines of their source, so that a stack trace names cell and line.
/// The engine offers no door to its compiler's options; its version is pinned, and without the field a cell merely runs as the engine has it.
/// </summary>
internal static class CellLines
{
    private static readonly FieldInfo? Field = typeof(CSharpKernel).GetField("_scriptOptions", BindingFlags.Instance | BindingFlags.NonPublic);

    /// <summary>Names the cell that the kernel compiles next.</summary>
    public static void Set(CSharpKernel kernel, string cellId)
    {
        if (Field?.GetValue(kernel) is ScriptOptions options) Field.SetValue(kernel, Set(options, cellId));
    }

    public static ScriptOptions Set(ScriptOptions options, string cellId) => options
        .WithFilePath(cellId)
        .WithFileEncoding(Encoding.UTF8)
        .WithEmitDebugInformation(true)
        .WithOptimizationLevel(OptimizationLevel.Release);
}
