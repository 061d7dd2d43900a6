using System;

namespace Waywright;

// Draws by the procedures of JCGM 101:2008, 6.4, of which each uses a fixed number of uniform numbers: no rejection, so that a draw stays addressed by its trial.
internal sealed record GaussianDistribution(double Expectation, double Deviation) : Distribution
{
    public override double Mean => Expectation;

    public override double StandardUncertainty => Deviation;

    internal override void Draw(RandomDraws draws, uint input, long firstTrial, Span<double> values)
    {
        draws.Gaussian(input, firstTrial, values);
        RandomDraws.Scale(values, Expectation, Deviation);
    }
}

internal sealed record TruncatedGaussianDistribution : Distribution
{
    // What is left below this would be a shape of its own, drawn from the last digits of the distribution function.
    private const double LeastShare = 1e-6;

    private readonly double _centre;
    private readonly double _deviation;
    private readonly double _low;
    private readonly double _high;
    private readonly double _below;
    private readonly double _share;

    private TruncatedGaussianDistribution(double centre, double deviation, double low, double high)
    {
        (_centre, _deviation, _low, _high) = (centre, deviation, low, high);
        var (a, b) = ((low - centre) / deviation, (high - centre) / deviation);
        _below = StudentQuantile.Normal(a);
        _share = StudentQuantile.Normal(b) - _below;
        if (_share < LeastShare)
            throw new ArgumentException("Less than a millionth of the Gaussian lies between the limits.", nameof(low));
        var (atLow, atHigh) = (StudentQuantile.NormalDensity(a), StudentQuantile.NormalDensity(b));
        var shift = (atLow - atHigh) / _share;
        var spread = 1 + ((Times(a, atLow) - Times(b, atHigh)) / _share) - (shift * shift);
        Mean = Math.Clamp(centre + (deviation * shift), low, high);
        StandardUncertainty = deviation * Math.Sqrt(Math.Max(0, spread));
    }

    public override double Mean { get; }

    public override double StandardUncertainty { get; }

    public static Distribution Of(double centre, double deviation, double low, double high)
        => low < high ? new TruncatedGaussianDistribution(centre, deviation, low, high) : throw new ArgumentException("The lower limit must be below the upper one.", nameof(low));

    internal override void Draw(RandomDraws draws, uint input, long firstTrial, Span<double> values)
    {
        draws.Uniform(input, firstTrial, values);
        RandomDraws.Scale(values, _below, _share);
        foreach (ref var p in values)
            p = Math.Clamp(p, 1e-300, Math.BitDecrement(1.0));
        NormalQuantile.Replace(values);
        foreach (ref var z in values)
            z = Math.Clamp(_centre + (_deviation * z), _low, _high);
    }

    // The density falls faster than any limit grows.
    private static double Times(double limit, double density) => double.IsInfinity(limit) ? 0 : limit * density;
}

internal sealed record StudentDistribution(double Expectation, double Scale, double DegreesOfFreedom) : Distribution
{
    public override double Mean => Expectation;

    public override double StandardUncertainty
        => DegreesOfFreedom > 2 ? Scale * Math.Sqrt(DegreesOfFreedom / (DegreesOfFreedom - 2)) : Scale > 0 ? double.PositiveInfinity : 0;

    // Bailey, Mathematics of Computation 62 (1994) 779-781, polar form: t = sqrt(nu (U^(-2/nu) - 1)) cos(2 pi V) is exact for any nu. The machine's logarithm,
    // hyperbolic sine and cosine are used: another machine may differ in the last digit of a draw, never in which draw it is.
    internal override void Draw(RandomDraws draws, uint input, long firstTrial, Span<double> values)
    {
        Span<double> angles = stackalloc double[RandomDraws.MostAtOnce];
        draws.Uniform(input, firstTrial, values);
        draws.Uniform(input, firstTrial, angles[..values.Length], part: 1);
        for (var i = 0; i < values.Length; i++)
        {
            // e^x - 1 = 2 e^(x/2) sinh(x/2) keeps its digits for many degrees of freedom.
            var half = -Math.Log(values[i]) / DegreesOfFreedom;
            var radius = Math.Sqrt(2 * DegreesOfFreedom * Math.Exp(half) * Math.Sinh(half));
            values[i] = Expectation + (Scale * radius * double.CosPi(2 * angles[i]));
        }
    }
}

internal sealed record RectangularDistribution(double Low, double High) : Distribution
{
    public override double Mean => Low + ((High - Low) / 2);

    public override double StandardUncertainty => (High - Low) / Math.Sqrt(12);

    internal override void Draw(RandomDraws draws, uint input, long firstTrial, Span<double> values)
    {
        draws.Uniform(input, firstTrial, values);
        RandomDraws.Scale(values, Low, High - Low);
    }
}

internal sealed record CurvilinearTrapezoidDistribution(double Low, double High, double Inexactness) : Distribution
{
    public override double Mean => Low + ((High - Low) / 2);

    public override double StandardUncertainty => Math.Sqrt(((High - Low) * (High - Low) / 12) + (Inexactness * Inexactness / 9));

    // 6.4.3.4: the limits are drawn first, then a place between them.
    internal override void Draw(RandomDraws draws, uint input, long firstTrial, Span<double> values)
    {
        Span<double> places = stackalloc double[RandomDraws.MostAtOnce];
        draws.Uniform(input, firstTrial, values);
        draws.Uniform(input, firstTrial, places[..values.Length], part: 1);
        for (var i = 0; i < values.Length; i++)
        {
            var low = Low - Inexactness + (2 * Inexactness * values[i]);
            var high = Low + High - low;
            values[i] = low + ((high - low) * places[i]);
        }
    }
}

internal sealed record TrapezoidDistribution(double Low, double High, double Beta) : Distribution
{
    public override double Mean => Low + ((High - Low) / 2);

    public override double StandardUncertainty => (High - Low) * Math.Sqrt((1 + (Beta * Beta)) / 24);

    // 6.4.4.4: the sum of two rectangular draws.
    internal override void Draw(RandomDraws draws, uint input, long firstTrial, Span<double> values)
    {
        Span<double> second = stackalloc double[RandomDraws.MostAtOnce];
        draws.Uniform(input, firstTrial, values);
        draws.Uniform(input, firstTrial, second[..values.Length], part: 1);
        for (var i = 0; i < values.Length; i++)
            values[i] = Low + ((High - Low) / 2 * (((1 + Beta) * values[i]) + ((1 - Beta) * second[i])));
    }
}

internal sealed record ArcsineDistribution(double Low, double High) : Distribution
{
    public override double Mean => Low + ((High - Low) / 2);

    public override double StandardUncertainty => (High - Low) / Math.Sqrt(8);

    // By the quantile, -cos(pi u), so that a larger number makes a larger draw.
    internal override void Draw(RandomDraws draws, uint input, long firstTrial, Span<double> values)
    {
        draws.Uniform(input, firstTrial, values);
        foreach (ref var u in values)
            u = Mean - ((High - Low) / 2 * double.CosPi(u));
    }
}
