using System;

namespace Waywright;

/// <summary>What the partials leave of a pluck's sound, dB below its strongest partial: off the ladder (another span, or a ladder that is a wrong partial's) and close to the ladder's own partials (two notes that beat).</summary>
internal readonly record struct PluckRemains(double OffLadderDb, double OffLadderHz, double NearLadderDb)
{
    private const double HighestHz = 3500;
    private const double MainLobe = 4;
    private const int NearPartials = 3;

    public static PluckRemains Of(double[] sound, double[] rest, double rate, double firstHz, double inharmonicity)
    {
        var (all, left) = (PluckSpectrum.BlackmanHarris(sound, rate), PluckSpectrum.BlackmanHarris(rest, rate));
        var half = Math.Min(MainLobe * rate / sound.Length, 0.25 * firstHz);
        var (strongest, off, offHz, near) = (0.0, 0.0, 0.0, 0.0);
        for (var i = (int)(15 / all.StepHz); i < Math.Min(all.Magnitudes.Length, HighestHz / all.StepHz); i++)
        {
            var hertz = i * all.StepHz;
            strongest = Math.Max(strongest, all.Magnitudes[i]);
            var k = Math.Max(1, (int)Math.Round(hertz / firstHz / Math.Sqrt(1 + (inharmonicity * Math.Pow(hertz / firstHz, 2)))));
            if (Math.Abs(hertz - PartialLadder.Partial(k, firstHz, inharmonicity)) < half && k > NearPartials)
                continue;
            if (Math.Abs(hertz - PartialLadder.Partial(k, firstHz, inharmonicity)) < half)
                near = Math.Max(near, left.Magnitudes[i]);
            else if (left.Magnitudes[i] > off)
                (off, offHz) = (left.Magnitudes[i], hertz);
        }

        return new(Db(off), offHz, Db(near));

        double Db(double magnitude) => 20 * Math.Log10(Math.Max(magnitude, 1e-12 * strongest) / strongest);
    }
}
