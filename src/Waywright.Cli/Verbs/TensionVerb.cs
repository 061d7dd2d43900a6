using System.CommandLine;
using System.Text.Json.Nodes;
using UnitsNet;
using Waywright.Notebooks;

namespace Waywright.Cli;

/// <summary><c>waywright tension</c>: tension from the note of a span, or the note under a tension.</summary>
internal static class TensionVerb
{
    public static Command Create()
    {
        var span = new Option<string>("--span") { Description = "Free length of the span: '180 mm', '180 +/- 0.5 mm', '180 mm u 0.2 mm'.", Required = true };
        var density = new Option<string>("--density") { Description = "Mass per length of the belt: '8.1 g/m'.", Required = true };
        var frequency = new Option<string?>("--frequency") { Description = "Note of the plucked span: '96 Hz'." };
        var force = new Option<string?>("--force") { Description = "Tension, for the note it gives: '9 N'." };
        var stiffness = new Option<string?>("--stiffness") { Description = "Bending stiffness EI of the belt: '40 Nmm2 u 10 Nmm2'; without it, an ideal string." };
        var ends = new Option<string?>("--ends") { Description = "What holds the two ends: 'pulley,pulley' (the default), 'pulley,clamp', 'pulley,free-form 0.4 mm u 0.2 mm'." };
        var json = CommonOptions.Json();
        var command = new Command("tension", "Belt tension from the plucked note, or the note from the tension, with interval and what an ideal string leaves out.") { span, density, frequency, force, stiffness, ends, json };
        command.Validators.Add(result =>
        {
            if (result.GetResult(span) is not null && result.GetResult(density) is not null && result.GetResult(frequency) is null == result.GetResult(force) is null)
                result.AddError("Give either --frequency or --force.");
        });
        command.SetAction(parsed =>
        {
            var (first, second) = parsed.GetValue(ends) is { } two ? BeltEnd.ReadPair(two, "--ends") : (BeltEnd.Pulley, BeltEnd.Pulley);
            var belt = new BeltSpan(Quantity.ReadPositive<Length>(parsed.GetRequiredValue(span), "--span"), Quantity.ReadPositive<LinearDensity>(parsed.GetRequiredValue(density), "--density"))
            {
                BendingStiffnessNm2 = parsed.GetValue(stiffness) is { } bending ? Quantity.BendingStiffnessNm2(bending, "--stiffness") : null,
                First = first,
                Second = second,
            };
            var answer = parsed.GetValue(frequency) is { } note
                ? belt.Tension(Quantity.ReadPositive<Frequency>(note, "--frequency"))
                : belt.Note(Quantity.ReadPositive<Force>(parsed.GetValue(force)!, "--force"));
            if (parsed.GetValue(json))
                JsonOutput.Print(Answer(answer, parsed.GetValue(frequency) is not null));
            else
                Console.Out.WriteLine(Views.Text(answer));
            return CommandLine.Done;
        });
        return command;
    }

    private static JsonObject Answer(BeltTension belt, bool tension)
    {
        var asked = tension ? belt.Tension.Si : belt.Frequency.Si;
        var interval = asked.Expanded();
        var answer = new JsonObject
        {
            [tension ? "tension_n" : "frequency_hz"] = new JsonObject
            {
                ["value"] = asked.Value,
                ["standard_uncertainty"] = asked.StandardUncertainty,
                ["interval_95"] = new JsonArray(interval.Low, interval.High),
            },
            ["ideal_tension_n"] = belt.IdealN.Value,
            ["ends"] = new JsonArray(belt.Span.First.Kind, belt.Span.Second.Kind),
            ["effects"] = new JsonArray([.. belt.Effects.Select(Effect)]),
            ["budget"] = new JsonObject
            {
                ["remedy"] = belt.Budget.Remedy,
                ["lines"] = new JsonArray([.. belt.Budget.Lines.Select(l => new JsonObject { ["input"] = l.Input, ["signed"] = l.Signed, ["share"] = l.Share })]),
            },
            ["taken_as"] = new JsonObject
            {
                ["span"] = belt.Span.Length.TakenAs,
                ["density"] = belt.Span.Density.TakenAs,
                [tension ? "frequency" : "force"] = tension ? belt.Frequency.TakenAs : belt.Tension.TakenAs,
            },
        };
        return answer;
    }

    // A share of the tension: + where the ideal string reads high for it; null where what it takes was not stated.
    private static JsonObject Effect(BeltEffect effect) => new()
    {
        ["name"] = effect.Name,
        ["ideal_reads_high_by"] = effect.OnTension,
        ["corrected"] = effect.IsCorrected,
        ["why"] = effect.Why,
    };
}
