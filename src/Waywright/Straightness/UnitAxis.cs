namespace Waywright;

/// <summary>Positions counted from -1 at the first station to 1 at the last, where powers stay of one size.</summary>
internal readonly struct UnitAxis
{
    private readonly double _middle;
    private readonly double _half;

    public UnitAxis(Profile profile)
    {
        var positions = profile.Positions;
        _half = (positions[^1] - positions[0]) / 2;
        _middle = positions[0] + _half;
    }

    /// <summary>Length of one unit, mm.</summary>
    public double UnitMm => _half;

    public double At(double xMm) => (xMm - _middle) / _half;

    public double Mm(double t) => _middle + (t * _half);

    public double[] Stations(Profile profile)
    {
        var stations = new double[profile.Count];
        for (var i = 0; i < stations.Length; i++)
            stations[i] = At(profile.Positions[i]);
        return stations;
    }
}
