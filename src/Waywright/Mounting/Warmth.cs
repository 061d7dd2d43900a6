using System;
using System.Collections.Generic;
using System.Linq;

namespace Waywright;

/// <summary>
/// What a change of temperature does to a rail that is screwed to a base of another metal: two bars that would grow by different lengths bend each other,
/// in the plane through both. Full bond: <c>kappa = dAlpha dT d / (d² + (E1 I1 + E2 I2) (1/E1A1 + 1/E2A2))</c>, d the distance of the centroids
/// (Timoshenko, J. Opt. Soc. Am. 11 (1925) 233-255, from memory). Held by friction, the main figure: the joint carries no more than friction under the screws from the
/// end that holds less, <c>N(x) = min(kappa sum EI / d, mu x sum of clamp forces)</c>, and bends by <c>N(x) d / sum EI</c>.
/// </summary>
/// <remarks>For ends that are free to turn. Checked by closed forms for two equal layers that verification manuals of finite-element codes print.</remarks>
public sealed record Warmth
{
    /// <summary>Friction of steel on aluminium, dry: common practice, no source.</summary>
    public const double UsualFriction = 0.15;

    private const int Steps = 700;

    private Warmth(BarSection rail, BarSection under, double fromC, double toC, double lengthMm, IReadOnlyList<double> screwsMm, double clampForceN, double friction)
    {
        (Rail, Base, FromC, ToC, LengthMm, ScrewsMm, ClampForceN, Friction) = (rail, under, fromC, toC, lengthMm, FixedList<double>.Copy(screwsMm.Order()), clampForceN, friction);
        var d = (rail.ToJointMm + under.ToJointMm) / 1000;
        var stiffness = rail.BendingStiffnessNm2 + under.BendingStiffnessNm2;
        // The longer bar lies on the outside of the bend: a base that grows more makes the rail's top hollow.
        var strain = (rail.ExpansionPerMK - under.ExpansionPerMK) * 1e-6 * (toC - fromC);
        var curvature = strain * d / ((d * d) + (stiffness * ((1 / rail.AxialStiffnessN) + (1 / under.AxialStiffnessN))));
        BondForceN = Math.Abs(curvature) * stiffness / d;
        var x = Enumerable.Range(0, Steps + 1).Select(i => lengthMm * i / Steps).ToArray();
        Bonded = Bent(x, Array.ConvertAll(x, _ => curvature), "full bond");
        Held = Bent(x, Array.ConvertAll(x, at => Math.Sign(curvature) * Math.Min(BondForceN, Grip(at)) * d / stiffness), "held by friction");
    }

    /// <summary>The rail.</summary>
    public BarSection Rail { get; }

    /// <summary>What it is screwed to.</summary>
    public BarSection Base { get; }

    /// <summary>Temperature at which it was screwed down, degrees Celsius.</summary>
    public double FromC { get; }

    /// <summary>Temperature that is asked about, degrees Celsius.</summary>
    public double ToC { get; }

    /// <summary>Length of the rail, mm.</summary>
    public double LengthMm { get; }

    /// <summary>Screws, mm from the dot.</summary>
    public IReadOnlyList<double> ScrewsMm { get; }

    /// <summary>Clamp force of each screw, N.</summary>
    public double ClampForceN { get; }

    /// <summary>Friction of the joint.</summary>
    public double Friction { get; }

    /// <summary>The bow with friction under the screws, from its chord, um at positions in mm; crowned positive.</summary>
    public Profile Held { get; }

    /// <summary>The bow if nothing slipped.</summary>
    public Profile Bonded { get; }

    /// <summary>Force along the joint that a full bond needs, N.</summary>
    public double BondForceN { get; }

    /// <summary>Largest bow held by friction, um, crowned positive.</summary>
    public double HeldUm => Largest(Held);

    /// <summary>Largest bow of a full bond, um, crowned positive.</summary>
    public double BondedUm => Largest(Bonded);

    /// <summary>How much longer the base would be than the rail, were they apart, um.</summary>
    public double ApartUm => (Base.ExpansionPerMK - Rail.ExpansionPerMK) * (ToC - FromC) * LengthMm / 1000;

    /// <summary>How much the base alone grows over the rail's length, um: as much does a span that it carries.</summary>
    public double BaseGrowthUm => Base.ExpansionPerMK * (ToC - FromC) * LengthMm / 1000;

    /// <summary>Works it out.</summary>
    /// <param name="rail">The rail.</param>
    /// <param name="under">The base.</param>
    /// <param name="fromC">Temperature at which it was screwed down, degrees Celsius, -50 to 150.</param>
    /// <param name="toC">Temperature asked about, degrees Celsius, -50 to 150.</param>
    /// <param name="screws">Length of the rail and its screws.</param>
    /// <param name="clampForceN">Clamp force of each screw, N, 0 or more.</param>
    /// <param name="friction">0 to 2.</param>
    /// <exception cref="ArgumentOutOfRangeException">A value is outside its range.</exception>
    public static Warmth Of(BarSection rail, BarSection under, double fromC, double toC, ScrewPattern screws, double clampForceN, double friction = UsualFriction)
    {
        ArgumentNullException.ThrowIfNull(rail);
        ArgumentNullException.ThrowIfNull(under);
        ArgumentNullException.ThrowIfNull(screws);
        Check(fromC, -50, 150, nameof(fromC));
        Check(toC, -50, 150, nameof(toC));
        Check(clampForceN, 0, 1e6, nameof(clampForceN));
        Check(friction, 0, 2, nameof(friction));
        return new Warmth(rail, under, fromC, toC, screws.LengthMm, screws.ScrewsMm, clampForceN, friction);
    }

    // From either end to x, whichever holds less: what lies outside can slip, so it holds with all its friction.
    private double Grip(double x) => Friction * ClampForceN * Math.Min(ScrewsMm.Count(s => s <= x), ScrewsMm.Count(s => s >= x));

    // z'' = -curvature, twice by trapezes, less the chord.
    private static Profile Bent(double[] x, double[] curvature, string name)
    {
        var (slope, height) = (new double[x.Length], new double[x.Length]);
        for (var i = 1; i < x.Length; i++)
        {
            var step = (x[i] - x[i - 1]) / 1000;
            slope[i] = slope[i - 1] - (step * (curvature[i] + curvature[i - 1]) / 2);
            height[i] = height[i - 1] + (step * (slope[i] + slope[i - 1]) / 2);
        }

        var last = height[^1];
        return new Profile(x, [.. height.Select((h, i) => 1e6 * (h - (last * i / (x.Length - 1))))], name);
    }

    private static double Largest(Profile bent) => bent.HeightsUm.MaxBy(Math.Abs) + 0.0;

    private static void Check(double value, double low, double high, string name)
    {
        if (!(value >= low && value <= high))
            throw new ArgumentOutOfRangeException(name, value, FormattableString.Invariant($"{low} to {high} is possible."));
    }
}
