namespace Waywright.Tests.Beams;

/// <summary>A bar of 1 m, 1 N/m and 1 N m2 on two points placed alike: its figures are those of tables in w L^4/(EI), downwards positive.</summary>
sealed class UnitBar(double spacing)
{
    readonly BeamLine _line = new SupportedBeam(1000, 1, 1, [500 * (1 - spacing), 500 * (1 + spacing)]).Under();

    public double Overhang => (1 - spacing) / 2;

    public double CentreSag => Sag(0.5);

    public double EndSag => Sag(0);

    /// <summary>A cubic term is missing at a free end: v(d) = v(0) + slope d + d^4/24 towards the support.</summary>
    public double EndSlope => (Sag(Overhang / 2) - EndSag - (Math.Pow(Overhang / 2, 4) / 24)) / (Overhang / 2);

    /// <summary>Second difference plus its remainder, which is exact for the quartic that the line is.</summary>
    public double CentreMoment => -((Sag(0.4) - (2 * CentreSag) + Sag(0.6)) / 0.01) + (0.01 / 12);

    public double SupportMoment => -Overhang * Overhang / 2;

    public double PeakToValley
    {
        get
        {
            var sags = Enumerable.Range(0, 20001).Select(i => Sag(i / 20000.0)).ToArray();
            return sags.Max() - sags.Min();
        }
    }

    /// <summary>Variance of the line along the bar, by Gauss-Legendre over overhang and half span: exact for squares of quartics.</summary>
    public double Variance => Mean(sag => sag * sag) - Math.Pow(Mean(sag => sag), 2);

    /// <summary>Integral of slope squared: what shortens the distance between the ends (F. W. Bessel's condition).</summary>
    public double Shortening => 2 * (Integral(0, Overhang, x => Slope(x, 0, Overhang)) + Integral(Overhang, 0.5, x => Slope(x, Overhang, 1 - Overhang)));

    public double Sag(double x) => _line.DeflectionUm(1000 * x) / -1e6;

    double Mean(Func<double, double> of) => 2 * (Integral(0, Overhang, x => of(Sag(x))) + Integral(Overhang, 0.5, x => of(Sag(x))));

    /// <summary>Square of the slope of the quartic through five stations of the stretch.</summary>
    double Slope(double x, double from, double to)
    {
        double[] nodes = [.. Enumerable.Range(0, 5).Select(i => from + ((to - from) * i / 4))];
        return Math.Pow(Polynomial.Slope(nodes, [.. nodes.Select(Sag)], x), 2);
    }

    static double Integral(double from, double to, Func<double, double> of) => MathNet.Numerics.Integration.GaussLegendreRule.Integrate(of, from, to, 12);
}
