namespace Waywright.Tests.Beams;

/// <summary>The polynomial through given points.</summary>
static class Polynomial
{
    /// <summary>Its slope at x, from Lagrange's form.</summary>
    public static double Slope(double[] nodes, double[] values, double x)
    {
        var slope = 0.0;
        for (var i = 0; i < nodes.Length; i++)
        {
            for (var j = 0; j < nodes.Length; j++)
            {
                if (j == i)
                    continue;
                var product = values[i] / (nodes[i] - nodes[j]);
                for (var k = 0; k < nodes.Length; k++)
                    product *= k == i || k == j ? 1 : (x - nodes[k]) / (nodes[i] - nodes[k]);
                slope += product;
            }
        }

        return slope;
    }
}
