using System;
using System.Collections.Generic;
using System.Linq;

namespace Waywright;

/// <summary>
/// What a change of temperature does to a rail that is screwed to a base of another metal: two bars that would grow by different lengths bend each other, in the plane at right angles
/// to the joint along the rail: the top shows it. Full bond: <c>kappa = dAlpha dT d / (d² + (E1 I1 + E2 I2) (1/E1A1 + 1/E2A2))</c>, d from centroid to centroid. Held by friction, the
/// main figure: at each screw the joint takes up no more than mu F, so <c>N(x) = min(kappa sum EI / d, mu F x screws towards the end that has fewer)</c>, and bends by <c>N(x) d / sum EI</c>.
/// </summary>
/// <remarks>
/// Ends kept from turning: end moments M(x), a straight line, such that heights and slopes of both ends are 0, and N wants to be (dAlpha dT + d M / sum EI) / (C + d² / sum EI). A full
/// bond then stays straight and bears kappa times its own bending stiffness at its ends; where friction gives way a bow stays. Friction also keeps some of it once it has cooled again.
/// An equal second rail on the opposite face, as firmly screwed, bends it back: no bow; not opposite but diagonally placed, the two twist the base, which isn't worked out here.
/// One temperature for both bars each time; base as long as the rail; weight and what else holds the base left out.
/// Timoshenko, J. Opt. Soc. Am. 11 (1925) 233-255, from memory. Checked by printed bimetal strips, composite sections and temperature gradients, and by a finite-element model of both
/// bars with sliding screws (docs/methods.md).
/// </remarks>
public sealed record Warmth
{
    /// <summary>Friction of steel on aluminium, dry: common practice, no source.</summary>
    public const double UsualFriction = 0.15;

    private const double LowestC = -50;
    private const double HighestC = 150;
    private const double UmPerMm = 1000;
    private const int Steps = 700;

    private Warmth(BarSection rail, BarSection under, double fromC, double toC, double lengthMm, IReadOnlyList<double> screwsMm, double clampForceN, double friction, bool endsHeld, bool hasOppositeRail)
    {
        (Rail, Base, FromC, ToC, LengthMm, ClampForceN, Friction, EndsHeld, HasOppositeRail) = (rail, under, fromC, toC, lengthMm, clampForceN, friction, endsHeld, hasOppositeRail);
        ScrewsMm = FixedList<double>.Copy(screwsMm.Order());
        var joint = Joint;
        var (bond, held) = (joint.Bond(), joint.Warm(friction * clampForceN));
        (Bonded, Held) = (Shape(joint.Bent(bond), "full bond"), Shape(joint.Bent(held), "held by friction"));
        (BondedUm, HeldUm) = (Bow(joint.Bent(bond)), Bow(joint.Bent(held)));
        BondForceN = Math.Abs(bond.Forces[0]);
        StaysUm = Bow(joint.Bent(joint.Return(held, friction * clampForceN)));
        EndMomentsNm = endsHeld ? FixedList<double>.Copy([held.First / UmPerMm, held.Last / UmPerMm]) : FixedList<double>.Empty;
        BondedEndMomentNm = bond.First / UmPerMm;
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
    public double HeldUm { get; }

    /// <summary>Largest bow of a full bond, um, crowned positive.</summary>
    public double BondedUm { get; }

    /// <summary>The bow that friction leaves once it is back at <see cref="FromC"/>, um, crowned positive.</summary>
    public double StaysUm { get; }

    /// <summary>Whether both ends are kept from turning, as by a stiff frame.</summary>
    public bool EndsHeld { get; }

    /// <summary>Whether an equal rail is screwed to the opposite face, as firmly.</summary>
    public bool HasOppositeRail { get; }

    /// <summary>What the frame bears at the end with the dot and at the far end, N m, held by friction; empty where the ends may turn.</summary>
    public IReadOnlyList<double> EndMomentsNm { get; }

    /// <summary>The same of a full bond: dAlpha dT d / (1/E1A1 + 1/E2A2); 0 where the ends may turn.</summary>
    public double BondedEndMomentNm { get; }

    /// <summary>How much longer the base would be than the rail, were they apart, um.</summary>
    public double ApartUm => (Base.ExpansionPerMK - Rail.ExpansionPerMK) * (ToC - FromC) * LengthMm / 1000;

    /// <summary>How much the base alone grows over the rail's length, um: as much does a span that it carries.</summary>
    public double BaseGrowthUm => Base.ExpansionPerMK * (ToC - FromC) * LengthMm / 1000;

    private WarmthJoint Joint => new(Rail, Base, LengthMm, [.. ScrewsMm], (Base.ExpansionPerMK - Rail.ExpansionPerMK) * 1e-6 * (ToC - FromC), EndsHeld, HasOppositeRail);

    /// <summary>Works it out.</summary>
    /// <param name="rail">The rail.</param>
    /// <param name="under">The base.</param>
    /// <param name="fromC">Temperature at which it was screwed down, degrees Celsius, -50 to 150.</param>
    /// <param name="toC">Temperature asked about, degrees Celsius, -50 to 150.</param>
    /// <param name="screws">Length of the rail and its screws.</param>
    /// <param name="clampForceN">Clamp force of each screw, N, 0 to 1e6.</param>
    /// <param name="friction">0 to 2.</param>
    /// <param name="endsHeld">Whether both ends are kept from turning.</param>
    /// <param name="hasOppositeRail">Whether an equal rail is screwed to the opposite face of the base, as firmly.</param>
    /// <exception cref="ArgumentOutOfRangeException">A value is outside its range.</exception>
    public static Warmth Of(BarSection rail, BarSection under, double fromC, double toC, ScrewPattern screws, double clampForceN, double friction = UsualFriction, bool endsHeld = false, bool hasOppositeRail = false)
    {
        ArgumentNullException.ThrowIfNull(rail);
        ArgumentNullException.ThrowIfNull(under);
        ArgumentNullException.ThrowIfNull(screws);
        Check(fromC, LowestC, HighestC, nameof(fromC));
        Check(toC, LowestC, HighestC, nameof(toC));
        Check(clampForceN, 0, 1e6, nameof(clampForceN));
        Check(friction, 0, 2, nameof(friction));
        return new Warmth(rail, under, fromC, toC, screws.LengthMm, screws.ScrewsMm, clampForceN, friction, endsHeld, hasOppositeRail);
    }

    /// <summary>The same with temperatures as text, each with its unit: <c>20 °C</c>, <c>degC</c>, <c>°F</c>, <c>degF</c>, <c>K</c>.</summary>
    /// <param name="rail">The rail.</param>
    /// <param name="under">The base.</param>
    /// <param name="from">Temperature at which it was screwed down, -50 to 150 °C.</param>
    /// <param name="to">Temperature asked about, -50 to 150 °C.</param>
    /// <param name="screws">Length of the rail and its screws.</param>
    /// <param name="clampForceN">Clamp force of each screw, N, 0 to 1e6.</param>
    /// <param name="friction">0 to 2.</param>
    /// <param name="endsHeld">Whether both ends are kept from turning.</param>
    /// <param name="hasOppositeRail">Whether an equal rail is screwed to the opposite face of the base, as firmly.</param>
    /// <exception cref="InputException">A temperature has no unit or another one, is no number, or is out of its range; both are looked at.</exception>
    /// <exception cref="ArgumentOutOfRangeException">Another value is outside its range.</exception>
    public static Warmth Of(BarSection rail, BarSection under, string from, string to, ScrewPattern screws, double clampForceN, double friction = UsualFriction, bool endsHeld = false, bool hasOppositeRail = false)
    {
        var (fromC, first) = TemperatureText.Read(from, "temperature when screwed down", LowestC, HighestC);
        var (toC, second) = TemperatureText.Read(to, "temperature asked about", LowestC, HighestC);
        InputProblem[] problems = [.. new[] { first, second }.OfType<InputProblem>()];
        return problems.Length == 0 ? Of(rail, under, fromC, toC, screws, clampForceN, friction, endsHeld, hasOppositeRail) : throw new InputException(problems);
    }

    /// <summary>The bow held by friction if each screw clamped with another force, um, crowned positive.</summary>
    /// <param name="clampForceN">N, 0 to 1e6.</param>
    /// <exception cref="ArgumentOutOfRangeException">It is outside this range.</exception>
    public double BowUm(double clampForceN)
    {
        Check(clampForceN, 0, 1e6, nameof(clampForceN));
        var joint = Joint;
        return Bow(joint.Bent(joint.Warm(Friction * clampForceN)));
    }

    private Profile Shape(WarmthCurve line, string name)
    {
        double[] x = [.. Enumerable.Range(0, Steps + 1).Select(i => LengthMm * i / Steps)];
        return new Profile(x, Array.ConvertAll(x, at => UmPerMm * line.At(at)), name);
    }

    private static double Bow(WarmthCurve line) => (UmPerMm * line.Farthest().Height) + 0.0;

    private static void Check(double value, double low, double high, string name)
    {
        if (!(value >= low && value <= high))
            throw new ArgumentOutOfRangeException(name, value, FormattableString.Invariant($"{low} to {high} is possible."));
    }
}
