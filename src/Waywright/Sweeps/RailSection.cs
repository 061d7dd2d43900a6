namespace Waywright;

/// <summary>What a rail's bending is worked out from.</summary>
/// <param name="LengthMm">Length, mm.</param>
/// <param name="TopStiffnessNm2">EI for bending that the top shows, N m2.</param>
/// <param name="SideStiffnessNm2">EI for bending that the side shows, N m2.</param>
/// <param name="MassKgPerM">Mass of a metre, kg.</param>
/// <param name="StiffnessUPercent">Standard uncertainty of both stiffnesses, % of them; null when not stated.</param>
internal sealed record RailSection(double LengthMm, double TopStiffnessNm2, double SideStiffnessNm2, double MassKgPerM, double? StiffnessUPercent)
{
    // CGPM 1901.
    private const double StandardGravity = 9.80665;

    public double WeightNPerM => StandardGravity * MassKgPerM;

    /// <summary>The rail on two supports, its top face up: its weight bends what the top shows, not what the side shows.</summary>
    public SupportedBeam On(RailHolding holding, RailFace face) => face == RailFace.Top
        ? new SupportedBeam(LengthMm, TopStiffnessNm2, WeightNPerM, holding.PlacesMm)
        : new SupportedBeam(LengthMm, SideStiffnessNm2, 0, holding.PlacesMm);
}
