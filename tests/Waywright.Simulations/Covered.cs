namespace Waywright.Simulations;

/// <summary>What the intervals of one figure did over many sweeps of a rail whose truth is known.</summary>
internal sealed class Covered(double truth)
{
    private readonly List<(bool In, bool Low, bool High, double Width, double Guaranteed, bool GuaranteedIn, double Naive, double Estimate)> _rails = [];

    public double Truth => truth;

    public int Rails => _rails.Count;

    public double Interval => Share(r => r.In);

    public double LowerBound => Share(r => r.Low);

    public double UpperBound => Share(r => r.High);

    public double Guaranteed => Share(r => r.GuaranteedIn);

    public double WidthRatio => _rails.Sum(r => r.Width) / _rails.Sum(r => r.Guaranteed);

    public double Naive => _rails.Average(r => r.Naive) - truth;

    public double Estimate => _rails.Average(r => r.Estimate) - truth;

    public double EstimateHigh => Share(r => r.Estimate > truth);

    public void Add(UncertainFigure figure)
    {
        const double Rounding = 1e-9;
        var (low, high) = (figure.LowUm, figure.HighUm);
        var rail = (
            low <= truth + Rounding && truth <= high + Rounding,
            figure.LowerBoundUm(0.95) <= truth + Rounding,
            truth <= figure.UpperBoundUm(0.95) + Rounding,
            high - low,
            figure.GuaranteedHighUm - figure.GuaranteedLowUm,
            figure.GuaranteedLowUm <= truth + Rounding && truth <= figure.GuaranteedHighUm + Rounding,
            figure.ObservedUm,
            figure.EstimateUm);
        lock (_rails)
            _rails.Add(rail);
    }

    private double Share(Func<(bool In, bool Low, bool High, double Width, double Guaranteed, bool GuaranteedIn, double Naive, double Estimate), bool> holds)
        => _rails.Count(holds) / (double)_rails.Count;
}
