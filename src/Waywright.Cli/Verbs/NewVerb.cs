using System.CommandLine;
using System.Globalization;
using Waywright.Publishing;

namespace Waywright.Cli;

/// <summary><c>waywright new</c>: starts a build of one's own.</summary>
internal static class NewVerb
{
    public static Command Create()
    {
        var folder = new Argument<string>("DIR") { Description = "The folder to make; it may be there already if it is empty." };
        var length = new Option<string>("--rail-length") { Description = "Length of the rails that the measuring sheets are made for: '320 mm'.", DefaultValueFactory = _ => "320 mm" };
        var pitch = new Option<string>("--pitch") { Description = "From hole to hole of the rails: '25 mm'.", DefaultValueFactory = _ => "25 mm" };
        var end = new Option<string?>("--end-distance") { Description = "From the end to the first hole: '10 mm'; without it, alike at both ends." };
        var rails = new Option<int>("--rails")
        {
            Description = "How many rails the sheets have room for.",
            DefaultValueFactory = _ => 6,
            CustomParser = result =>
            {
                if (int.TryParse(result.Tokens[0].Value, NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out var count))
                    return count;
                result.AddError($"--rails: found '{result.Tokens[0].Value}', expected a whole number");
                return 0;
            },
        };
        var command = new Command("new", "Start a build: notebooks, empty data sheets and measuring sheets to print. Overwrites nothing.") { folder, length, pitch, end, rails };
        command.SetAction(parsed =>
        {
            var made = NewBuild.Make(parsed.GetRequiredValue(folder), SheetRails.Read(parsed.GetRequiredValue(length), parsed.GetRequiredValue(pitch), parsed.GetValue(end), parsed.GetValue(rails)));
            Console.Out.WriteLine("Next: read START-HERE.md in it, print its sheets, and run 'waywright publish' there at any time: it says what is still missing.");
            Console.Out.WriteLine(made);
            return CommandLine.Done;
        });
        return command;
    }
}
