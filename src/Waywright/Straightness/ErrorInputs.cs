using System;
using System.Collections.Generic;
using System.Globalization;
using System.Linq;

namespace Waywright;

/// <summary>Carries what a profile is uncertain by into figures that follow its heights linearly.</summary>
internal static class ErrorInputs
{
    /// <summary>Refuses errors of another profile.</summary>
    public static void CheckFit(Profile profile, ProfileErrors? errors)
    {
        if (errors is not null && errors.StationUm.Count != profile.Count)
            throw new ArgumentException(string.Create(CultureInfo.InvariantCulture, $"Errors of {errors.StationUm.Count} stations don't fit a profile of {profile.Count}."), nameof(errors));
    }

    /// <summary>The draw of a shape as an input of unit uncertainty: one name is one input, on whatever profile it is met.</summary>
    public static Uncertain Draw(ErrorShape shape) => Uncertain.Input(shape.Input, 0, 1, shape.DegreesOfFreedom);

    /// <summary>Scatter of the readings as an input of unit uncertainty, of this profile and no other.</summary>
    public static Uncertain Scatter(string name, double degreesOfFreedom) => Uncertain.Input(new object(), name, 0, 1, degreesOfFreedom);

    /// <summary>A figure that follows the heights linearly: its value, what scatter does to it, and what each shape does.</summary>
    /// <param name="value">The figure.</param>
    /// <param name="scatter">Inputs of unit uncertainty with their effects.</param>
    /// <param name="errors">Whose shapes move it, if any.</param>
    /// <param name="effectOf">What a profile of these heights adds to the figure.</param>
    public static Uncertain Figure(double value, IEnumerable<(Uncertain Input, double Effect)> scatter, ProfileErrors? errors, Func<ErrorShape, double> effectOf)
    {
        var terms = scatter.Concat(errors is null ? [] : errors.Shapes.Select(s => (Draw(s), effectOf(s)))).ToArray();
        return terms.Length == 0 ? Uncertain.Exact(value) : Uncertain.Of(value, Array.ConvertAll(terms, t => t.Item1), Array.ConvertAll(terms, t => t.Item2));
    }
}
