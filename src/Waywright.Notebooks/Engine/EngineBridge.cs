using System.Reflection;

namespace Waywright.Notebooks;

/// <summary>
/// Reaches the notebook engine that runs the cell, by name, so that this project does not reference it.
/// Without an engine (a plain C# file) every call does nothing.
/// </summary>
internal static class EngineBridge
{
    private const string FormatterName = "Microsoft.DotNet.Interactive.Formatting.Formatter, Microsoft.DotNet.Interactive.Formatting";
    private const string ContextName = "Microsoft.DotNet.Interactive.KernelInvocationContext, Microsoft.DotNet.Interactive";
    private const string ContextExtensionsName = "Microsoft.DotNet.Interactive.KernelInvocationContextExtensions, Microsoft.DotNet.Interactive";

    /// <summary>Whether an engine is loaded.</summary>
    public static bool IsPresent => Type.GetType(FormatterName) is not null;

    /// <summary>Makes the engine show values of a type by these writers; the order of MIME types is the order of preference.</summary>
    public static void Register(Type type, params (string MimeType, Action<object, TextWriter> Write)[] writers)
    {
        if (Type.GetType(FormatterName) is not { } formatter)
            return;
        var register = formatter.GetMethod("Register", [typeof(Type), typeof(Action<object, TextWriter>), typeof(string)]) ?? throw Unknown("Formatter.Register");
        var prefer = formatter.GetMethod("SetPreferredMimeTypesFor", [typeof(Type), typeof(string[])]) ?? throw Unknown("Formatter.SetPreferredMimeTypesFor");
        foreach (var (mimeType, write) in writers)
            register.Invoke(null, [type, write, mimeType]);
        prefer.Invoke(null, [type, writers.Select(w => w.MimeType).ToArray()]);
    }

    /// <summary>Shows a value as an output of the running cell, in the MIME types given.</summary>
    public static void Display(object value, params string[] mimeTypes)
    {
        if (Context is not { } context)
            return;
        var display = Type.GetType(ContextExtensionsName)?.GetMethod("Display", BindingFlags.Public | BindingFlags.Static) ?? throw Unknown("Display");
        display.Invoke(null, [context, value, mimeTypes]);
    }

    /// <summary>The token of the command that the engine runs now; none without an engine.</summary>
    public static CancellationToken Cancellation =>
        Context is { } context && context.GetType().GetProperty("CancellationToken")?.GetValue(context) is CancellationToken token ? token : CancellationToken.None;

    private static object? Context => Type.GetType(ContextName)?.GetProperty("Current", BindingFlags.Public | BindingFlags.Static)?.GetValue(null);

    private static InvalidOperationException Unknown(string member) => new($"This notebook engine has no {member}: Waywright.Notebooks was made for Microsoft.DotNet.Interactive 1.0.0-beta.26120.1.");
}
