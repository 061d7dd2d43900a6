using System.Globalization;
using Waywright.Placement;

namespace Waywright.Notebooks;

/// <summary>
/// A plan of the machine as the builder stands before it: each rail in its place with its dot, its width, and the bow that counts there, exaggerated by a stated factor. What stands at
/// its ends says how a rail lies: left and right across, front and back along, bottom and top upright. The distances between rails are drawn, not measured.
/// </summary>
internal static class MachinePicture
{
    private const double BowMm = 28;
    private const double BeyondEndMm = 9;
    private const double RoomMm = 60;

    private enum Lie
    {
        Across,
        Along,
        Upright,
    }

    private sealed record Drawn(PlacedRail Rail, MachinePosition Place, Lie Lie, Profile? Shape)
    {
        public bool StartsFar => Place.NearEnd.ToLowerInvariant() is "right" or "back" or "rear" or "top";
    }

    /// <summary>The first machine; null where nothing was placed.</summary>
    public static Picture? Of(RailPlacement placement)
    {
        var rails = placement.Placed.Where(p => p.Machine == 1).Select(p => Draw(placement, p)).OfType<Drawn>().ToArray();
        if (rails.Length == 0)
            return null;
        var longest = rails.Max(r => r.Place.LengthMm);
        var most = rails.Max(r => r.Shape?.HeightsUm.Max(Math.Abs) ?? 0);
        var factor = most > 0 ? Nice(BowMm * 1000 / most) : 1;
        var wide = Math.Max(longest + RoomMm, RoomMm * (2 + rails.Count(r => r.Lie == Lie.Along)));
        var x = Axis.Covering("from left to right", "mm", [0, wide], 4).Reaching(-RoomMm, wide + RoomMm, new Interval(0, wide));
        var y = Axis.Covering(rails.Any(r => r.Lie != Lie.Upright) ? "from front to back, or bottom to top" : "from bottom to top", "mm", [0, longest], 4).Reaching(-0.1 * longest, 1.12 * longest, new Interval(0, longest));
        var panels = new List<Panel>();
        Add("seen from above, you stand at the bottom", rails.Where(r => r.Lie != Lie.Upright));
        Add("uprights, seen from the front", rails.Where(r => r.Lie == Lie.Upright));
        return new Picture("Plan of the machine", string.Join("; ", rails.Select(r => $"{r.Rail.Rail} for {r.Rail.Position}, dot at the {r.Rail.DotAt}")) + ".", x, y, panels) { Columns = 2, PlotHeight = 300 };

        void Add(string title, IEnumerable<Drawn> shown)
        {
            Drawn[] part = [.. shown];
            if (part.Length > 0)
                panels.Add(new Panel(title, "", FixedList<Layer>.Copy(Layers(part, wide, longest, factor))));
        }
    }

    public static string Caption(RailPlacement placement)
        => $"Each rail in its place{(placement.Plan.Machines == 1 ? "" : " in the first machine")}, the dot where it has to be. The line beside a rail is its bow as it lies there, drawn much too large: the key says how many times; + is to the left, seen from the rail's near end. Distances between rails are not to scale.";

    private static Drawn? Draw(RailPlacement placement, PlacedRail placed)
    {
        var place = placement.Plan.Positions.FirstOrDefault(p => placed.Position == p.Name || placed.Position.StartsWith(p.Name + " ", StringComparison.Ordinal));
        if (place is null)
            return null;
        var lie = (place.NearEnd.ToLowerInvariant(), place.FarEnd.ToLowerInvariant()) switch
        {
            ("left", "right") or ("right", "left") => Lie.Across,
            ("bottom", "top") or ("top", "bottom") => Lie.Upright,
            _ => Lie.Along,
        };
        var rail = placement.Batch.Find(placed.Rail);
        var isSide = place.Face == RailFace.Side;
        var shape = (isSide ? rail?.Side : rail?.Top)?.Profile;
        if (shape is not null)
        {
            var line = StraightnessFigures.Of(shape).EndPoints;
            shape = new Profile([.. shape.PositionsMm.Select(at => placed.IsTurned ? place.LengthMm - at : at)], [.. shape.PositionsMm.Zip(shape.HeightsUm, (at, z) => (placed.IsTurned && isSide ? -1 : 1) * (z - line.HeightUm(at)))]);
        }

        return new Drawn(placed, place, lie, shape);
    }

    private static IEnumerable<Layer> Layers(Drawn[] rails, double wide, double longest, double factor)
    {
        var dots = new List<Point>();
        var texts = new List<Layer>();
        var (along, across) = (rails.Where(r => r.Lie != Lie.Across).OrderBy(Order).ToArray(), rails.Where(r => r.Lie == Lie.Across).ToArray());
        foreach (var rail in rails)
        {
            var isAcross = rail.Lie == Lie.Across;
            var set = isAcross ? across : along;
            var share = (Array.IndexOf(set, rail) + (set.Length == 1 || isAcross ? 1.0 : 0)) / (set.Length == 1 || isAcross ? set.Length + 1 : set.Length - 1);
            var beside = isAcross ? share * longest : share * wide;
            var start = isAcross ? (wide - rail.Place.LengthMm) / 2 : 0;
            Point At(double from, double off)
            {
                var run = start + (rail.StartsFar ? rail.Place.LengthMm - from : from);
                var left = rail.StartsFar ? -off : off;
                return isAcross ? new(run, beside + left) : new(beside - left, run);
            }

            var (a, b) = (At(0, -rail.Place.WidthMm / 2), At(rail.Place.LengthMm, rail.Place.WidthMm / 2));
            yield return new BandLayer("rail, in its width", Role.Zone, FixedList<double>.Copy([Math.Min(a.X, b.X), Math.Max(a.X, b.X)]), FixedList<Interval>.Copy(Enumerable.Repeat(new Interval(Math.Min(a.Y, b.Y), Math.Max(a.Y, b.Y)), 2)));
            if (rail.Shape is { } shape)
                yield return new LineLayer($"its bow, {factor.ToString("#,0", CultureInfo.InvariantCulture)} times too large", Role.Fitted, FixedList<Point>.Copy(shape.PositionsMm.Zip(shape.HeightsUm, (p, z) => At(p, factor * z / 1000))));
            dots.Add(At(rail.Rail.IsTurned ? rail.Place.LengthMm + BeyondEndMm : -BeyondEndMm, 0));
            var middle = At(rail.Place.LengthMm * (isAcross ? 0.5 : 0.25), 0);
            texts.Add(isAcross
                ? new TextLayer(new(middle.X, middle.Y + 22), $"{rail.Rail.Position}: {rail.Rail.Rail}, {Shown.Mm(rail.Place.WidthMm)} wide", Beside.Above)
                : new TextLayer(new(middle.X + (share > 0.5 ? -14 : 14), middle.Y), $"{rail.Rail.Position}\n{rail.Rail.Rail}\n{Shown.Mm(rail.Place.WidthMm)} wide", share > 0.5 ? Beside.Left : Beside.Right));
        }

        yield return new MarkerLayer("dot", Role.Limit, Symbol.Circle, FixedList<Point>.Copy(dots), Size: 11);
        foreach (var text in texts)
            yield return text;
    }

    // A place that is called left stands left, one that is called right stands right, others between them in the plan's order.
    private static int Order(Drawn rail)
        => rail.Place.Name.Contains("left", StringComparison.OrdinalIgnoreCase) ? -1 : rail.Place.Name.Contains("right", StringComparison.OrdinalIgnoreCase) ? 1 : 0;

    private static double Nice(double factor)
    {
        var decade = Math.Pow(10, Math.Floor(Math.Log10(factor)));
        return decade * (factor / decade >= 5 ? 5 : factor / decade >= 2 ? 2 : 1);
    }
}
