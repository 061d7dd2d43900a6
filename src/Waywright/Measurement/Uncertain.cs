using System;
using System.Collections.Generic;
using System.Linq;

namespace Waywright;

/// <summary>
/// A number with its uncertainty, and where that comes from: to first order, value + sum of c_i (x_i - value of x_i) over named independent inputs.
/// u2 = sum of (c_i u_i)2 (JCGM 100:2008, 5.1.2); because every result keeps its c_i, quantities that share an input are correlated as they
/// should be (5.2): a tape used twice does not average out, and x - x is 0 with u = 0. Effective degrees of freedom by Welch and Satterthwaite (G.4).
/// </summary>
/// <remarks>
/// Numbers here carry no unit; <see cref="Measured{TQuantity}"/> is the same with one. First order only: where u is a large part of the value
/// (about a third) and the formula bends, the interval is rough. No operation gives NaN or infinity.
/// Checked by JCGM 100:2008, H.1 (end gauge) and H.2 (resistance and reactance, correlated).
/// </remarks>
public sealed partial class Uncertain : IEquatable<Uncertain>
{
    private readonly FixedList<UncertainTerm> _terms;
    private FixedList<Contribution>? _contributions;

    private Uncertain(double value, FixedList<UncertainTerm> terms)
    {
        Value = value;
        _terms = terms;
        StandardUncertainty = Length(terms.AsSpan());
        if (!double.IsFinite(value) || !double.IsFinite(StandardUncertainty))
            throw new ArithmeticException("The result or its uncertainty is not finite: a division by zero, a root of zero or an overflow.");
    }

    /// <summary>The value.</summary>
    public double Value { get; }

    /// <summary>Standard uncertainty u, 0 or more.</summary>
    public double StandardUncertainty { get; }

    /// <summary>Effective degrees of freedom, u4 / sum of ((c_i u_i)4 / nu_i) (JCGM 100:2008, G.2b); infinite where nothing was estimated from repeats.</summary>
    public double DegreesOfFreedom
    {
        get
        {
            var sum = 0.0;
            foreach (var term in _terms.AsSpan())
            {
                var relative = StandardUncertainty > 0 ? term.Signed / StandardUncertainty : 0;
                sum += relative * relative * relative * relative / term.Input.DegreesOfFreedom;
            }

            return sum > 0 ? Math.Max(1, 1 / sum) : double.PositiveInfinity;
        }
    }

    /// <summary>The budget, largest share first; inputs that cancelled or are exact stand last with share 0.</summary>
    public IReadOnlyList<Contribution> Contributions => _contributions ??= FixedList<Contribution>.Copy(
        _terms.Select(t => new Contribution(t.Input.Called, t.Signed, t.Input.DegreesOfFreedom, ShareOf(t))).OrderByDescending(c => c.Share));

    internal IReadOnlyList<UncertainTerm> Terms => _terms;

    /// <summary>A number known exactly; doubles also convert by themselves.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is not finite.</exception>
    public static Uncertain Exact(double value) => new(Finite(value, nameof(value)), FixedList<UncertainTerm>.Empty);

    /// <summary>An independent input. Inputs of equal name are one input, however often they are made.</summary>
    /// <param name="name">Its name in the budget, such as <c>span in fixture F1</c>.</param>
    /// <param name="value">Best estimate.</param>
    /// <param name="standardUncertainty">u, 0 or more.</param>
    /// <param name="degreesOfFreedom">1 or more; infinite (the default) for a stated uncertainty, n - 1 for one from n repeats.</param>
    /// <exception cref="ArgumentException">The name is empty.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A number is not finite, u is negative, or there is less than one degree of freedom.</exception>
    public static Uncertain Input(string name, double value, double standardUncertainty, double degreesOfFreedom = double.PositiveInfinity)
    {
        ArgumentException.ThrowIfNullOrWhiteSpace(name);
        return Input(name, name, value, standardUncertainty, degreesOfFreedom);
    }

    /// <summary>As <see cref="Input(string, double, double, double)"/>, for one whose identity is not its name.</summary>
    internal static Uncertain Input(object identity, string? name, double value, double standardUncertainty, double degreesOfFreedom)
    {
        Finite(value, nameof(value));
        ArgumentOutOfRangeException.ThrowIfNegative(Finite(standardUncertainty, nameof(standardUncertainty)));
        if (degreesOfFreedom is not >= 1)
            throw new ArgumentOutOfRangeException(nameof(degreesOfFreedom), degreesOfFreedom, "At least one degree of freedom is needed.");
        var input = new UncertainInput(identity, name, value, standardUncertainty, degreesOfFreedom);
        return new(value, FixedList<UncertainTerm>.Own([new UncertainTerm(input, 1)]));
    }

    /// <summary>The interval with the given coverage: U = k u, k = t_p(nu_eff) (JCGM 100:2008, G.4.1; table G.2).</summary>
    /// <param name="coverage">Coverage probability, 0.5 to 0.998.</param>
    /// <exception cref="ArgumentOutOfRangeException">The coverage is outside this range.</exception>
    public ExpandedUncertainty Expanded(double coverage = 0.95)
    {
        var k = CoverageFactor.Of(coverage, DegreesOfFreedom);
        return new(Value, k * StandardUncertainty, k, coverage, DegreesOfFreedom);
    }

    /// <summary>Correlation coefficient with another result, from the inputs that both share (JCGM 100:2008, F.1.2.3); 0 where either has no uncertainty.</summary>
    /// <exception cref="ArgumentException">An input of the same name says different things in the two.</exception>
    public double CorrelationWith(Uncertain other)
    {
        ArgumentNullException.ThrowIfNull(other);
        if (StandardUncertainty == 0 || other.StandardUncertainty == 0)
            return 0;
        var sum = 0.0;
        foreach (var mine in _terms)
        {
            foreach (var theirs in other._terms)
            {
                if (mine.Input.IsSameAs(theirs.Input))
                    sum += mine.Signed / StandardUncertainty * (theirs.Signed / other.StandardUncertainty);
            }
        }

        return Math.Clamp(sum, -1, 1);
    }

    /// <summary><c>9.71 U 0.34 k 1.96 (95 %)</c>: two significant digits of the expanded uncertainty; a plain number where there is none.</summary>
    public override string ToString() => UncertainText.Full(this, null);

    /// <summary><c>9.71 (9.37 to 10.05)</c>: the value and its 95 % interval.</summary>
    public string ToShortString() => UncertainText.Short(this, null);

    /// <summary>Equal in value and in every input and sensitivity.</summary>
    public bool Equals(Uncertain? other) => other is not null && Value.Equals(other.Value) && _terms.Equals(other._terms);

    /// <inheritdoc/>
    public override bool Equals(object? obj) => Equals(obj as Uncertain);

    /// <inheritdoc/>
    public override int GetHashCode() => HashCode.Combine(Value, _terms);

    private double ShareOf(UncertainTerm term)
    {
        var relative = StandardUncertainty > 0 ? term.Signed / StandardUncertainty : 0;
        return relative * relative;
    }

    private static double Finite(double value, string name)
        => double.IsFinite(value) ? value : throw new ArgumentOutOfRangeException(name, value, "A finite number is needed.");

    // Scaled by the largest, so that squares neither overflow nor vanish.
    private static double Length(ReadOnlySpan<UncertainTerm> terms)
    {
        var largest = 0.0;
        foreach (var term in terms)
            largest = Math.Max(largest, Math.Abs(term.Signed));
        if (largest == 0 || !double.IsFinite(largest))
            return largest;
        var sum = 0.0;
        foreach (var term in terms)
            sum += term.Signed / largest * (term.Signed / largest);
        return largest * Math.Sqrt(sum);
    }
}
