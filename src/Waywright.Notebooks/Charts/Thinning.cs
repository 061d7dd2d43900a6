namespace Waywright.Notebooks;

/// <summary>Leaves out points that a picture can't show apart: of each stretch of x it keeps the first, the lowest, the highest and the last.</summary>
internal static class Thinning
{
    /// <param name="points">In order of x.</param>
    /// <param name="stretches">How many stretches of equal count; at most four points of each are kept.</param>
    public static FixedList<Point> Of(FixedList<Point> points, int stretches = 200)
    {
        if (points.Count <= stretches * 4)
            return points;
        var kept = new List<Point>(stretches * 4);
        for (var s = 0; s < stretches; s++)
        {
            var (from, to) = ((int)((long)points.Count * s / stretches), (int)((long)points.Count * (s + 1) / stretches));
            var (low, high) = (from, from);
            for (var i = from; i < to; i++)
            {
                low = points[i].Y < points[low].Y ? i : low;
                high = points[i].Y > points[high].Y ? i : high;
            }

            kept.AddRange(new[] { from, low, high, to - 1 }.Distinct().Order().Select(i => points[i]));
        }

        return FixedList<Point>.Copy(kept);
    }
}
