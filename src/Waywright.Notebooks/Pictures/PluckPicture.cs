namespace Waywright.Notebooks;

/// <summary>A take as it was heard, and the spectrum of its best pluck with the ladder of partials.</summary>
internal static class PluckPicture
{
    private const int Stretches = 140;
    private const int SpectrumStretches = 80;
    private const double DeepestDb = -70;

    public static Picture Waveform(PluckTake take)
    {
        var signal = take.Signal;
        var largest = Math.Max(signal.Samples.Max(Math.Abs), 1e-12);
        var points = Thinning.Of(FixedList<Point>.Copy(signal.Samples.Select((value, i) => new Point(i / signal.Rate, value / largest))), Stretches);
        var layers = new List<Layer>();
        foreach (var pluck in take.Plucks.Where(p => p.UsedToSeconds > p.UsedFromSeconds))
        {
            var name = pluck.IsUsable ? "part that was used" : "not usable";
            layers.Add(new BandLayer(name, pluck.IsUsable ? Role.Zone : Role.Undecided, FixedList<double>.Copy([pluck.UsedFromSeconds, pluck.UsedToSeconds]), FixedList<Interval>.Copy([new(-1, 1), new(-1, 1)])));
        }

        layers.Add(new LineLayer("sound", Role.Ink, points, Dash.Solid, 1));
        var x = Axis.Covering("time", "s", [0, take.Seconds], 6);
        return new Picture("The take as it was heard", take.Verdict, x.Reaching(0, take.Seconds), Axis.Covering("sound, of the loudest", "", [-1, 1], 4), new Panel(layers)) { PlotHeight = 130 };
    }

    /// <summary>Null where no pluck gave a note.</summary>
    public static Picture? Spectrum(PluckTake take)
    {
        var pluck = take.Plucks.Where(p => p.Frequency is not null).MaxBy(p => (p.IsUsable, p.UsedToSeconds - p.UsedFromSeconds));
        if (pluck is null)
            return null;
        var signal = take.Signal;
        var (from, to) = (signal.Count(pluck.UsedFromSeconds), Math.Min(signal.Samples.Length, signal.Count(pluck.UsedToSeconds)));
        var spectrum = PluckSpectrum.BlackmanHarris(signal.Samples.AsSpan(from, to - from), signal.Rate);
        var first = pluck.Frequency!.Si.Value;
        var highest = Math.Min(3500, first * Math.Max(4.6, pluck.Partials.Count == 0 ? 0 : Math.Min(8, pluck.Partials[^1].Number) + 0.6));
        var count = Math.Min(spectrum.Magnitudes.Length, (int)(highest / spectrum.StepHz));
        var strongest = spectrum.Magnitudes.AsSpan(0, count).ToArray().Max();
        double Db(double magnitude) => Math.Max(DeepestDb, 20 * Math.Log10(Math.Max(magnitude, 1e-12 * strongest) / strongest));
        var curve = Thinning.Of(FixedList<Point>.Copy(spectrum.Magnitudes.Take(count).Select((m, i) => new Point(i * spectrum.StepHz, Db(m)))), SpectrumStretches);
        var partials = pluck.Partials.Where(p => p.FrequencyHz < highest).ToArray();
        double At(double hertz) => Db(spectrum.Magnitudes[Math.Clamp((int)Math.Round(hertz / spectrum.StepHz), 0, count - 1)]);
        List<Layer> layers =
        [
            new LineLayer("spectrum of the part that was used", Role.Ink, curve, Dash.Solid, 1.2),
            new MarkerLayer("partials that were fitted", Role.Contact, Symbol.TriangleDown, FixedList<Point>.Copy(partials.Select(p => new Point(p.FrequencyHz, At(p.FrequencyHz)))), FixedList<string>.Copy(partials.Select(p => Shown.Count(p.Number)))),
        ];
        var others = pluck.RunnersUp.Where(r => r.FrequencyHz < highest).ToArray();
        if (others.Length > 0)
            layers.Add(new MarkerLayer("next best notes", Role.Context, Symbol.Ring, FixedList<Point>.Copy(others.Select(r => new Point(r.FrequencyHz, DeepestDb + 4))), FixedList<string>.Copy(others.Select(r => FormattableString.Invariant($"{r.FrequencyHz:0}"))), Beside.Right));
        var x = Axis.Covering("frequency", "Hz", [0, highest], 6).Reaching(0, highest);
        var y = Axis.Covering("level, of the strongest", "dB", [DeepestDb, 0], 5).Reaching(DeepestDb, 12, new(DeepestDb, 0));
        return new Picture("The ladder of partials", FormattableString.Invariant($"The lowest partial sounds {first:0.00} Hz; {pluck.Partials.Count} were fitted."), x, y, new Panel(layers)) { PlotHeight = 190 };
    }
}
