namespace Waywright.Benchmarks;

/// <summary>One page of docs/benchmarks: a question, its contenders, and the ratios between them.</summary>
internal abstract class Benchmark
{
    /// <summary>What the command line and the page are called.</summary>
    public abstract string Name { get; }

    public abstract string Title { get; }

    public abstract Findings Run();
}

/// <summary>What a benchmark found.</summary>
/// <param name="About">What was timed, one paragraph each, in Markdown.</param>
/// <param name="Timings">One for each contender, in the order they took turns.</param>
/// <param name="Ratios">What the timings say.</param>
/// <param name="Versions">Of what the peers ran on.</param>
internal sealed record Findings(IReadOnlyList<string> About, IReadOnlyList<Timing> Timings, IReadOnlyList<Ratio> Ratios, IReadOnlyList<string> Versions);

/// <summary>How many times longer one contender takes than another.</summary>
/// <param name="Slower">The one that is divided.</param>
/// <param name="Faster">The one that divides.</param>
/// <param name="Wanted">What the design asks for, in words.</param>
internal sealed record Ratio(string Slower, string Faster, string Wanted);
