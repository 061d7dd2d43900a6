using System.Globalization;
using System.Text.RegularExpressions;

namespace Waywright.Notebooks;

/// <summary>What a notebook tells the host beside what it shows: the data it opened and the results it keeps.</summary>
internal static partial class OutputTypes
{
    /// <summary>A file that was opened, as <see cref="InputFile.ToJson"/>.</summary>
    public const string Input = "application/vnd.waywright.input+json";

    // A rerun tolerance that is coarser than this share of u would let another answer pass for the same.
    private const double MostOfU = 0.1;

    // What arithmetic itself may cost, however small u is.
    private const double Rounding = 1e-9;

    /// <summary>A kept result, as <see cref="KeptResult.ToJson"/>.</summary>
    public const string Figures = "application/vnd.waywright.figures+json";

    public static KeptResult Keep(string id, object result)
    {
        var view = Views.Find(result.GetType()) ?? throw new ArgumentException($"{result.GetType().Name} is no result that can be kept.", nameof(result));
        return new KeptResult(id, view.Verdict(result), view.Text(result), view.Figures(result, id).Select(Checked));
    }

    /// <summary>The figure, if its rerun tolerance is no more than a tenth of its standard uncertainty.</summary>
    /// <exception cref="ArgumentException">It is more.</exception>
    public static Figure Checked(Figure figure)
    {
        if (figure is not { StandardUncertainty: { } u and > 0, Value: { } value })
            return figure;
        var (tolerance, most) = (Math.Max(figure.AbsoluteTolerance, figure.RelativeTolerance * Math.Abs(value)), Math.Max(MostOfU * u, Rounding * Math.Abs(value)));
        return tolerance <= most
            ? figure
            : throw new ArgumentException(string.Create(CultureInfo.InvariantCulture, $"Figure '{figure.Id}' has a rerun tolerance of {tolerance:G3} {figure.Unit}, and must have no more than {most:G3}, a tenth of its standard uncertainty."), nameof(figure));
    }

    public static bool IsId(string id) => id.Length <= 200 && IdPattern().IsMatch(id);

    public static string Tell(InputFile input) => string.Create(CultureInfo.InvariantCulture, $"Read {input.Path} ({input.Bytes} bytes, SHA-256 {input.Sha256[..12]}...)");

    public static string Tell(KeptResult kept) => string.Create(CultureInfo.InvariantCulture, $"Kept {kept.Id}: {kept.Figures.Count} {(kept.Figures.Count == 1 ? "figure" : "figures")}");

    [GeneratedRegex("^[a-z0-9]+(-[a-z0-9]+)*(/[a-z0-9]+(-[a-z0-9]+)*)*$", RegexOptions.CultureInvariant)]
    private static partial Regex IdPattern();
}
