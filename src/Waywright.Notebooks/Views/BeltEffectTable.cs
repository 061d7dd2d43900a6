using System.Globalization;

namespace Waywright.Notebooks;

/// <summary>What an ideal string leaves out of a reading, with sign and size.</summary>
internal static class BeltEffectTable
{
    public static TextTable Of(BeltTension belt)
    {
        var table = new TextTable("left out by the ideal string", "#it reads", "in this result", "~why");
        foreach (var effect in belt.Effects)
            table.Add(effect.Name, Size(effect), effect.IsCorrected ? "corrected" : effect.OnTension is null ? "not stated" : "in the uncertainty", effect.Why);
        return table;
    }

    public static string Size(BeltEffect effect)
        => effect.OnTension is not { } share ? Shown.None
            : $"{(effect.IsCorrected || share <= 0 ? "" : "up to ")}{Math.Abs(100 * share).ToString(Math.Abs(share) < 0.1 ? "0.00" : "0.0", CultureInfo.InvariantCulture)} % {(share < 0 ? "low" : "high")}";
}
