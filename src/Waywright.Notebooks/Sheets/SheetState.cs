namespace Waywright.Notebooks;

/// <summary>How one sheet of a build stands.</summary>
/// <param name="Name">The file, seen from the build folder where it lies in it.</param>
/// <param name="IsFilled">Whether it holds anything to read.</param>
/// <param name="IsOptional">Whether the build can do without it.</param>
/// <param name="Next">What to measure or write for it, in its own words; may be empty.</param>
public sealed record SheetState(string Name, bool IsFilled, bool IsOptional, string Next);
