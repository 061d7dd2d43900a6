using System.CommandLine;
using Waywright.Kernel;

namespace Waywright.Cli;

/// <summary><c>waywright kernel</c>: notebooks live in Jupyter.</summary>
internal static class KernelVerb
{
    public static Command Create() => new("kernel", "The kernel that runs notebooks in Jupyter.") { Install(), Remove(), Run() };

    public static async Task<int> RunAsync(string file)
    {
        await JupyterKernel.RunAsync(file).ConfigureAwait(false);
        return CommandLine.Done;
    }

    private static Command Install()
    {
        var prefix = Prefix();
        var command = new Command("install", "Copy the kernel to your data folder and tell Jupyter of it.") { prefix };
        command.SetAction(parsed =>
        {
            var folders = JupyterFolders.Of(parsed.GetValue(prefix));
            KernelInstall.Install(folders);
            Console.Out.WriteLine($"Installed '{KernelInfo.DisplayName}', version {CarriedPackages.Version}. Open a notebook with: jupyter notebook");
            Console.Out.WriteLine(folders.Spec);
            return CommandLine.Done;
        });
        return command;
    }

    private static Command Remove()
    {
        var prefix = Prefix();
        var command = new Command("remove", "Take the kernel away again, every version.") { prefix };
        command.SetAction(parsed =>
        {
            var folders = JupyterFolders.Of(parsed.GetValue(prefix));
            Console.Out.WriteLine(KernelInstall.Remove(folders) ? $"Removed '{KernelInfo.DisplayName}'." : $"Nothing to remove: '{KernelInfo.DisplayName}' is not installed here.");
            Console.Out.WriteLine(folders.Spec);
            return CommandLine.Done;
        });
        return command;
    }

    private static Command Run()
    {
        var file = new Argument<string>("FILE") { Description = "The connection file that Jupyter hands over." };
        var command = new Command("run", "Serve one notebook; Jupyter calls this.") { file };
        command.SetAction((parsed, _) => RunAsync(parsed.GetRequiredValue(file)));
        return command;
    }

    private static Option<string?> Prefix() => new("--prefix") { Description = "Install below DIR/share instead of in your own data folder." };
}
