using System.CommandLine;

namespace Waywright.Cli;

/// <summary><c>--screws</c>: which holes of a rail get a screw.</summary>
internal static class ScrewsOption
{
    private const string Every = "every";
    private const string Other = "every-other";
    private const string FromFarEnd = "every-other-far-end";
    private const string FromBothEnds = "every-other-both-ends";

    public static Option<string> Create()
    {
        var screws = new Option<string>("--screws") { Description = "Holes that get a screw, for the top as it will be once screwed down. With --rails.", DefaultValueFactory = _ => Every };
        string[] choices = [Every, Other, FromFarEnd, FromBothEnds];
        screws.HelpName = string.Join('|', choices);
        screws.CompletionSources.Add(choices);
        screws.Validators.Add(result =>
        {
            if (result.Tokens is [var token] && !choices.Contains(token.Value))
                result.AddError($"--screws: found '{token.Value}', expected one of {string.Join(", ", choices)}");
        });
        return screws;
    }

    public static Func<RailStock.Rail, ScrewPattern> Choice(ParseResult parsed, Option<string> option)
    {
        var chosen = parsed.GetValue(option);
        return rail => ScrewPattern.Every(rail) is var every && every.HolesMm.Count > 2 ? Of(every, chosen) : every;
    }

    private static ScrewPattern Of(ScrewPattern every, string? chosen) => chosen switch
    {
        Other => every.EveryOther(),
        FromFarEnd => every.EveryOtherFromFarEnd(),
        FromBothEnds => every.EveryOtherFromBothEnds(),
        _ => every,
    };
}
