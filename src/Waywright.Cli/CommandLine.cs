using System.CommandLine;
using System.CommandLine.Help;
using System.Text;
using Waywright.Kernel;

namespace Waywright.Cli;

/// <summary>The <c>waywright</c> command: exit 0 done, 1 the work says no, 2 bad input or use.</summary>
internal static class CommandLine
{
    public const int Done = 0;
    public const int Refused = 1;
    public const int BadInput = 2;

    public static async Task<int> RunAsync(string[] args)
    {
        if (args is ["session", .. var rest])
            return await SessionHost.ServeAsync(rest).ConfigureAwait(false);
        Console.OutputEncoding = new UTF8Encoding(encoderShouldEmitUTF8Identifier: false);
        Console.SetOut(new PlainWriter(Console.Out));
        Console.SetError(new PlainWriter(Console.Error));
        try
        {
            // Past the parser, which takes its time and would end the kernel on Ctrl-C: to a kernel that means 'stop the cell'.
            if (args is ["kernel", "run", var file] && !file.StartsWith('-'))
                return await KernelVerb.RunAsync(file).ConfigureAwait(false);
            return await ParseAsync(args).ConfigureAwait(false);
        }
        catch (InputException e)
        {
            foreach (var problem in e.Problems)
                await Console.Error.WriteLineAsync(problem.ToString()).ConfigureAwait(false);
            return BadInput;
        }
    }

    private static async Task<int> ParseAsync(string[] args)
    {
        // Not a RootCommand: that is named after the assembly, and help should say waywright.
        var root = new Command("waywright", "Measures, grades and proves the parts of a belt-driven gantry.")
        {
            new HelpOption(),
            new VersionOption(),
            NewVerb.Create(),
            PublishVerb.Create(),
            VerifyVerb.Create(),
            StraightnessVerb.Create(),
            GradeVerb.Create(),
            PlanVerb.Create(),
            TensionVerb.Create(),
            PluckVerb.Create(),
            KernelVerb.Create(),
        };
        var parsed = root.Parse(args);
        if (parsed.Errors.Count > 0)
        {
            foreach (var error in parsed.Errors)
                await Console.Error.WriteLineAsync(error.Message).ConfigureAwait(false);
            var verb = parsed.CommandResult.Command == root ? "" : $"{parsed.CommandResult.Command.Name} ";
            await Console.Error.WriteLineAsync($"See 'waywright {verb}--help'.").ConfigureAwait(false);
            return BadInput;
        }

        return await parsed.InvokeAsync(new InvocationConfiguration { EnableDefaultExceptionHandler = false }).ConfigureAwait(false);
    }
}
