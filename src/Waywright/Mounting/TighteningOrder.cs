using System;

namespace Waywright;

/// <summary>From the middle screw outwards, from side to side.</summary>
internal static class TighteningOrder
{
    /// <param name="holes">Numbers of the screwed holes, rising.</param>
    /// <param name="positions">Of all holes, mm.</param>
    public static int[] Of(ReadOnlySpan<int> holes, ReadOnlySpan<double> positions)
    {
        var centre = (positions[holes[0] - 1] + positions[holes[^1] - 1]) / 2;
        var start = 0;
        // Of two that are as near to the centre as each other, the one at the dot's side comes first.
        for (var i = 1; i < holes.Length; i++)
        {
            if (Math.Abs(positions[holes[i] - 1] - centre) < Math.Abs(positions[holes[start] - 1] - centre) - 1e-9)
                start = i;
        }

        var order = new int[holes.Length];
        var (below, above) = (start - 1, start + 1);
        order[0] = holes[start];
        for (var i = 1; i < order.Length; i++)
        {
            // Where one side has run out, the other goes on.
            var up = below < 0 || (above < holes.Length && i % 2 == 1);
            order[i] = holes[up ? above++ : below--];
        }

        return order;
    }
}
