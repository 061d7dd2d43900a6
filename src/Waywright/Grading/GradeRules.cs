using System;
using System.Collections.Generic;
using System.Linq;

namespace Waywright;

/// <summary>What is compared with a limit.</summary>
public static class RailFeature
{
    /// <summary>STRt of the side face about the minimum zone, um.</summary>
    public const string Side = "side";

    /// <summary>The largest STRt of the side face within 100 mm, about the minimum zone of that stretch, um.</summary>
    public const string SideLocal = "side local";

    /// <summary>
    /// Predicted mounted residual: STRt about the minimum zone of the top as its screws will hold it on a flat base, end to end, um. A long bow goes when the rail is screwed
    /// down, a short wave and what stands beyond the last screw don't.
    /// </summary>
    public const string TopMounted = "top mounted";

    /// <summary>The largest STRt of the same within two pitches of the holes, um.</summary>
    public const string TopLocal = "top local";

    /// <summary>STRt of the top as it was swept free, about the minimum zone, um; the starting rules don't limit it.</summary>
    public const string TopFree = "top free";

    /// <summary>How unevenly a carriage runs along the rail: P95 - P5 of its drag, % of the mean, of the carriage that runs worst; judged only where a drag log has the rail.</summary>
    public const string Drag = "drag";

    internal static string FaceOf(string feature) => feature.Split(' ')[0];

    /// <summary>What its values and limits are in.</summary>
    internal static string UnitOf(string feature) => feature == Drag ? "%" : "um";
}

/// <summary>A limit on one feature.</summary>
/// <param name="Feature">One of <see cref="RailFeature"/>.</param>
/// <param name="Limit">Largest value that still meets it: um, or % of the mean for the drag.</param>
public sealed record FeatureLimit(string Feature, double Limit);

/// <summary>A grade and what a rail has to meet for it.</summary>
/// <param name="Grade">Its name, such as <c>gantry</c>.</param>
/// <param name="Limits">All of them have to be met.</param>
public sealed record GradeRule(string Grade, IReadOnlyList<FeatureLimit> Limits)
{
    /// <summary>The limit on a feature, in its unit; null when the grade has none.</summary>
    public double? LimitOf(string feature) => Limits.FirstOrDefault(l => l.Feature == feature)?.Limit;
}

/// <summary>Grades, best first, and when a rail may be sent back.</summary>
/// <param name="Grades">Best first.</param>
/// <param name="ReturnSideUm">Only a rail whose side STRt is above this is returned, um.</param>
/// <param name="AcceptLevel">Confidence at which every feature has to be within its limit for a grade; 0.5 to below 1. 0.95: common practice, no source.</param>
/// <param name="ClaimLevel">Confidence at which a rail has to be beyond a limit before that is claimed: the uncertainty is on whoever claims (ISO 14253-1, from memory).</param>
/// <exception cref="ArgumentException">
/// No grade, a name twice, a limit that is not above 0, a feature limited twice, or limits that contradict each other: a lower grade's is tighter than a better one's or limits what
/// that one does not, or the limit for a return is below the lowest grade's. All of it is listed.
/// </exception>
/// <exception cref="ArgumentOutOfRangeException">A level is outside its range.</exception>
public sealed record GradeRules(IReadOnlyList<GradeRule> Grades, double ReturnSideUm, double AcceptLevel = 0.95, double ClaimLevel = 0.95)
{
    internal const double UsualLevel = 0.95;

    /// <summary>Best first.</summary>
    public IReadOnlyList<GradeRule> Grades { get; } = GradeContradictions.Checked(Grades, ReturnSideUm);

    /// <summary>Only a rail whose side STRt is above this is returned, um.</summary>
    public double ReturnSideUm { get; } = ReturnSideUm;

    /// <summary>Confidence at which every feature has to be within its limit for a grade.</summary>
    public double AcceptLevel { get; } = Level(AcceptLevel, nameof(AcceptLevel));

    /// <summary>Confidence at which a rail has to be beyond a limit before that is claimed.</summary>
    public double ClaimLevel { get; } = Level(ClaimLevel, nameof(ClaimLevel));

    /// <summary>Length over which local straightness of the side is taken, mm.</summary>
    public const double LocalWindowMm = 100;

    /// <summary>
    /// Starting limits, common practice, no source: no published limit for an unmounted miniature rail was found.
    /// <c>gantry</c>: side 30, side local 15, top mounted 10 um, drag 50 %; <c>z</c>: 60, 30, 20 um, 100 %; return above 100 um at the side.
    /// </summary>
    public static GradeRules Starting { get; } = new(
        FixedList<GradeRule>.Own(
        [
            new("gantry", FixedList<FeatureLimit>.Own([new(RailFeature.Side, 30), new(RailFeature.SideLocal, 15), new(RailFeature.TopMounted, 10), new(RailFeature.Drag, CarriageDrag.GantrySpreadPercent)])),
            new("z", FixedList<FeatureLimit>.Own([new(RailFeature.Side, 60), new(RailFeature.SideLocal, 30), new(RailFeature.TopMounted, 20), new(RailFeature.Drag, CarriageDrag.ZSpreadPercent)])),
        ]),
        100);

    /// <summary>
    /// Reads <c>{"return_above_side_um":100,"grades":[{"grade":"gantry","limits":[{"feature":"side","limit_um":30}]}]}</c>, best grade first, with optional
    /// <c>accept_level</c> and <c>claim_level</c> (0.95).
    /// </summary>
    /// <param name="path">The file; docs/rules.schema.json is its JSON Schema.</param>
    /// <exception cref="InputException">
    /// The file can't be read, isn't JSON, misses a value, has one too many or out of range, names a grade or a feature twice, an unknown feature, or a lower grade has a
    /// tighter limit than a better one, or the limit for a return is below the lowest grade's.
    /// </exception>
    public static GradeRules Read(string path) => GradeRulesReader.Read(TextSource.ReadAll(path), path);

    /// <summary>Reads the same from a text.</summary>
    /// <param name="json">The document.</param>
    /// <param name="source">What messages call it.</param>
    /// <exception cref="InputException">As <see cref="Read"/>.</exception>
    public static GradeRules Parse(string json, string source)
    {
        ArgumentNullException.ThrowIfNull(json);
        return GradeRulesReader.Read(json, source);
    }

    private static double Level(double level, string name)
        => level is >= 0.5 and < 1 ? level : throw new ArgumentOutOfRangeException(name, level, "A confidence from 0.5 up to, not including, 1 is needed.");
}
