using System.Text.RegularExpressions;
using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.Scripting;
using Microsoft.DotNet.Interactive.Events;

namespace Waywright.Kernel;

/// <summary>Turns a failed submission into what the notebook's reader is told.</summary>
internal static partial class CellErrors
{
    /// <summary>Name of the error of a cell that does not compile.</summary>
    public const string DoesNotCompile = "CompilationError";

    /// <summary>Name of the error of a cell that stopped because it was asked to.</summary>
    public const string Stopped = "Stopped";

    private const string StoppedValue = "The cell was stopped; variables keep what they held when it stopped.";

    public static CellFailed Read(CommandFailed failed) => failed.Exception switch
    {
        null => Refused(failed.Message),
        { InnerException: CompilationErrorException compilation } => NotCompiled(compilation),
        var exception => Raised(exception),
    };

    /// <summary>A cell that was asked to stop and did, by throwing.</summary>
    public static CellFailed WhenStopped(CellFailed failed) =>
        failed.Name is "System.OperationCanceledException" or "System.Threading.Tasks.TaskCanceledException"
            ? new CellFailed(Stopped, StoppedValue, [StoppedValue])
            : failed;

    // A directive: a package that does not exist, a command that is not known.
    private static CellFailed Refused(string message)
    {
        var text = Position().Replace(RestoreProject().Replace(message, ""), "line $1, column $2: ");
        return new CellFailed("Error", text, Lines(text));
    }

    private static CellFailed NotCompiled(CompilationErrorException compilation)
    {
        var lines = compilation.Diagnostics
            .Where(found => found.Severity == DiagnosticSeverity.Error)
            .OrderBy(found => found.Location.SourceSpan.Start)
            .Select(Line)
            .ToList();
        var value = lines.Count == 1 ? lines[0] : $"{lines[0]} (and {lines.Count - 1} more)";
        return new CellFailed(DoesNotCompile, value, lines);
    }

    private static string Line(Microsoft.CodeAnalysis.Diagnostic found)
    {
        var at = found.Location.GetLineSpan().StartLinePosition;
        return $"line {at.Line + 1}, column {at.Character + 1}: error {found.Id}: {found.GetMessage(System.Globalization.CultureInfo.InvariantCulture)}";
    }

    private static CellFailed Raised(Exception exception)
    {
        if (exception.Message == RefusedInput.Why) return new CellFailed("InputRefused", RefusedInput.Why, [RefusedInput.Why]);
        var name = exception.GetType().FullName ?? exception.GetType().Name;
        // Bad input is its list of problems: where the code stood when it met them says nothing to the person who can mend them.
        if (name == "Waywright.InputException") return new CellFailed(name, exception.Message, Lines(exception.Message));
        return new CellFailed(name, exception.Message, Trace(exception).ToList());
    }

    private static IEnumerable<string> Trace(Exception exception) =>
        from line in Lines(exception.ToString())
        where !Machinery().IsMatch(line)
        select Folder().Replace(CellBody().Replace(line, "the cell"), " in ");

    private static string[] Lines(string text) => text.ReplaceLineEndings("\n").TrimEnd('\n').Split('\n');

    [GeneratedRegex(@"^\((\d+),(\d+)\): ", RegexOptions.Multiline)]
    private static partial Regex Position();

    // Each restore has a project of its own somewhere in the user's folder.
    [GeneratedRegex(@"^.*\.fsproj : ", RegexOptions.Multiline)]
    private static partial Regex RestoreProject();

    // The compiler's and the engine's own frames, and the seams between asynchronous ones.
    [GeneratedRegex(@"^   at Microsoft\.(?:CodeAnalysis|DotNet\.Interactive)\.|^--- End of (?:inner exception )?stack trace")]
    private static partial Regex Machinery();

    // 'Submission#3.<<Initialize>>d__0.MoveNext()' is the engine's name for the cell's own lines.
    [GeneratedRegex(@"Submission#\d+\.<<Initialize>>d__\d+\.MoveNext\(\)")]
    private static partial Regex CellBody();

    // A page must not tell in which folder its author, or the library's, keeps the source.
    [GeneratedRegex(@"(?<=^   at .*) in .*[/\\](?=[^/\\]+:line \d+$)")]
    private static partial Regex Folder();
}
