namespace Waywright.Simulations;

/// <summary>A rail's true shape, invented.</summary>
/// <param name="Name">What the table calls it.</param>
/// <param name="HeightUm">Height at a share of the length from 0 to 1, um.</param>
internal sealed record Shape(string Name, Func<double, double> HeightUm)
{
    public static Shape Straight { get; } = new("straight", _ => 0);

    public static Shape Bow(double um) => new($"bow {um:0} um", u => 4 * um * u * (1 - u));

    public static Shape Wave(double um) => new($"waves {um:0} um", u => um / 2 * Math.Sin(2 * Math.PI * 3 * u));

    public static Shape Bump(double um) => new($"bump {um:0} um", u => um * Math.Exp(-0.5 * (u - 0.4) * (u - 0.4) / (0.06 * 0.06)));

    public double[] At(IReadOnlyList<double> positions, double length) => [.. positions.Select(x => HeightUm(x / length))];
}
