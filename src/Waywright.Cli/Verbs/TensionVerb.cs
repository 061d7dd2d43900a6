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
        var json = CommonOptions.Json();
        var command = new Command("tension", "Belt tension from the plucked note (or the note from the tension), ideal string.") { span, density, frequency, force, json };
        command.Validators.Add(result =>
        {
            if (result.GetResult(frequency) is null == result.GetResult(force) is null)
                result.AddError("Give either --frequency or --force.");
        });
        command.SetAction(parsed =>
        {
            var belt = new BeltSpan(Quantity.ReadPositive<Length>(parsed.GetRequiredValue(span), "--span"), Quantity.ReadPositive<LinearDensity>(parsed.GetRequiredValue(density), "--density"));
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
        return new JsonObject
        {
            [tension ? "tension_n" : "frequency_hz"] = new JsonObject { ["value"] = asked.Value, ["standard_uncertainty"] = asked.StandardUncertainty },
            ["taken_as"] = new JsonObject
            {
                ["span"] = belt.Span.Length.TakenAs,
                ["density"] = belt.Span.Density.TakenAs,
                [tension ? "frequency" : "force"] = tension ? belt.Frequency.TakenAs : belt.Tension.TakenAs,
            },
        };
    }
}
