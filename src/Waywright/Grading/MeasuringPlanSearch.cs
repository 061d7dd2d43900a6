using System;
using System.Linq;

namespace Waywright;

/// <summary>Looks for the smallest limit, the fewest passes or lays, and the largest guide error with which a plan still decides.</summary>
internal sealed class MeasuringPlanSearch(MeasuringPlanTrials trials)
{
    private const double Close = 0.005;
    private const double CloseGuide = 0.05;

    private static readonly string[] Readings = ["whole", "half", "tenth"];

    // Divisions that indicators are made with: JIS B 7503:2011, table of dials.
    private static readonly double[] FinerDivisionsUm = [5, 2, 1];

    /// <summary>The smallest limit that is decided, from what is known of one.</summary>
    public double SmallestLimit(MeasuringPlanSweep plan, double limitUm, bool isDecided)
    {
        var (low, high) = (limitUm, limitUm);
        if (isDecided)
        {
            for (low = high / 2; trials.Decides(plan, low); low /= 2)
                high = low;
        }
        else
        {
            for (high = 2 * low; !trials.Decides(plan, high); high *= 2)
                low = high;
        }

        while (high - low > Close * high)
        {
            var middle = (low + high) / 2;
            if (trials.Decides(plan, middle))
                high = middle;
            else
                low = middle;
        }

        return high;
    }

    /// <summary>Fewest passes in the plan's lays, more than planned where these don't decide; null where the most that may be asked for are not enough.</summary>
    public int? Passes(MeasuringPlanSweep plan, double limitUm, bool isDecided) => Fewest(isDecided ? plan.Lays : plan.Passes, k => plan with { Passes = k }, limitUm);

    /// <summary>Fewest passes, each in a lay of its own.</summary>
    public int? Lays(MeasuringPlanSweep plan, double limitUm) => Fewest(1, k => plan with { Passes = k, Lays = k }, limitUm);

    /// <summary>The most that the guide may be out of straight, um; null where not even a perfect one will do.</summary>
    public double? Guide(MeasuringPlanSweep plan, double limitUm)
    {
        if (!trials.Decides(plan with { GuideUm = null }, limitUm))
            return null;
        var (low, high) = (0.0, 2 * limitUm);
        while (high - low > CloseGuide * high && high > limitUm / 1000)
        {
            var middle = (low + high) / 2;
            if (trials.Decides(plan with { GuideUm = middle }, limitUm))
                low = middle;
            else
                high = middle;
        }

        return low;
    }

    /// <summary>The same dial read between its marks, or else one with finer divisions read as this one; null where not even 0.001 mm will do.</summary>
    public Instrument? FinerDial(MeasuringPlanSweep plan, double limitUm)
    {
        var dial = plan.Dial;
        var read = ReadingOf(dial.ReadTo);
        (double DivisionUm, string ReadTo)[] finer =
        [
            .. Readings.SkipWhile(r => r != read).Skip(1).Select(r => (dial.Division, r)),
            .. FinerDivisionsUm.Where(d => d < dial.Division).Select(d => (d, read)),
        ];
        return finer
            .Select(f => Instrument.Create(f.DivisionUm == dial.Division ? dial.Name : $"{NumberText.Plain(f.DivisionUm / 1000)} mm dial", dial.Unit, f.DivisionUm, f.ReadTo, dial.PermissibleError, dial.Dial, dial.Repeatability, dial.RepeatabilityDegreesOfFreedom, dial.Retrace, dial.Check))
            .FirstOrDefault(d => trials.Decides(plan with { Dial = d }, limitUm));
    }

    private static string ReadingOf(ReadTo readTo) => Readings[(int)readTo];

    private int? Fewest(int least, Func<int, MeasuringPlanSweep> of, double limitUm)
    {
        if (trials.Decides(of(least), limitUm))
            return least;
        var (low, high) = (least, least);
        do
        {
            if (high == MeasuringPlan.MostPasses)
                return null;
            (low, high) = (high, Math.Min(MeasuringPlan.MostPasses, 2 * high));
        }
        while (!trials.Decides(of(high), limitUm));
        while (high - low > 1)
        {
            var middle = (low + high) / 2;
            if (trials.Decides(of(middle), limitUm))
                high = middle;
            else
                low = middle;
        }

        return high;
    }
}
