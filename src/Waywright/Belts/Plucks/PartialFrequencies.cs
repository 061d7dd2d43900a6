using System;

namespace Waywright;

/// <summary>How a few parameters make the frequencies of the partials.</summary>
internal abstract class PartialFrequencies
{
    /// <summary>How many parameters.</summary>
    public abstract int Count { get; }

    public abstract double Frequency(double[] parameters, int partial);

    /// <summary>Change of a partial's frequency with a parameter.</summary>
    public abstract double Slope(double[] parameters, int partial, int parameter);

    /// <summary>Brings parameters to what they may be; false where they went too far for that.</summary>
    public abstract bool Hold(double[] parameters);
}

/// <summary>A stiff string: f_k = k f_1 sqrt((1 + B k^2) / (1 + B)); parameters f_1 and, where it is fitted, B.</summary>
internal sealed class LadderFrequencies(int[] numbers, double firstHz, bool fitsStiffness) : PartialFrequencies
{
    private const double StiffestB = 0.05;

    public override int Count => fitsStiffness ? 2 : 1;

    public override double Frequency(double[] parameters, int partial) => PartialLadder.Partial(numbers[partial], parameters[0], fitsStiffness ? parameters[1] : 0);

    public override double Slope(double[] parameters, int partial, int parameter)
    {
        if (parameter == 0)
            return Frequency(parameters, partial) / parameters[0];
        var (square, b) = ((double)numbers[partial] * numbers[partial], parameters[1]);
        return Frequency(parameters, partial) / 2 * ((square / (1 + (b * square))) - (1 / (1 + b)));
    }

    public override bool Hold(double[] parameters)
    {
        if (fitsStiffness)
            parameters[1] = Math.Clamp(parameters[1], 0, StiffestB);
        return parameters[0] > 0.8 * firstHz && parameters[0] < 1.25 * firstHz;
    }
}

/// <summary>Each partial its own frequency, within 1.2 % and 1 / T of where it starts.</summary>
internal sealed class FreeFrequencies(double[] startHz, double seconds) : PartialFrequencies
{
    private const double Band = 0.012;

    public override int Count => startHz.Length;

    public override double Frequency(double[] parameters, int partial) => parameters[partial];

    public override double Slope(double[] parameters, int partial, int parameter) => partial == parameter ? 1 : 0;

    public override bool Hold(double[] parameters)
    {
        for (var k = 0; k < startHz.Length; k++)
            parameters[k] = Math.Clamp(parameters[k], startHz[k] - Room(k), startHz[k] + Room(k));
        return true;
    }

    /// <summary>Whether a partial ran to the end of its room: then it wasn't there.</summary>
    public bool IsAtEdge(double[] parameters, int partial) => Math.Abs(parameters[partial] - startHz[partial]) >= Room(partial) * (1 - 1e-9);

    private double Room(int partial) => (Band * startHz[partial]) + (1 / seconds);
}
