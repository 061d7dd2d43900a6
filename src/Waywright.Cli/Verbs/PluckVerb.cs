using System.CommandLine;
using System.Text.Json.Nodes;
using UnitsNet;
using Waywright.Notebooks;

namespace Waywright.Cli;

/// <summary><c>waywright pluck WAV...</c>: the note of a plucked span from recordings, and its tension.</summary>
internal static class PluckVerb
{
    public static Command Create()
    {
        var files = new Argument<string[]>("WAV") { Description = "Recordings of one plucked span, WAV.", Arity = ArgumentArity.OneOrMore };
        var span = new Option<string?>("--span") { Description = "Free length of the span, for the tension: '180 +/- 0.5 mm'." };
        var density = new Option<string?>("--density") { Description = "Mass per length of the belt, for the tension: '8.1 g/m u 0.1 g/m'." };
        var lowest = new Option<string?>("--lowest") { Description = "Lowest note that the span can have: '40 Hz' (18 Hz when not given)." };
        var highest = new Option<string?>("--highest") { Description = "Highest note that it can have: '200 Hz' (420 Hz when not given)." };
        var mains = NumberOption.Whole("--mains", "Frequency of the mains, 50 or 60; both are tried when not given.");
        var control = new Option<string?>("--control") { Description = "A recording of the same pluck with a finger on the middle of the span: what still sounds is no belt." };
        var json = CommonOptions.Json();
        var command = new Command("pluck", "The note of a plucked span from WAV recordings, how sure it is, and the tension where span and density are given.") { files, span, density, lowest, highest, mains, control, json };
        command.Validators.Add(result =>
        {
            if (result.GetResult(span) is null != result.GetResult(density) is null)
                result.AddError("Give --span and --density together: the tension needs both.");
        });
        command.SetAction(parsed =>
        {
            var belt = parsed.GetValue(span) is { } length
                ? new BeltSpan(Quantity.ReadPositive<Length>(length, "--span"), Quantity.ReadPositive<LinearDensity>(parsed.GetValue(density)!, "--density"))
                : null;
            var search = Search(Hertz(parsed.GetValue(lowest), "--lowest", 18), Hertz(parsed.GetValue(highest), "--highest", 420), parsed.GetValue(mains));
            if (parsed.GetValue(control) is { } finger)
                search = search with { Control = PluckTake.Read(finger, search) };
            var note = PluckNote.Of(PluckTake.ReadAll(parsed.GetRequiredValue(files), search));
            var tension = note.Frequency is { } heard ? belt?.Tension(heard) : null;
            if (parsed.GetValue(json))
                JsonOutput.Print(Answer(note, tension));
            else
                Console.Out.WriteLine(tension is null ? Views.Text(note) : $"{Views.Text(note)}\n\n{Views.Text(tension)}");
            return note.Frequency is null ? CommandLine.Refused : CommandLine.Done;
        });
        return command;
    }

    private static double Hertz(string? text, string option, double otherwise) => text is null ? otherwise : Quantity.ReadPositive<Frequency>(text, option).Si.Value;

    private static PluckSearch Search(double lowest, double highest, int? mains)
    {
        try
        {
            return new PluckSearch(lowest, highest, mains);
        }
        catch (ArgumentOutOfRangeException wrong)
        {
            var (option, expected) = wrong.ParamName switch
            {
                nameof(PluckSearch.MainsHz) => ("--mains", "50 or 60"),
                nameof(PluckSearch.LowestHz) => ("--lowest", "18 to 1000 Hz"),
                _ => ("--highest", "at least 1.2 times the lowest note, and up to 1000 Hz"),
            };
            throw new InputException([new InputProblem(option, null, null, $"'{FormattableString.Invariant($"{wrong.ActualValue}")}'", expected)]);
        }
    }

    private static JsonObject Answer(PluckNote note, BeltTension? tension)
    {
        var answer = new JsonObject
        {
            ["takes"] = new JsonArray([.. note.Takes.Select(Answer)]),
            ["combined"] = new JsonObject { ["frequency_hz"] = Frequency(note.Frequency), ["plucks"] = note.UsedPlucks, ["verdict"] = note.Verdict },
            ["tension_n"] = tension is null ? null : Uncertain(tension.Tension.Si),
        };
        return answer;
    }

    private static JsonObject Answer(PluckTake take) => new()
    {
        ["file"] = take.Source,
        ["frequency_hz"] = Frequency(take.Frequency),
        ["usable"] = take.IsUsable,
        ["reasons"] = Texts(take.Reasons),
        ["mains_hum_hz"] = take.MainsHumHz,
        ["plucks"] = new JsonArray([.. take.Plucks.Select(Answer)]),
    };

    private static JsonObject Answer(Pluck pluck) => new()
    {
        ["start_s"] = pluck.StartSeconds,
        ["used_s"] = new JsonArray(pluck.UsedFromSeconds, pluck.UsedToSeconds),
        ["frequency_hz"] = Frequency(pluck.Frequency),
        ["usable"] = pluck.IsUsable,
        ["reasons"] = Texts(pluck.Reasons),
        ["inharmonicity"] = pluck.Inharmonicity,
        ["glide_cents"] = pluck.GlideCents,
        ["partials"] = new JsonArray([.. pluck.Partials.Select(p => new JsonObject { ["number"] = p.Number, ["frequency_hz"] = p.FrequencyHz, ["level_db"] = p.LevelDb })]),
        ["runners_up"] = new JsonArray([.. pluck.RunnersUp.Select(r => new JsonObject { ["frequency_hz"] = r.FrequencyHz, ["strength"] = r.Strength })]),
    };

    private static JsonArray Texts(IEnumerable<string> texts) => [.. texts.Select(t => JsonValue.Create(t))];

    private static JsonObject? Frequency(Measured<Frequency>? frequency) => frequency is null ? null : Uncertain(frequency.Si);

    private static JsonObject Uncertain(Uncertain value)
    {
        var interval = value.Expanded();
        return new() { ["value"] = value.Value, ["standard_uncertainty"] = value.StandardUncertainty, ["interval_95"] = new JsonArray(interval.Low, interval.High) };
    }
}
