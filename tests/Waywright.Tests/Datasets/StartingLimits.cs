namespace Waywright.Tests.Datasets;

/// <summary>
/// The project's starting limits in um (common practice, no source), written out once more so that the demo's intended grades
/// do not lean on the library's own copy.
/// </summary>
sealed record StartingLimits(string Grade, double Side, double SideLocal, double TopMounted)
{
    public const double WindowMm = 100, ReturnSide = 100;

    public static readonly StartingLimits[] BestFirst = [new("gantry", 30, 15, 10), new("z", 60, 30, 20)];

    /// <summary>The grade of figures that are exact: the best whose limits all hold; else return beyond 100 um of side; else measure again.</summary>
    public static string GradeOf(double side, double sideLocal, double topMounted)
        => BestFirst.FirstOrDefault(limits => side <= limits.Side && sideLocal <= limits.SideLocal && topMounted <= limits.TopMounted)?.Grade
            ?? (side > ReturnSide ? "return" : "measure again");
}
