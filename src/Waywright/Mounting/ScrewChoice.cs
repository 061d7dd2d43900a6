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

    private ScrewChoice(double limitUm, FixedList<MountedShape> best, Func<MountedShape, MountedShape> withErrors)
    {
        (LimitUm, _best) = (limitUm, best);
        Chosen = best.FirstOrDefault(Meets) is { } chosen ? withErrors(chosen) : null;
    }

    /// <summary>The limit on the predicted mounted residual, um.</summary>
    public double LimitUm { get; }

    /// <summary>The first of <see cref="BestOfEachCount"/> that meets the limit with no screw overloaded, with its interval where errors were given; null when none does.</summary>
    public MountedShape? Chosen { get; }

    /// <summary>The best found with 2, 3, ... screws: a regular pattern where one meets the limit, else the least residual.</summary>
    public IReadOnlyList<MountedShape> BestOfEachCount => _best;

    /// <summary>Searches.</summary>
    /// <param name="free">As for <see cref="MountedShape"/>.</param>
    /// <param name="holes">A pattern of the rail; all its holes may be used, whichever it names.</param>
    /// <param name="limitUm">Limit on the predicted mounted residual, um, above 0.</param>
    /// <param name="bendingStiffnessNm2">EI of the rail, N m2.</param>
    /// <param name="baseShape">The base, if swept.</param>
    /// <param name="baseStiffnessNm2">EI of the base, N m2; none takes it as rigid.</param>
    /// <param name="clampLimitN">What a screw can pull, N.</param>
    /// <param name="errors">What the free top's heights are uncertain by; the choice is by figures as read.</param>
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
        return new ScrewChoice(limitUm, FixedList<MountedShape>.Copy(search.BestOfEachCount().Select(p => MountedShape.Of(given with { Screws = p }))),
            chosen => errors is null ? chosen : MountedShape.Of(given with { Screws = chosen.Screws }, errors: errors));
    }

    private bool Meets(MountedShape shape) => shape.ResidualUm <= LimitUm && shape.OverloadedHoles.Count == 0;
}
