using System;
using System.Collections.Generic;
using System.Linq;

namespace Waywright;

/// <summary>
/// The note of a span under a tension with all that is stated of it, and the way back. In order: the air's mass is added; the length is L + offsets + 2 T / k; the note is the tensioned beam's,
/// ends that are neither pinned nor clamped a share h of the way between both; the pluck multiplies it.
/// </summary>
internal sealed class BeltModel
{
    /// <summary>Dry air at 20 degrees C and 101.325 kPa, kg/m3 (NIST, from the CIPM-2007 equation: 1.2041).</summary>
    public const double AirKgPerM3 = 1.204;

    /// <summary>What the potential flow around a thin strip in free space leaves out near pulleys and frame: common practice, no source.</summary>
    private const double AirShareUncertainty = 0.2;

    private const double Widest = 1e3;
    private const int MostSteps = 200;

    private readonly BeltSpan _span;
    private readonly int _partial;
    private readonly int _clamps;
    private readonly int _pulleys;
    private readonly int _unknown;

    public BeltModel(BeltSpan span, int partial)
    {
        if (span.Amplitude is not null && span.StretchStiffness is null)
            throw new ArgumentException("An amplitude needs the belt's stretch stiffness EA, to say how much the pluck tightens it.", nameof(span));
        (_span, _partial) = (span, partial);
        foreach (var end in (ReadOnlySpan<BeltEnd>)[span.First, span.Second])
        {
            _clamps += end.IsClamped ? 1 : 0;
            _pulleys += end.IsPulley ? 1 : 0;
            _unknown += end.IsUnknown ? 1 : 0;
        }
    }

    public string Words => _span.BendingStiffnessNm2 is null ? "string with its corrections" : $"tensioned beam between {_span.First.Kind} and {_span.Second.Kind}";

    public Uncertain Tension(Uncertain frequency) => Propagated(v => TensionN(v[^1], Terms.Of(v)), [.. Inputs(), frequency]);

    public Uncertain Frequency(Uncertain tension) => Propagated(v => Hertz(v[^1], Terms.Of(v)), [.. Inputs(), tension]);

    // Central differences of fourth order over a ten-thousandth of the input, not over its u: however uncertain a length is, it must not become negative on the way.
    private static Uncertain Propagated(Func<double[], double> f, Uncertain[] inputs)
    {
        double[] values = [.. inputs.Select(i => i.Value)];
        double[] slopes = [.. inputs.Select((input, i) => input.StandardUncertainty == 0 ? 0 : Slope(i))];
        return Uncertain.Of(f(values), inputs, slopes);

        double Slope(int i)
        {
            // Offsets go with the span's length; shares of a hold lie between 0 and 1.
            var size = i == Terms.OffsetsAt ? values[Terms.LengthAt] : i is Terms.TeethAt or Terms.HoldAt ? 1 : Math.Abs(values[i]);
            var step = 1e-4 * size;
            return ((8 * (At(1) - At(-1))) - (At(2) - At(-2))) / (12 * step);

            double At(int steps)
            {
                var moved = (double[])values.Clone();
                moved[i] += steps * step;
                return f(moved);
            }
        }
    }

    /// <summary>The tension of a note with some terms changed: what each of them does.</summary>
    public double TensionN(double hertz, Func<Terms, Terms> change)
    {
        var values = new List<double>();
        foreach (var input in Inputs())
            values.Add(input.Value);
        return TensionN(hertz, change(Terms.Of([.. values, hertz])));
    }

    public int Clamps => _clamps;

    public int Pulleys => _pulleys;

    public int Unknowns => _unknown;

    private double Hertz(double tension, Terms x)
    {
        var length = x.Length + x.Offsets + (x.Give * 2 * tension);
        if (length <= 0)
            throw new InputException(new InputProblem("ends", null, null, $"offsets of {NumberText.Significant(1000 * x.Offsets, 3)} mm in all", $"some of the span's {NumberText.Significant(1000 * x.Length, 4)} mm to be left"));
        var density = x.Density + (x.Air * AirKgPerM3 * Math.PI / 4 * x.Width * x.Width);
        double Note(int clamps) => TensionedBeam.FrequencyHz(_partial, tension, x.Bending, density, length, clamps);

        var clamps = x.IsPinned ? 0 : _clamps;
        var note = Note(clamps);
        // A hold of 0 is pinned, of 1 clamped; between them the note goes straight from one to the other.
        if (x.Bending > 0 && (x.Teeth != 0 || x.Hold != 0))
            note += (x.Teeth * (Note(clamps + _pulleys) - note)) + (x.Hold * (Note(clamps + _unknown) - note));
        return x.Amplitude > 0 ? note * PluckFactor(x.Stretch * Math.Pow(Math.PI * x.Amplitude * _partial, 2) / (4 * tension * length * (x.Loop > 0 ? x.Loop : length))) : note;
    }

    /// <summary>Duffing's oscillator, q'' + q + kappa q3 = 0 from amplitude 1: f / f_0 = agm(sqrt(1 + kappa), sqrt(1 + kappa / 2)), 1 + 3 kappa / 8 to first order.</summary>
    public static double PluckFactor(double kappa)
    {
        var (a, b) = (Math.Sqrt(1 + kappa), Math.Sqrt(1 + (kappa / 2)));
        while (a - b > 1e-15 * a)
            (a, b) = ((a + b) / 2, Math.Sqrt(a * b));
        return (a + b) / 2;
    }

    // Regula falsi with Illinois steps over the logarithm of the tension, where the note is nearly straight.
    private double TensionN(double hertz, Terms x)
    {
        var ideal = Math.Log(4 * x.Density * Math.Pow(x.Length * hertz / _partial, 2));
        var (low, high) = (ideal, ideal);
        var (below, above) = (Error(low), Error(high));
        for (var width = 0.1; below > 0; width *= 2)
        {
            if (ideal - low > Math.Log(Widest * Widest))
                throw TooLow(hertz, x);
            (high, above) = (low, below);
            low = ideal - width;
            below = Error(low);
        }

        for (var width = 0.1; above < 0; width *= 2)
        {
            if (high - ideal > Math.Log(Widest))
                throw TooSoft(hertz);
            (low, below) = (high, above);
            high = ideal + width;
            above = Error(high);
        }

        var side = 0;
        for (var step = 0; step < MostSteps && high - low > 1e-15 * Math.Max(1, Math.Abs(high)); step++)
        {
            if (below == 0 || above == 0)
                return Math.Exp(below == 0 ? low : high);
            var at = (high * below - low * above) / (below - above);
            if (!(at > low && at < high))
                at = (low + high) / 2;
            var error = Error(at);
            if (Math.Abs(error) < 1e-15)
                return Math.Exp(at);
            if (error < 0)
            {
                (low, below) = (at, error);
                above *= side == -1 ? 0.5 : 1;
                side = -1;
            }
            else
            {
                (high, above) = (at, error);
                below *= side == 1 ? 0.5 : 1;
                side = 1;
            }
        }

        return Math.Exp((low + high) / 2);

        double Error(double logTension) => Math.Log(Hertz(Math.Exp(logTension), x) / hertz);
    }

    private InputException TooLow(double hertz, Terms x)
    {
        var alone = x.Bending > 0 ? Hertz(4 * x.Density * Math.Pow(x.Length * hertz / _partial, 2) / (Widest * Widest), x with { Teeth = 0, Hold = 0 }) : 0;
        var why = alone > hertz
            ? $"a note above {(alone < 1e6 ? NumberText.Significant(alone, 3) : NumberText.Plain(alone))} Hz, which the stated bending stiffness{(x.Amplitude > 0 ? " and pluck give" : " gives")} without any tension: check the stiffness, or which partial was heard"
            : "a smaller amplitude: so hard a pluck alone would sound higher";
        return new InputException(new InputProblem("frequency", null, null, $"{NumberText.Significant(hertz, 4)} Hz", why));
    }

    private static InputException TooSoft(double hertz)
        => new(new InputProblem("frequency", null, null, $"{NumberText.Significant(hertz, 4)} Hz", "stiffer ends: what holds this belt gives way faster than tension raises its note"));

    private List<Uncertain> Inputs()
    {
        Uncertain zero = 0;
        var offsets = (_span.First.Offset?.Si ?? zero) + (_span.Second.Offset?.Si ?? zero);
        return
        [
            _span.Length.Si, _span.Density.Si, _span.BendingStiffnessNm2 ?? zero, offsets, _span.SupportStiffnessNPerM is { } k ? 1 / k : zero,
            _span.Width?.Si ?? zero, _span.Width is null ? zero : Uncertain.Input("air moved along", 1, AirShareUncertainty),
            _span.Amplitude?.Si ?? zero, _span.StretchStiffness?.Si ?? zero, _span.Loop?.Si ?? zero,
            // One-sided, 0 to 1, taken at 0: the root mean square about 0 (JCGM 100:2008, F.2.4.5, for a shift that is not corrected).
            _span.BendingStiffnessNm2 is not null && _pulleys > 0 ? Uncertain.Input("hold of the teeth", 0, 1 / Math.Sqrt(3)) : zero,
            _span.BendingStiffnessNm2 is not null && _unknown > 0 ? Uncertain.Input("hold of free-form ends", 0.5, 0.5 / Math.Sqrt(3)) : zero,
        ];
    }

    /// <summary>The numbers of a span, in the order of <see cref="Inputs"/>; nothing stated is 0.</summary>
    internal readonly record struct Terms(double Length, double Density, double Bending, double Offsets, double Give, double Width, double Air, double Amplitude, double Stretch, double Loop, double Teeth, double Hold, bool IsPinned)
    {
        public const int LengthAt = 0;
        public const int OffsetsAt = 3;
        public const int TeethAt = 10;
        public const int HoldAt = 11;

        public static Terms Of(IReadOnlyList<double> v) => new(v[0], v[1], Math.Max(0, v[2]), v[3], v[4], v[5], v[6], v[7], v[8], v[9], v[10], v[11], false);
    }
}
