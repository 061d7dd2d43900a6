namespace Waywright.Notebooks;

/// <summary>Notes along the travel, a ladder of partials, a pitch among its neighbours.</summary>
internal static class BeltFitPicture
{
    public static Picture Travel(TravelFit fit)
    {
        double[] mm = [.. fit.LengthsM.Select(l => 1000 * l)];
        double[] ms = [.. fit.NotesHz.Select(f => 1000 / f)];
        var slope = 2 / Math.Sqrt(fit.TensionOverDensity.Value);
        var d = 1000 * fit.EndOffset.Si.Value;
        double[] ends = [mm.Min(), mm.Max()];
        var x = Axis.Covering("length of the plucked span", "mm", mm);
        var y = Axis.Covering("period, 1 / note", "ms", ms);
        return new Picture("Notes along the travel", fit.Verdict, x, y, new Panel(
            new LineLayer("one tension", Role.Fitted, Point.Of(ends, [.. ends.Select(e => slope * (e + d))])),
            new DotLayer("plucked", Role.Ink, FixedList<Point>.Copy(mm.Zip(ms, (a, b) => new Point(a, b))), 8)));
    }

    public static Picture TravelRest(TravelFit fit)
    {
        double[] mm = [.. fit.LengthsM.Select(l => 1000 * l)];
        double[] percent = [.. fit.ResidualShares.Select(r => 100 * r)];
        var x = Axis.Covering("length of the plucked span", "mm", mm);
        var y = Axis.Covering("note against the line", "%", [-0.1, 0.1, .. percent]);
        return new Picture("What the line leaves", $"Largest: {percent.MaxBy(Math.Abs):0.00} %.", x, y, new Panel(
            new RuleLayer("", Role.Context, 0, "", Dash.Solid),
            new DotLayer("plucked", Role.Ink, FixedList<Point>.Copy(mm.Zip(percent, (a, b) => new Point(a, b))), 8) { Joined = true }))
        { PlotHeight = 110 };
    }

    public static Picture Ladder(PartialsFit fit)
    {
        double[] n = [.. fit.Numbers.Select(v => (double)v)];
        double[] rungs = [.. fit.NotesHz.Zip(n, (f, k) => f / k)];
        double[] fitted = [.. fit.NotesHz.Zip(fit.ResidualsHz, (f, r) => f - r).Zip(n, (f, k) => f / k)];
        var order = Enumerable.Range(0, n.Length).OrderBy(i => n[i]).ToArray();
        var x = Axis.Covering("partial n", "", n, 6);
        var y = Axis.Covering("note over n", "Hz", [.. rungs, .. fitted]);
        return new Picture("A ladder of partials", fit.Verdict, x, y, new Panel(
            new LineLayer("tension and stiffness fitted", Role.Fitted, Point.Of([.. order.Select(i => n[i])], [.. order.Select(i => fitted[i])])),
            new DotLayer("heard", Role.Ink, FixedList<Point>.Copy(n.Zip(rungs, (a, b) => new Point(a, b))), 8)))
        { PlotHeight = 180 };
    }

    public static Picture Pitch(BeltPitch pitch)
    {
        var measured = BeltPicture.IntervalOf(pitch.PitchMm);
        var near = pitch.Candidates.Where(c => c.PitchMm is not null).OrderBy(c => Math.Abs(c.PitchMm!.Value - pitch.PitchMm.Value)).Take(3).OrderBy(c => c.PitchMm).ToArray();
        var x = Axis.Covering("pitch", "mm", [measured.Low, measured.High, .. near.Select(c => c.PitchMm!.Value)], 6);
        var best = pitch.Candidates[0].PitchMm;
        var layers = new List<Layer>();
        for (var i = 0; i < near.Length; i++)
        {
            var isBest = near[i].PitchMm == best;
            layers.Add(new MarkerLayer(isBest ? "likeliest" : "other pitches", isBest ? Role.Contact : Role.Context, isBest ? Symbol.Diamond : Symbol.Ring, FixedList<Point>.Copy([new Point(near[i].PitchMm!.Value, 1)]),
                FixedList<string>.Copy([$"{near[i].Name}\n{Shown.Percent(near[i].Probability)} %"]), i % 2 == 0 ? Beside.Below : Beside.Above));
        }

        layers.Add(new DotLayer("measured, 95 %", Role.Ink, FixedList<Point>.Copy([new Point(pitch.PitchMm.Value, 2)]), 8) { Across = FixedList<Interval>.Copy([measured]) });
        return new Picture("The measured pitch among its neighbours", pitch.Verdict, x, BeltPicture.NoTicks(0, 2.6), new Panel(layers)) { PlotHeight = 130 };
    }
}
