using System;
using System.Linq;

namespace Waywright;

/// <summary>A rail laid on its base, looked at on one grid, so that any pattern of screws can be tried on it.</summary>
internal sealed class LaidRail
{
    private readonly double[] _gap;

    public LaidRail(MountingCase given)
    {
        Places = MountingGrid.Of(given.Screws, given.Free, given.Base);
        (Free, Under, _gap) = (new double[Places.Length], new double[Places.Length], new double[Places.Length]);
        given.FreeCurve.Along(Places, Free);
        given.BaseCurve?.Along(Places, Under);
        // A line taken off first, so that a tilted sweep costs no digits.
        var start = Free[0] - Under[0];
        var slope = (Free[^1] - Under[^1] - start) / (Places[^1] - Places[0]);
        for (var i = 0; i < Places.Length; i++)
            _gap[i] = Free[i] - Under[i] - start - (slope * (Places[i] - Places[0]));
    }

    public double[] Places { get; }

    /// <summary>The free rail, um.</summary>
    public double[] Free { get; }

    /// <summary>The free base, um; 0 where it isn't known.</summary>
    public double[] Under { get; }

    public int[] IndicesOf(ScrewPattern screws) => [.. screws.ScrewsMm.Select(x => Array.BinarySearch(Places, x))];

    public ContactSearch Press(int[] screws, bool withContact)
    {
        var search = new ContactSearch(Places, screws, _gap);
        search.Solve(withContact);
        return search;
    }

    /// <summary>What the rail is then, f - r (d - w), over any line.</summary>
    public double[] Mounted(ContactSearch pressed, double share)
    {
        var mounted = new double[Places.Length];
        for (var i = 0; i < mounted.Length; i++)
            mounted[i] = Free[i] - (share * (Free[i] - Under[i] - pressed.Open[i]));
        return mounted;
    }
}
