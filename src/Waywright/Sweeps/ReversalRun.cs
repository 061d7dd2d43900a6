using System;
using System.Linq;

namespace Waywright;

/// <summary>One run of a reversal: its profile, and what that is uncertain by but for the guide, which the reversal takes out.</summary>
internal sealed record ReversalRun(Profile Profile, string Source, string Name, ProfileErrors? Errors)
{
    /// <param name="pooled">A combined sweep.</param>
    /// <param name="run">What messages and inputs call it.</param>
    public static ReversalRun Of(PooledSweep pooled, string run) => new(pooled.Profile, pooled.Sweep.Source, pooled.Sweep.Name, WithoutGuide(pooled, run));

    public static ReversalRun Of(Profile profile, string run)
        => new(profile, profile.Name.Length == 0 ? run : profile.Name, profile.Name.Length == 0 ? "rail" : profile.Name, null);

    // Without a set-up the scatter is all that is known.
    private static ProfileErrors? WithoutGuide(PooledSweep pooled, string run)
    {
        if (pooled.Sweep.Setup is { } setup && pooled.Errors is { } errors)
        {
            var guide = GuideShapes.Of(setup, pooled.Profile).Select(s => s.Input).ToHashSet();
            var lays = LayBows.Shape(pooled)?.Input;
            // Each run was laid anew, so its lays are an input of their own.
            var shapes = errors.Shapes.Where(s => !guide.Contains(s.Input)).Select(s => s.Input == lays ? s with { Input = $"{s.Input}, {run}" } : s);
            return new ProfileErrors(errors.StationUm, errors.StationDegreesOfFreedom, [.. shapes]);
        }

        return pooled.RepeatabilityUm is { } um ? new ProfileErrors([.. pooled.Means.Counts.Select(n => um / Math.Sqrt(n))], pooled.DegreesOfFreedom, []) : null;
    }
}
