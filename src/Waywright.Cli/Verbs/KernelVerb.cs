using System.CommandLine;
using Waywright.Kernel;

namespace Waywright.Cli;

/// <summary><c>waywright kernel</c>: notebooks live in Jupyter.</summary>
internal static class KernelVerb
{
    public static Command Create() => new("kernel", "The kernel that runs notebooks in Jupyter.") { Run() };

    private static Command Run()
    {
        var file = new Argument<string>("FILE") { Description = "The connection file that Jupyter hands over." };
        var command = new Command("run", "Serve one notebook; Jupyter calls this.") { file };
        command.SetAction(async (parsed, _) =>
        {
            await JupyterKernel.RunAsync(parsed.GetRequiredValue(file)).ConfigureAwait(false);
            return CommandLine.Done;
        });
        return command;
    }
}
