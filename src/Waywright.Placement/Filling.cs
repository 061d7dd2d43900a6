namespace Waywright.Placement;

/// <summary>
/// How many places of each position can be filled at all. Places that can be filled together form a transversal matroid (Edmonds and Fulkerson, J. Res. NBS 69B (1965) 147-153, from
/// memory), so taking them in order of importance, each kept if an augmenting path finds rails for all so far, leaves the least importance unfilled. A search without a path
/// proves a shortage (Hall): the rails it saw are all that would do, and they are all taken.
/// </summary>
internal sealed class Filling
{
    private readonly IReadOnlyList<int>[] _fits;
    private readonly int[] _positionOfRail;
    private readonly bool[] _seen;

    private Filling(IReadOnlyList<int>[] fits, int rails)
    {
        _fits = fits;
        _positionOfRail = Enumerable.Repeat(-1, rails).ToArray();
        _seen = new bool[rails];
        Filled = new int[fits.Length];
        TakenBy = new int[fits.Length][];
    }

    /// <summary>Places filled, for each position.</summary>
    public int[] Filled { get; }

    /// <summary>The rails that were found for a position, in their order.</summary>
    public IEnumerable<int> RailsAt(int position) => Enumerable.Range(0, _positionOfRail.Length).Where(r => _positionOfRail[r] == position);

    /// <summary>For a position with a shortage: the positions that hold all rails that would do.</summary>
    public int[]?[] TakenBy { get; }

    /// <param name="fits">For each position, the rails that fit.</param>
    /// <param name="demands">How many each position wants.</param>
    /// <param name="weights">Importance of each.</param>
    /// <param name="rails">How many rails there are.</param>
    public static Filling Of(IReadOnlyList<int>[] fits, IReadOnlyList<int> demands, IReadOnlyList<double> weights, int rails)
    {
        var filling = new Filling(fits, rails);
        foreach (var position in Enumerable.Range(0, fits.Length).OrderByDescending(p => weights[p]))
        {
            while (filling.Filled[position] < demands[position])
            {
                Array.Clear(filling._seen);
                if (!filling.TryAdd(position))
                {
                    filling.TakenBy[position] = [.. Enumerable.Range(0, rails).Where(r => filling._seen[r]).Select(r => filling._positionOfRail[r]).Distinct().Order()];
                    break;
                }

                filling.Filled[position]++;
            }
        }

        return filling;
    }

    // Breadth first: a thousand rails would make a deep recursion.
    private bool TryAdd(int position)
    {
        var cameFrom = new Dictionary<int, int>();
        var queue = new Queue<(int Position, int ByRail)>([(position, -1)]);
        var met = new HashSet<int> { position };
        while (queue.TryDequeue(out var at))
        {
            foreach (var rail in _fits[at.Position])
            {
                if (_seen[rail])
                    continue;
                _seen[rail] = true;
                cameFrom[rail] = at.ByRail;
                if (_positionOfRail[rail] >= 0)
                {
                    if (met.Add(_positionOfRail[rail]))
                        queue.Enqueue((_positionOfRail[rail], rail));
                    continue;
                }

                // Each rail on the path moves up to the place of the one before it.
                var moved = rail;
                while (cameFrom[moved] is var before and >= 0)
                    (_positionOfRail[moved], moved) = (_positionOfRail[before], before);
                _positionOfRail[moved] = position;
                return true;
            }
        }

        return false;
    }
}
