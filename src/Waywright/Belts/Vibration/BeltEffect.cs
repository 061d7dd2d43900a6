using System;
using System.Collections.Generic;
using UnitsNet;

namespace Waywright;

/// <summary>One thing that an ideal string leaves out, with its sign and size.</summary>
/// <param name="Name">What it is.</param>
/// <param name="OnTension">By how much the ideal formula over-reads the tension for it: 0.02 reads 2 % high, -0.004 reads 0.4 % low; null where what it takes was not stated.</param>
/// <param name="IsCorrected">Whether the tension shown is free of it; a hold that is only possible is not corrected but in the uncertainty.</param>
/// <param name="Why">What it depends on, and what to state or do where it is not known.</param>
public sealed record BeltEffect(string Name, double? OnTension, bool IsCorrected, string Why);

/// <summary>The effects of a span at its note.</summary>
internal static class BeltEffects
{
    public static FixedList<BeltEffect> Of(BeltSpan span, Measured<Frequency> frequency, int partial)
    {
        var model = new BeltModel(span, partial);
        var hertz = frequency.Si.Value;
        var now = model.TensionN(hertz, x => x);

        // By how much the tension would be read higher if this one thing were left out.
        double Without(Func<BeltModel.Terms, BeltModel.Terms> change) => (model.TensionN(hertz, change) / now) - 1;

        // So stiff a belt may sound its note without any tension if teeth hold it: then there is no size to name.
        double? Held()
        {
            try
            {
                return (now / model.TensionN(hertz, x => x with { Teeth = 1 })) - 1;
            }
            catch (InputException)
            {
                return null;
            }
        }

        var list = new List<BeltEffect>();
        if (span.BendingStiffnessNm2 is null)
        {
            list.Add(new("bending stiffness", null, false, "reads high by pi2 EI / (T L2); not stated: hang two masses on a piece of the belt, or fit its partials"));
            list.Add(new("held ends", null, false, "a clamp reads high by 2 sqrt(EI / T) / L, teeth on a pulley by up to as much; needs the bending stiffness"));
        }
        else
        {
            var pinned = model.TensionN(hertz, x => x with { IsPinned = true, Hold = 0 });
            list.Add(new("bending stiffness", (model.TensionN(hertz, x => x with { Bending = 0 }) / pinned) - 1, true, "the belt as a beam between pinned ends: reads high, less the longer and tighter the span"));
            if (model.Clamps > 0)
                list.Add(new(model.Clamps == 2 ? "two clamped ends" : "a clamped end", Without(x => x with { IsPinned = true }), true, "held at its edge, the belt swings as a shorter one: reads high"));
            if (model.Unknowns > 0)
                list.Add(new("free-form ends", Without(x => x with { Hold = 0 }), true, "between pinned and clamped: half of it taken, the rest in the uncertainty; reads high"));
            if (model.Pulleys > 0)
                list.Add(new(model.Pulleys == 2 ? "teeth on two pulleys" : "teeth on a pulley", Held(), false, "from 0 up to this: not corrected, but in the uncertainty; it cancels between two belts on equal pulleys"));
        }

        if (span.First.Offset is not null || span.Second.Offset is not null)
            list.Add(new("stated end offsets", Without(x => x with { Offsets = 0 }), true, "a longer span than measured reads low, a shorter one high"));
        list.Add(span.Amplitude is null
            ? new("hard pluck", null, false, "reads high with the square of the amplitude; not stated: pluck gently, or follow the note down as it dies")
            : new("hard pluck", Without(x => x with { Amplitude = 0 }), true, span.Loop is null ? "the swing stretches the span, held at both ends: reads high" : "the swing stretches the whole loop, whose pulleys turn: reads high"));
        list.Add(span.Width is null
            ? new("air", null, false, "reads low by the air that moves along, about 0.4 % on a 6 mm belt; state the width")
            : new("air", Without(x => x with { Air = 0 }), true, "the air that moves along adds rho pi w2 / 4 to the mass: reads low"));
        list.Add(span.SupportStiffnessNPerM is null
            ? new("soft ends", null, false, "reads low by 4 T / (k L) for two ends of stiffness k; not stated: notes at several places of the carriage show it")
            : new("soft ends", Without(x => x with { Give = 0 }), true, "what holds the ends swings along: reads low"));
        return FixedList<BeltEffect>.Copy(list);
    }
}
