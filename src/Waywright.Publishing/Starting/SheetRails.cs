using UnitsNet;

namespace Waywright.Publishing;

/// <summary>The rails that measuring sheets are made for: how long, where their holes are, how many.</summary>
public sealed record SheetRails
{
    private const double ShortestMm = 60;
    private const double LongestMm = 3000;
    private const double ClosestMm = 5;
    private const double WidestMm = 300;
    private const int MostRails = 60;
    private const double MmPerM = 1000;

    // Of the length from either end: about where two supports bend a bar least between them and beyond (Bessel's points are at 0.2203).
    private const double SupportShare = 0.22;

    // A first hole nearer to the end than this share of the pitch is no rail's: there is one hole less. Common practice, no source.
    private const double NearestHoleShare = 0.2;

    private SheetRails(RailStock.Rail rail, int count) => (Rail, Count) = (rail, count);

    /// <summary>Length and holes that all of them share.</summary>
    public RailStock.Rail Rail { get; }

    /// <summary>How many rails the sheets have room for.</summary>
    public int Count { get; }

    /// <summary>Where the two supports go, mm from the dot.</summary>
    public (double Near, double Far) SupportsMm => (Math.Round(SupportShare * Rail.LengthMm), Rail.LengthMm - Math.Round(SupportShare * Rail.LengthMm));

    /// <summary>Reads what a builder says of the rails; without an end distance the holes are taken to lie alike from both ends.</summary>
    /// <param name="length">Such as <c>320 mm</c>, 60 mm to 3 m.</param>
    /// <param name="pitch">From hole to hole, such as <c>25 mm</c>.</param>
    /// <param name="endDistance">From the end to the first hole, or null.</param>
    /// <param name="count">1 to 60 rails.</param>
    /// <exception cref="InputException">A text is no length or out of range; all that are wrong are listed.</exception>
    public static SheetRails Read(string length, string pitch, string? endDistance, int count)
    {
        var problems = new List<InputProblem>();
        var lengthMm = ReadMm("--rail-length", length, ShortestMm, LongestMm, problems);
        var pitchMm = ReadMm("--pitch", pitch, ClosestMm, WidestMm, problems);
        double? endMm = endDistance is null ? null : ReadMm("--end-distance", endDistance, 1, LongestMm, problems);
        if (count is < 1 or > MostRails)
            problems.Add(new InputProblem("--rails", null, null, FormattableString.Invariant($"'{count}'"), FormattableString.Invariant($"1 to {MostRails} rails")));
        if (problems.Count == 0 && pitchMm > lengthMm / 2)
            problems.Add(new InputProblem("--pitch", null, null, $"'{pitch}'", $"at most half of the rail's length of {SheetHtml.Mm(lengthMm)} mm"));
        if (problems.Count == 0 && endMm > lengthMm / 2)
            problems.Add(new InputProblem("--end-distance", null, null, $"'{endDistance}'", $"at most half of the rail's length of {SheetHtml.Mm(lengthMm)} mm"));
        return problems.Count == 0 ? new SheetRails(new RailStock.Rail("R01", 1, lengthMm, pitchMm, endMm ?? EndMm(lengthMm, pitchMm), null, null, ""), count) : throw new InputException(problems);
    }

    private static double EndMm(double lengthMm, double pitchMm)
    {
        var bays = Math.Floor(lengthMm / pitchMm);
        var end = (lengthMm - (bays * pitchMm)) / 2;
        return end >= NearestHoleShare * pitchMm ? end : (lengthMm - ((bays - 1) * pitchMm)) / 2;
    }

    private static double ReadMm(string option, string text, double least, double most, List<InputProblem> problems)
    {
        try
        {
            var read = Quantity.ReadPositive<Length>(text, option).Si;
            var mm = Math.Round(MmPerM * read.Value, 3);
            if (read.StandardUncertainty > 0)
                problems.Add(new InputProblem(option, null, null, $"'{text}'", "a length without an uncertainty: it only places the stations"));
            else if (mm < least || mm > most)
                problems.Add(new InputProblem(option, null, null, $"'{text}'", $"{SheetHtml.Mm(least)} mm to {SheetHtml.Mm(most)} mm"));
            return mm;
        }
        catch (InputException e)
        {
            problems.AddRange(e.Problems);
            return 0;
        }
    }
}
