namespace Waywright.Simulations;

/// <summary>What the intervals of one figure did over many sweeps of a rail whose truth is known.</summary>
internal sealed class Covered(double truth)
{
    private const double Rounding = 1e-9;

    private readonly Lock _gate = new();
    private int _interval;
    private int _lower;
    private int _upper;
    private int _guaranteed;
    private int _plain;
    private double _width;
    private double _guaranteedWidth;
    private double _read;
    private double _estimate;

    public int Rails { get; private set; }

    public double Interval => Percent(_interval);

    public double LowerBound => Percent(_lower);

    public double UpperBound => Percent(_upper);

    public double Guaranteed => Percent(_guaranteed);

    public double Plain => Percent(_plain);

    /// <summary>Mean width over that of the guaranteed interval.</summary>
    public double WidthRatio => _width / _guaranteedWidth;

    public double ReadTooLarge => (_read / Rails) - truth;

    public double EstimateTooLarge => (_estimate / Rails) - truth;

    /// <param name="figure">Of one sweep.</param>
    /// <param name="plain">Plain Monte Carlo's 95 % interval around the heights as read; null where it is not watched.</param>
    public void Add(UncertainFigure figure, (double Low, double High)? plain)
    {
        var (low, high) = (figure.LowUm, figure.HighUm);
        var (lower, upper) = (figure.LowerBoundUm(0.95), figure.UpperBoundUm(0.95));
        lock (_gate)
        {
            Rails++;
            _interval += Holds(low, high);
            _lower += Holds(lower, double.PositiveInfinity);
            _upper += Holds(double.NegativeInfinity, upper);
            _guaranteed += Holds(figure.GuaranteedLowUm, figure.GuaranteedHighUm);
            _plain += plain is { } p ? Holds(p.Low, p.High) : 0;
            _width += high - low;
            _guaranteedWidth += figure.GuaranteedHighUm - figure.GuaranteedLowUm;
            _read += figure.ObservedUm;
            _estimate += figure.EstimateUm;
        }
    }

    private int Holds(double low, double high) => low <= truth + Rounding && truth <= high + Rounding ? 1 : 0;

    private double Percent(int count) => 100.0 * count / Rails;
}
