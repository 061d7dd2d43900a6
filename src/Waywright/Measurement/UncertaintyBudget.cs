using System.Collections.Generic;
using System.Linq;

namespace Waywright;

/// <summary>Where a result's uncertainty comes from: first what to do about it, then each input's share, largest first.</summary>
public sealed record UncertaintyBudget
{
    internal UncertaintyBudget(string remedy, Uncertain result, string unit)
    {
        Remedy = remedy;
        Unit = unit;
        Lines = result.Contributions;
    }

    /// <summary>What would help most, in a sentence.</summary>
    public string Remedy { get; }

    /// <summary>Unit of the lines' signed contributions.</summary>
    public string Unit { get; }

    /// <summary>One line for each independent input, largest share first.</summary>
    public IReadOnlyList<Contribution> Lines { get; }

    /// <summary>The remedy, then one line for each input: <c>82 %  density of reel R1  +0.15 N</c>.</summary>
    public override string ToString()
        => string.Join('\n', Lines.Select(l => $"{NumberText.Rounded(100 * l.Share, 0),3} %  {l.Input}  {Signed(l.Signed)} {Unit}").Prepend(Remedy));

    private static string Signed(double value) => (value > 0 ? "+" : "") + NumberText.Significant(value, 2);
}
