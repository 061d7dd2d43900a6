using System;

namespace Waywright;

/// <summary>
/// A bar held at its screws that may touch the base between them, but not enter it: the smallest bending energy with w >= 0, w = d - S d, S the natural
/// spline through screws and contacts, d the gap of the free bar. At a contact the base pushes up (force >= 0), elsewhere the gap is open.
/// </summary>
/// <remarks>
/// Active set of Lawson and Hanson (Solving Least Squares Problems, 1974, chapter 23; from memory) on the forces: the energy falls from step to step, so no
/// set comes back and the search ends. Several contacts are added at once, the deepest of each stretch that is entered.
/// </remarks>
internal sealed class ContactSearch
{
    // Of the size of the free gap: far below anything that is measured, far above rounding.
    private const double Tolerance = 1e-9;
    private const int MostSteps = 20;

    private readonly double[] _places;
    private readonly double[] _gap;
    private readonly bool[] _isKnot;
    private readonly bool[] _isScrew;
    private readonly double[] _force;
    private readonly double[] _knotX;
    private readonly double[] _knotY;
    private readonly double[] _room;
    private readonly int[] _knots;
    private readonly double[] _open;
    private int _count;

    /// <param name="places">Rising.</param>
    /// <param name="screws">Indices of the screws among the places, rising.</param>
    /// <param name="gap">Free bar less free base at each place, um.</param>
    public ContactSearch(double[] places, int[] screws, double[] gap)
    {
        var n = places.Length;
        (_places, _gap) = (places, gap);
        (_isKnot, _isScrew, _force, _knots, _open) = (new bool[n], new bool[n], new double[n], new int[n], new double[n]);
        (_knotX, _knotY, _room) = (new double[n], new double[n], new double[2 * n]);
        foreach (var screw in screws)
            (_isKnot[screw], _isScrew[screw]) = (true, true);
    }

    /// <summary>Indices of screws and contacts, rising.</summary>
    public ReadOnlySpan<int> Knots => _knots.AsSpan(0, _count);

    /// <summary>What is open between bar and base at each place, um: 0 or more but for rounding, unless contacts were left out.</summary>
    public ReadOnlySpan<double> Open => _open;

    /// <summary>Force on the bar at a place, upwards positive, as a fall of the third derivative, um/mm3.</summary>
    public double ForceAt(int place) => _force[place];

    public bool IsContact(int place) => _isKnot[place] && !_isScrew[place];

    /// <summary>The bar as if nothing were between the screws, then with the base there.</summary>
    /// <param name="withBase">Whether the base is there.</param>
    public void Solve(bool withBase)
    {
        var forces = new double[_places.Length];
        Bend(forces);
        // Of the free gap, not of what is left: with a screw at every station only rounding is left, and no search in it would end.
        var size = 0.0;
        foreach (var d in _gap)
            size = Math.Max(size, Math.Abs(d));
        var entered = Tolerance * size;
        for (var step = 0; withBase && AddDeepest(entered); step++)
        {
            if (step > MostSteps * _places.Length)
                throw new InvalidOperationException("The search for contacts between rail and base did not come to an end.");
            Bend(forces);
            while (StepBack(forces))
                Bend(forces);
            forces.CopyTo(_force, 0);
        }

        forces.CopyTo(_force, 0);
    }

    /// <summary>The bar through all knots: gap at each place, force at each knot.</summary>
    private void Bend(double[] forces)
    {
        _count = 0;
        for (var i = 0; i < _places.Length; i++)
        {
            if (_isKnot[i])
                (_knots[_count], _knotX[_count], _knotY[_count++]) = (i, _places[i], _gap[i]);
        }

        var spline = new NaturalSpline(_knotX.AsSpan(0, _count), _knotY.AsSpan(0, _count), _room);
        spline.Along(_places, _open);
        for (var i = 0; i < _open.Length; i++)
            _open[i] = _gap[i] - _open[i];
        Array.Clear(forces);
        for (var k = 0; k < _count; k++)
        {
            forces[_knots[k]] = -spline.Jump(k);
            _open[_knots[k]] = 0;
        }
    }

    /// <summary>The deepest place of each stretch that the bar enters becomes a contact; false where it enters none.</summary>
    private bool AddDeepest(double entered)
    {
        var deepest = -1;
        var added = false;
        for (var i = 0; i <= _open.Length; i++)
        {
            if (i < _open.Length && _open[i] < -entered)
            {
                if (deepest < 0 || _open[i] < _open[deepest])
                    deepest = i;
            }
            else if (deepest >= 0)
            {
                (_isKnot[deepest], _force[deepest], added) = (true, 0, true);
                deepest = -1;
            }
        }

        return added;
    }

    /// <summary>Where a contact would have to pull, goes only so far that none does, and lets go of those that stop pushing there.</summary>
    private bool StepBack(double[] forces)
    {
        var share = 1.0;
        for (var k = 0; k < _count; k++)
        {
            var i = _knots[k];
            if (!_isScrew[i] && forces[i] < 0)
                share = Math.Min(share, _force[i] / (_force[i] - forces[i]));
        }

        if (share >= 1)
            return false;
        for (var k = 0; k < _count; k++)
        {
            var i = _knots[k];
            if (_isScrew[i])
                continue;
            var lets = forces[i] < 0 && _force[i] / (_force[i] - forces[i]) <= share;
            _force[i] = lets ? 0 : Math.Max(0, _force[i] + (share * (forces[i] - _force[i])));
            _isKnot[i] = !lets;
        }

        return true;
    }
}
