using System;
using System.Collections.Generic;

namespace Waywright;

public sealed partial class Uncertain
{
    // Two paths of one input that cancel leave a rest of a few roundings of the doubles: that rest is none.
    private const double Roundings = 16 * 2.220446049250313e-16;

    // Differences over a tenth of u stay within what the first order means; below this part of |x| they would drown in rounding.
    private const double SmallestStep = 1e-6;

    /// <summary>An exact number.</summary>
    public static implicit operator Uncertain(double value) => Exact(value);

    /// <summary>Sum.</summary>
    public static Uncertain operator +(Uncertain x, Uncertain y) => Combine(NotNull(x).Value + NotNull(y).Value, [x, y], [1, 1]);

    /// <summary>Difference; x - x is exactly 0 with u = 0.</summary>
    public static Uncertain operator -(Uncertain x, Uncertain y) => Combine(NotNull(x).Value - NotNull(y).Value, [x, y], [1, -1]);

    /// <summary>The negative.</summary>
    public static Uncertain operator -(Uncertain x) => Combine(-NotNull(x).Value, [x], [-1]);

    /// <summary>Product.</summary>
    public static Uncertain operator *(Uncertain x, Uncertain y) => Combine(NotNull(x).Value * NotNull(y).Value, [x, y], [y.Value, x.Value]);

    /// <summary>Quotient.</summary>
    /// <exception cref="DivideByZeroException">The value of y is 0.</exception>
    public static Uncertain operator /(Uncertain x, Uncertain y)
    {
        if (NotNull(y).Value == 0)
            throw new DivideByZeroException("An uncertain number is divided by one whose value is 0.");
        var quotient = NotNull(x).Value / y.Value;
        return Combine(quotient, [x, y], [1 / y.Value, -quotient / y.Value]);
    }

    /// <summary>Square root.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is negative, or 0 with an uncertainty.</exception>
    public Uncertain Sqrt()
    {
        if (Value < 0 || (Value == 0 && StandardUncertainty > 0))
            throw new ArgumentOutOfRangeException(nameof(Value), Value, "A square root needs a value above 0.");
        var root = Math.Sqrt(Value);
        return Combine(root, [this], [Value == 0 ? 0 : 0.5 / root]);
    }

    /// <summary>Power, x^n.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The power or its slope is not a finite real number: 0 to a power below 1, a negative value to one that is not whole.</exception>
    public Uncertain Pow(double exponent)
    {
        var power = Math.Pow(Value, exponent);
        var slope = exponent == 0 ? 0 : exponent * Math.Pow(Value, exponent - 1);
        if (!double.IsFinite(power) || !double.IsFinite(slope))
            throw new ArgumentOutOfRangeException(nameof(exponent), exponent, $"{NumberText.Plain(Value)} has no finite power with this exponent.");
        return Combine(power, [this], [slope]);
    }

    /// <summary>A result of any formula, with sensitivities that the caller knows: value and c_i = df/dx_i.</summary>
    /// <exception cref="ArgumentException">Not one sensitivity for each input, or one input's name stands for two.</exception>
    /// <exception cref="ArithmeticException">The value or its uncertainty is not finite.</exception>
    public static Uncertain Of(double value, IReadOnlyList<Uncertain> inputs, IReadOnlyList<double> sensitivities)
    {
        ArgumentNullException.ThrowIfNull(inputs);
        ArgumentNullException.ThrowIfNull(sensitivities);
        if (inputs.Count != sensitivities.Count)
            throw new ArgumentException($"{inputs.Count} inputs need as many sensitivities, not {sensitivities.Count}.", nameof(sensitivities));
        return Combine(value, [.. inputs], [.. sensitivities]);
    }

    /// <summary>A result of any formula; sensitivities by central differences of fourth order over a tenth of each input's u (JCGM 100:2008, 5.1.3, note 2).</summary>
    /// <param name="f">The formula: it gets one value for each input, in their order, and must be smooth within a fifth of their u.</param>
    /// <param name="inputs">The inputs; they may share inputs of their own.</param>
    /// <exception cref="ArgumentException">One input's name stands for two.</exception>
    /// <exception cref="ArithmeticException">The formula gives something that is not finite.</exception>
    public static Uncertain Of(Func<IReadOnlyList<double>, double> f, IReadOnlyList<Uncertain> inputs)
    {
        ArgumentNullException.ThrowIfNull(f);
        ArgumentNullException.ThrowIfNull(inputs);
        var values = new double[inputs.Count];
        for (var i = 0; i < values.Length; i++)
            values[i] = inputs[i].Value;
        var sensitivities = new double[values.Length];
        for (var i = 0; i < values.Length; i++)
            sensitivities[i] = inputs[i].StandardUncertainty == 0 ? 0 : Slope(f, values, i, inputs[i].StandardUncertainty);
        return Of(f(FixedList<double>.Copy(values)), inputs, sensitivities);
    }

    private static double Slope(Func<IReadOnlyList<double>, double> f, double[] values, int index, double u)
    {
        var step = Math.Max(u / 10, Math.Abs(values[index]) * SmallestStep);
        return ((8 * (At(1) - At(-1))) - (At(2) - At(-2))) / (12 * step);

        double At(int steps)
        {
            var moved = (double[])values.Clone();
            moved[index] += steps * step;
            return f(FixedList<double>.Own(moved));
        }
    }

    /// <summary>The chain rule: sensitivities of the result to each named input, added up where inputs are shared.</summary>
    private static Uncertain Combine(double value, ReadOnlySpan<Uncertain> of, ReadOnlySpan<double> sensitivities)
    {
        var terms = new List<UncertainTerm>();
        for (var i = 0; i < of.Length; i++)
        {
            foreach (var term in of[i]._terms)
                Add(terms, new UncertainTerm(term.Input, term.Sensitivity * sensitivities[i]));
        }

        return new(value, FixedList<UncertainTerm>.Own([.. terms]));
    }

    private static void Add(List<UncertainTerm> terms, UncertainTerm added)
    {
        for (var i = 0; i < terms.Count; i++)
        {
            if (!terms[i].Input.IsSameAs(added.Input))
                continue;
            var sum = terms[i].Sensitivity + added.Sensitivity;
            var isRest = Math.Abs(sum) <= Roundings * Math.Max(Math.Abs(terms[i].Sensitivity), Math.Abs(added.Sensitivity));
            terms[i] = new UncertainTerm(terms[i].Input, isRest ? 0 : sum);
            return;
        }

        terms.Add(added);
    }

    private static Uncertain NotNull(Uncertain x) => x ?? throw new ArgumentNullException(nameof(x));
}
