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
        var faults = UseFaults.Of(parsed);
        if (faults.Count > 0)
        {
            foreach (var fault in faults)
                await Console.Error.WriteLineAsync(fault).ConfigureAwait(false);
            await Console.Error.WriteLineAsync($"See '{UseFaults.NameOf(parsed.CommandResult)} --help'.").ConfigureAwait(false);
            return BadInput;
        }

        return await parsed.InvokeAsync(new InvocationConfiguration { EnableDefaultExceptionHandler = false }).ConfigureAwait(false);
    }
}
