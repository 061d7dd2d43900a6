using System.Globalization;
using UnitsNet;

namespace Waywright.Notebooks;

/// <summary>
/// A numerical exploration around a builder's own numbers: a picture with a slider, that works offline in a cell and on a published page, and stands still at its starting value without scripts.
/// </summary>
public sealed class Exploration
{
    private Exploration(string verdict, string caption, Picture picture, TextTable table)
        => (Verdict, Caption, Picture, Table) = (verdict, caption, picture, table);

    /// <summary>What it shows for the numbers given.</summary>
    public string Verdict { get; }

    internal string Caption { get; }

    internal Picture Picture { get; }

    internal TextTable Table { get; }

    /// <summary>Where T = 4 mu L2 f2 over-reads by more than 5 % because a belt is stiff and its ends are held: over span and tension, for two pulleys, a pulley and a clamp, and two clamps; a slider changes the bending stiffness. Density and note don't matter: all follows from xi = L sqrt(T / EI).</summary>
    /// <param name="span">The builder's free span, above 0.</param>
    /// <param name="tension">The builder's tension, above 0.</param>
    /// <param name="bendingStiffnessNm2">EI, N m2, above 0.</param>
    /// <exception cref="ArgumentOutOfRangeException">One of them is not above 0.</exception>
    public static Exploration Stiffness(Measured<Length> span, Measured<Force> tension, Uncertain bendingStiffnessNm2)
    {
        var (mm, newton) = (1000 * Above(span, nameof(span)), Above(tension, nameof(tension)));
        ArgumentNullException.ThrowIfNull(bendingStiffnessNm2);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(bendingStiffnessNm2.Value, nameof(bendingStiffnessNm2));
        var bending = 1e6 * bendingStiffnessNm2.Value;
        double[] shares = [.. Enumerable.Range(0, 3).Select(c => ExplorePicture.Share(mm, newton, bending, c))];
        double[] shortest = [.. Enumerable.Range(0, 3).Select(c => ExplorePicture.XiOf(ExplorePicture.Misleads, c) * Math.Sqrt(bending / newton))];
        var table = new TextTable("#bending stiffness N mm2", "#two pulleys, mm", "#pulley and clamp, mm", "#two clamps, mm");
        foreach (var factor in new[] { 0.25, 0.5, 1, 2, 4 })
            table.Add([ExplorePicture.Three(factor * bending), .. shortest.Select(s => (s * Math.Sqrt(factor)).ToString("0", CultureInfo.InvariantCulture))]);
        var verdict = string.Create(CultureInfo.InvariantCulture, $"Pluck spans longer than {shortest[0]:0} mm on two pulleys, {shortest[1]:0} mm with one clamp, {shortest[2]:0} mm between two: shorter ones read more than 5 % high at {newton:0.#} N and {ExplorePicture.Three(bending)} N mm2. ")
            + $"Yours of {mm.ToString("0", CultureInfo.InvariantCulture)} mm reads {ExplorePicture.Percent(shares[0])}, {ExplorePicture.Percent(shares[1])} and {ExplorePicture.Percent(shares[2])} high.";
        var caption = "Shaded: the ideal formula reads more than 5 % high. The slider changes the belt's bending stiffness; span and tension are the axes, and the dot stays yours. Teeth move two pulleys towards the other panels.";
        return new(verdict, caption, ExplorePicture.Map(mm, newton, bending), table);
    }

    /// <summary>How hard a pluck may be: what its amplitude adds to the tension read, for half, all and twice of the span; a slider changes the tension.</summary>
    /// <param name="span">The builder's free span, above 0.</param>
    /// <param name="tension">The builder's tension, above 0.</param>
    /// <param name="stretchStiffness">EA, above 0.</param>
    /// <param name="loop">Length of belt that stretches with the span, where pulleys turn; null for a span held at both ends.</param>
    /// <exception cref="ArgumentOutOfRangeException">One of them is not above 0.</exception>
    public static Exploration Pluck(Measured<Length> span, Measured<Force> tension, Measured<Force> stretchStiffness, Measured<Length>? loop = null)
    {
        var (mm, newton, stretch) = (1000 * Above(span, nameof(span)), Above(tension, nameof(tension)), Above(stretchStiffness, nameof(stretchStiffness)));
        double? loopMm = loop is null ? null : 1000 * Above(loop, nameof(loop));
        // 3 kappa / 4 = 5 % to first order.
        double Most(double t) => Math.Sqrt(ExplorePicture.Misleads / 0.75 * 4 * t * mm * (loopMm ?? mm) / (Math.PI * Math.PI * stretch));
        var table = new TextTable("#tension N", "#amplitude for 5 %, mm", "#for 1 %, mm");
        foreach (var factor in new[] { 0.25, 0.5, 1, 2, 4 })
            table.Add(ExplorePicture.Three(factor * newton), Most(factor * newton).ToString("0.00", CultureInfo.InvariantCulture), (Most(factor * newton) / Math.Sqrt(5)).ToString("0.00", CultureInfo.InvariantCulture));
        var verdict = string.Create(CultureInfo.InvariantCulture, $"Pluck less than {Most(newton) / Math.Sqrt(5):0.0} mm for 1 %, and never more than {Most(newton):0.0} mm, on this span at {newton:0.#} N: beyond it the tension reads more than 5 % high.");
        var caption = "The slider changes the tension; span and stretch stiffness stay. A slack belt suffers most: the same pluck is a larger part of its tension.";
        return new(verdict, caption, ExplorePicture.Pluck(mm, newton, stretch, loopMm), table);
    }

    /// <summary>What limits the tension: its expanded uncertainty over the free span, and the parts of it; a slider changes how much belt was weighed.</summary>
    /// <param name="tension">The builder's tension, above 0.</param>
    /// <param name="density">About what the belt weighs, above 0.</param>
    /// <param name="bendingStiffnessNm2">EI, N m2, above 0.</param>
    /// <param name="spanUncertainty">Standard uncertainty of a span, above 0.</param>
    /// <param name="noteShare">Relative standard uncertainty of a note, above 0, such as 0.003.</param>
    /// <exception cref="ArgumentOutOfRangeException">One of them is not above 0.</exception>
    public static Exploration Uncertainty(Measured<Force> tension, Measured<LinearDensity> density, Uncertain bendingStiffnessNm2, Measured<Length> spanUncertainty, double noteShare)
    {
        var (newton, grams, spanU) = (Above(tension, nameof(tension)), 1000 * Above(density, nameof(density)), 1000 * Above(spanUncertainty, nameof(spanUncertainty)));
        ArgumentNullException.ThrowIfNull(bendingStiffnessNm2);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(bendingStiffnessNm2.Value, nameof(bendingStiffnessNm2));
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(noteShare);
        var bending = 1e6 * bendingStiffnessNm2.Value;
        double U(double mm, double metres) => 2 * Math.Sqrt(Square(Math.Sqrt(2 / 12.0) / (grams * metres)) + Square(2 * spanU / mm) + Square(2 * noteShare) + Square(4 * Math.Sqrt(bending / newton) / mm / Math.Sqrt(3)));
        var table = new TextTable("#weighed m", "#U at 120 mm %", "#U at 180 mm %", "#U at 300 mm %", "#U at 500 mm %");
        foreach (var metres in new[] { 0.25, 0.5, 1, 2, 4, 8 })
            table.Add([ExplorePicture.Three(metres), .. new[] { 120.0, 180, 300, 500 }.Select(mm => (100 * U(mm, metres)).ToString("0.0", CultureInfo.InvariantCulture))]);
        var verdict = string.Create(CultureInfo.InvariantCulture, $"Weigh more and pluck longer spans: with 1 m weighed a span of 180 mm is known to {100 * U(180, 1):0} %, with 4 m one of 300 mm to {100 * U(300, 4):0} %.");
        var caption = "The slider changes how much belt was weighed, on a scale read to 1 g; tension, stiffness, ruler and note stay. What both belts share (one reel, one fixture, equal pulleys) cancels when they are compared, and is no reason against plucking them.";
        return new(verdict, caption, ExplorePicture.Uncertainty(newton, bending, grams, spanU, noteShare), table);
    }

    private static double Square(double x) => x * x;

    private static double Above<TQuantity>(Measured<TQuantity> quantity, string name)
        where TQuantity : struct, IQuantity
    {
        ArgumentNullException.ThrowIfNull(quantity, name);
        return quantity.Si.Value > 0 ? quantity.Si.Value : throw new ArgumentOutOfRangeException(name, quantity.ToString(), "A value above 0 is needed.");
    }
}

/// <summary>An exploration: what it shows for the builder's numbers, the picture with its slider, the same as a table.</summary>
internal sealed class ExplorationView : View<Exploration>
{
    protected override string Verdict(Exploration result) => Sentences.First(result.Verdict);

    protected override string Text(Exploration result) => $"{result.Verdict}\n{result.Table}";

    protected override string Html(Exploration result) => Markup.View(Verdict(result), FigureHtml.Of(result.Picture, result.Caption, result.Table), Markup.Note(Sentences.Rest(result.Verdict)));
}
