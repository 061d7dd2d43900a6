using System;
using System.Collections.Generic;
using System.Linq;

namespace Waywright;

/// <summary>Density and bending stiffness from several masses hung on a belt: least squares of the notes' logarithms, by Gauss and Newton over mu and EI.</summary>
internal sealed class HungBelt(int count, int clampedEnds)
{
    private const int MostSteps = 100;
    private const double Settled = 1e-13;

    /// <param name="v">Gravity, then the masses, the lengths, the notes.</param>
    public (double Density, double Bending) Solve(IReadOnlyList<double> v)
    {
        // Start: an ideal string of the longest span, and a stiffness that is small on the shortest.
        var longest = Enumerable.Range(0, count).MaxBy(i => v[1 + count + i]);
        var mu = v[0] * v[1 + longest] / (4 * Square(v[1 + count + longest] * v[1 + (2 * count) + longest]));
        var shortest = Enumerable.Range(0, count).Min(i => v[1 + count + i]);
        var smallest = v[0] * v[1] * Square(shortest) / 1e4;
        var bending = smallest;
        for (var step = 0; step < MostSteps; step++)
        {
            var (aa, ab, bb, ar, br) = (0.0, 0.0, 0.0, 0.0, 0.0);
            for (var i = 0; i < count; i++)
            {
                var rest = Math.Log(v[1 + (2 * count) + i]) - Model(v, i, mu, bending);
                // The note goes with mu to the power -1/2 exactly; over EI the slope is by a difference.
                const double byMu = -0.5;
                var h = 1e-6;
                var byBending = (Model(v, i, mu, bending * (1 + h)) - Model(v, i, mu, bending * (1 - h))) / (2 * h);
                (aa, ab, bb) = (aa + (byMu * byMu), ab + (byMu * byBending), bb + (byBending * byBending));
                (ar, br) = (ar + (byMu * rest), br + (byBending * rest));
            }

            if (bending < 1e-6 * smallest)
                throw new ArgumentException("The notes rise less than a limp string's: no stiffness explains them. Check masses, lengths and notes, or take one hanging alone.");
            var determinant = (aa * bb) - (ab * ab);
            if (!(determinant > 1e-14 * aa * bb))
                throw new ArgumentException("These hangings can't tell stiffness from mass: use another length or a mass that differs more.");
            var (stepMu, stepBending) = (((bb * ar) - (ab * br)) / determinant, ((aa * br) - (ab * ar)) / determinant);
            mu *= Math.Exp(Math.Clamp(stepMu, -1, 1));
            bending *= Math.Exp(Math.Clamp(stepBending, -2, 2));
            if (Math.Abs(stepMu) < Settled && Math.Abs(stepBending) < 1e-9)
                break;
        }

        return (mu, bending);
    }

    /// <summary>Squared residuals over their variance, from note, length and mass.</summary>
    public double ChiSquared(Uncertain[] inputs, double mu, double bending)
    {
        var v = inputs.Select(i => i.Value).ToArray();
        var sum = 0.0;
        for (var i = 0; i < count; i++)
        {
            var (m, l, f) = (inputs[1 + i], inputs[1 + count + i], inputs[1 + (2 * count) + i]);
            var variance = Square(f.StandardUncertainty / f.Value) + Square(l.StandardUncertainty / l.Value) + Square(m.StandardUncertainty / m.Value / 2);
            sum += Square(Math.Log(f.Value) - Model(v, i, mu, bending)) / variance;
        }

        return sum;
    }

    private double Model(IReadOnlyList<double> v, int i, double mu, double bending)
        => Math.Log(TensionedBeam.FrequencyHz(1, v[0] * v[1 + i], bending, mu, v[1 + count + i], clampedEnds));

    private static double Square(double x) => x * x;
}
