using System.Text.RegularExpressions;

namespace Waywright.Kernel;

/// <summary>How a cell ended, in a sentence for the person who ran it.</summary>
/// <param name="Outcome">Which way.</param>
/// <param name="Failure">What becomes the last output; null when the cell is done.</param>
internal sealed partial record CellEnd(CellOutcome Outcome, CellFailed? Failure)
{
    /// <summary>One sentence; null when done.</summary>
    public string? Why { get; private init; }

    /// <summary>The cell ended by itself.</summary>
    public static CellEnd Of(string cellId, CellFailed? failure, long memoryLimit) => failure switch
    {
        null => new CellEnd(CellOutcome.Done, null),
        { Name: "System.OutOfMemoryException" or "System.InsufficientMemoryException" } =>
            new CellEnd(CellOutcome.OutOfMemory, failure) { Why = TooMuchMemory(cellId, memoryLimit) },
        { Name: CellErrors.DoesNotCompile } =>
            new CellEnd(CellOutcome.Raised, failure) { Why = $"Cell '{cellId}' does not compile: {failure.Value}" },
        { Name: "VersionMismatch" } => new CellEnd(CellOutcome.Raised, failure) { Why = failure.Value },
        _ => new CellEnd(CellOutcome.Raised, failure) { Why = $"Cell '{cellId}' failed: {failure.Value}" },
    };

    public static CellEnd OutOfTime(string cellId, TimeSpan limit) =>
        Ended(CellOutcome.OutOfTime, $"Cell '{cellId}' was still running after {limit.TotalSeconds.ToString("0.###", System.Globalization.CultureInfo.InvariantCulture)} s and was ended.");

    public static CellEnd Stopped(string cellId) => Ended(CellOutcome.Stopped, $"Cell '{cellId}' was stopped.");

    public static CellEnd OutOfMemory(string cellId, long limit) =>
        Ended(CellOutcome.OutOfMemory, TooMuchMemory(cellId, limit));

    public static CellEnd SessionIsOver(string cellId, string before) => Ended(CellOutcome.Ended, $"Cell '{cellId}' was not run: {before}");

    /// <summary>The process went away under the cell.</summary>
    /// <param name="cellId">The cell.</param>
    /// <param name="exitCode">Of the process.</param>
    /// <param name="lastWords">What it wrote to its raw error stream.</param>
    /// <param name="memoryLimit">The session's.</param>
    public static CellEnd ProcessEnded(string cellId, int exitCode, string lastWords, long memoryLimit)
    {
        if (lastWords.Contains("Stack overflow.", StringComparison.Ordinal))
            return Ended(CellOutcome.Ended, $"Cell '{cellId}' overflowed the stack: a method calls itself without end.");
        if (lastWords.Contains("Out of memory.", StringComparison.Ordinal))
            return OutOfMemory(cellId, memoryLimit);
        if (Unhandled().Match(lastWords) is { Success: true } thrown)
            return Ended(CellOutcome.Ended, $"Cell '{cellId}' threw on another thread, which ends the process: {thrown.Groups["what"].Value.Trim()}");
        if (FailedFast().Match(lastWords) is { Success: true } failed)
            return Ended(CellOutcome.Ended, $"Cell '{cellId}' ended its own process: {failed.Groups["what"].Value.Trim()}");
        return Ended(CellOutcome.Ended, exitCode == 137
            ? $"The process of cell '{cellId}' was killed from outside, perhaps because the machine ran out of memory."
            : $"Cell '{cellId}' ended its own process with exit code {exitCode}.");
    }

    private static CellEnd Ended(CellOutcome outcome, string why) =>
        new(outcome, new CellFailed(outcome.ToString(), why, [why])) { Why = why };

    private static string TooMuchMemory(string cellId, long limit) =>
        $"Cell '{cellId}' needed more memory than the {limit / 1_000_000} MB that a notebook may have.";

    [GeneratedRegex(@"^Unhandled exception\.(?<what>.*)$", RegexOptions.Multiline)]
    private static partial Regex Unhandled();

    [GeneratedRegex(@"^Process terminated\.(?: |\r?\n)(?! +at )(?<what>.+)$", RegexOptions.Multiline)]
    private static partial Regex FailedFast();
}
