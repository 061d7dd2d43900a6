using System;
using System.Collections.Generic;
using System.Linq;

namespace Waywright;

/// <summary>
/// An input of a Monte Carlo model: a named quantity with its distribution, independent of all others, or several Gaussian quantities that are correlated.
/// A pair of name and distribution converts by itself: <c>[("span", Distribution.Gaussian(180, 0.2)), ("density", Distribution.Rectangular(8, 8.2))]</c>.
/// </summary>
public sealed record MonteCarloInput
{
    private readonly Distribution? _distribution;
    private readonly FixedList<double> _factor;

    private MonteCarloInput(FixedList<string> names, FixedList<double> means, Distribution? distribution, FixedList<double> factor)
    {
        foreach (var name in names)
            ArgumentException.ThrowIfNullOrWhiteSpace(name);
        (Names, Means, _distribution, _factor) = (names, means, distribution, factor);
    }

    /// <summary>Names of the quantities: one, or as many as are correlated here.</summary>
    public IReadOnlyList<string> Names { get; }

    /// <summary>Their expectations, in the same order.</summary>
    public IReadOnlyList<double> Means { get; }

    /// <summary>The same as <see cref="Of"/>.</summary>
    public static implicit operator MonteCarloInput((string Name, Distribution Distribution) input) => Of(input.Name, input.Distribution);

    /// <summary>One quantity.</summary>
    /// <exception cref="ArgumentException">The name is empty.</exception>
    public static MonteCarloInput Of(string name, Distribution distribution)
    {
        ArgumentNullException.ThrowIfNull(distribution);
        return new(FixedList<string>.Own([name]), FixedList<double>.Own([distribution.Mean]), distribution, FixedList<double>.Empty);
    }

    /// <summary>Several Gaussian quantities with their covariances (JCGM 101:2008, 6.4.8); each is a column of the model's inputs, in this order.</summary>
    /// <param name="names">At least one.</param>
    /// <param name="means">One for each name.</param>
    /// <param name="covariance">V[i, k] = r u_i u_k, symmetric, positive semidefinite.</param>
    /// <exception cref="ArgumentException">
    /// Counts differ, a name is empty, or V is not finite, not symmetric, has a negative variance or a correlation outside -1 to 1, or is not positive semidefinite;
    /// everything that is wrong with V is listed.
    /// </exception>
    public static MonteCarloInput Correlated(IReadOnlyList<string> names, IReadOnlyList<double> means, double[,] covariance)
    {
        ArgumentNullException.ThrowIfNull(names);
        ArgumentNullException.ThrowIfNull(means);
        ArgumentNullException.ThrowIfNull(covariance);
        if (names.Count == 0 || names.Count != means.Count)
            throw new ArgumentException($"{names.Count} names and {means.Count} means: as many of both are needed, at least one.", nameof(means));
        if (!means.All(double.IsFinite))
            throw new ArgumentException("A mean is not a finite number.", nameof(means));
        return new(FixedList<string>.Copy(names), FixedList<double>.Copy(means), null, FixedList<double>.Own(CovarianceFactor.Of(names, covariance)));
    }

    /// <summary>Draws the columns of consecutive trials.</summary>
    /// <param name="draws">Where the numbers come from.</param>
    /// <param name="firstColumn">Which input of the model the first of these is.</param>
    /// <param name="firstTrial">Even.</param>
    /// <param name="count">Trials.</param>
    /// <param name="columns">Room for the columns of this input, each of <paramref name="stride"/> values.</param>
    /// <param name="stride">From one column to the next.</param>
    internal void Draw(RandomDraws draws, uint firstColumn, long firstTrial, int count, Span<double> columns, int stride)
    {
        if (_distribution is not null)
        {
            _distribution.Draw(draws, firstColumn, firstTrial, columns[..count]);
            return;
        }

        for (var i = 0; i < Names.Count; i++)
            draws.Gaussian(firstColumn + (uint)i, firstTrial, columns.Slice(i * stride, count));
        // From the last row up: a row needs only the independent draws of itself and of those above.
        for (var i = Names.Count - 1; i >= 0; i--)
            Combine(i, count, columns, stride);
    }

    private void Combine(int row, int count, Span<double> columns, int stride)
    {
        var target = columns.Slice(row * stride, count);
        RandomDraws.Scale(target, Means[row], _factor[(row * Names.Count) + row]);
        for (var k = 0; k < row; k++)
        {
            var source = columns.Slice(k * stride, count);
            var weight = _factor[(row * Names.Count) + k];
            for (var t = 0; t < count; t++)
                target[t] += weight * source[t];
        }
    }
}
