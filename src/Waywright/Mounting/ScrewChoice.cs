using System;
using System.Collections.Generic;
using System.Globalization;
using System.Linq;
using System.Threading;

namespace Waywright;

/// <summary>The fewest screws found that keep the predicted mounted residual of a top within a limit, and what more or fewer would leave.</summary>
/// <remarks>
/// Tried for each count: the regular patterns, and the best of dropping one screw after another from all holes; with one screw fewer than will do, screws
/// are moved as well. Not every choice of holes is tried, so fewer may exist; fewer than the makers of rail and frame ask for carry less load, which isn't looked at here.
/// </remarks>
public sealed record ScrewChoice
{
    private readonly FixedList<MountedShape> _best;

    private ScrewChoice(double limitUm, FixedList<MountedShape> best, MountedShape? chosen) => (LimitUm, _best, Chosen) = (limitUm, best, chosen);

    /// <summary>The limit on the predicted mounted residual, um.</summary>
    public double LimitUm { get; }

    /// <summary>
    /// The first of <see cref="BestOfEachCount"/> that meets the limit with no screw overloaded: by the upper end of its 95 % interval where errors were given, or, where none
    /// does, as read; null when none does that either.
    /// </summary>
    public MountedShape? Chosen { get; }

    /// <summary>Whether <see cref="Chosen"/> meets the limit by the upper end of its interval; false without errors.</summary>
    public bool IsProven => Chosen?.Figure?.HighUm <= LimitUm;

    /// <summary>
    /// The best found with 2, 3, ... screws: a regular pattern where one meets the limit, else the least residual. With errors, those that had to be looked at for the choice have
    /// their interval.
    /// </summary>
    public IReadOnlyList<MountedShape> BestOfEachCount => _best;

    /// <summary>Searches.</summary>
    /// <param name="free">As for <see cref="MountedShape"/>.</param>
    /// <param name="holes">A pattern of the rail; all its holes may be used, whichever it names.</param>
    /// <param name="limitUm">Limit on the predicted mounted residual, um, above 0.</param>
    /// <param name="bendingStiffnessNm2">EI of the rail, N m2.</param>
    /// <param name="baseShape">The base, if swept.</param>
    /// <param name="baseStiffnessNm2">EI of the base, N m2; none takes it as rigid.</param>
    /// <param name="clampLimitN">What a screw can pull, N.</param>
    /// <param name="errors">What the free top's heights are uncertain by; the best of each count is by figures as read, the choice among them by their intervals.</param>
    /// <param name="cancel">Ends the search early.</param>
    /// <exception cref="ArgumentException">As for <see cref="MountedShape"/>, or the limit isn't above 0.</exception>
    /// <exception cref="OperationCanceledException">It was cancelled.</exception>
    public static ScrewChoice Fewest(Profile free, ScrewPattern holes, double limitUm, double bendingStiffnessNm2, Profile? baseShape = null, double? baseStiffnessNm2 = null, double? clampLimitN = null, ProfileErrors? errors = null, CancellationToken cancel = default)
    {
        ArgumentNullException.ThrowIfNull(holes);
        if (!(limitUm > 0 && double.IsFinite(limitUm)))
            throw new ArgumentException(string.Create(CultureInfo.InvariantCulture, $"The limit is {limitUm} um: it must be above 0."), nameof(limitUm));
        var given = new MountingCase(free, holes.OfCount(holes.HolesMm.Count), bendingStiffnessNm2, baseShape, baseStiffnessNm2, clampLimitN);
        ErrorInputs.CheckFit(free, errors);
        var search = new ScrewSearch(given, limitUm, cancel);
        var best = search.BestOfEachCount().Select(p => MountedShape.Of(given with { Screws = p })).ToArray();
        bool Meets(MountedShape shape) => shape.ResidualUm <= limitUm && shape.OverloadedHoles.Count == 0;
        var chosen = Array.FindIndex(best, Meets);
        for (var i = chosen; errors is not null && i >= 0 && i < best.Length; i++)
        {
            cancel.ThrowIfCancellationRequested();
            if (!Meets(best[i]))
                continue;
            best[i] = MountedShape.Of(given with { Screws = best[i].Screws }, errors: errors);
            if (best[i].Figure!.HighUm <= limitUm)
            {
                chosen = i;
                break;
            }
        }

        return new ScrewChoice(limitUm, FixedList<MountedShape>.Copy(best), chosen < 0 ? null : best[chosen]);
    }
}
