namespace Waywright.Simulations;

/// <summary>Standard normal numbers, one after the other, from a seed.</summary>
internal sealed class Draws(ulong seed)
{
    private readonly RandomDraws _draws = new(seed, 1);
    private readonly double[] _values = new double[64];
    private int _next = 64;
    private uint _input;

    public double Next()
    {
        if (_next == _values.Length)
        {
            _draws.Gaussian(_input++, 0, _values);
            _next = 0;
        }

        return _values[_next++];
    }
}
