using System.Diagnostics;
using Waywright.EndToEnd.Commands;
using Waywright.EndToEnd.Jupyter;

[assembly: AssemblyFixture(typeof(InstalledKernel))]

namespace Waywright.EndToEnd.Jupyter;

/// <summary>The kernel as a person installs it, once for all tests, below a prefix of its own.</summary>
public sealed class InstalledKernel : IAsyncLifetime
{
    private readonly TemporaryFolder _prefix = new();

    /// <summary>The prefix that it was installed below.</summary>
    public string Prefix => _prefix.Path;

    public async ValueTask InitializeAsync()
    {
        if (!Needed.HasClient) return;
        var installed = await Command.RunAsync("kernel", "install", "--prefix", Prefix);
        Assert.True(installed.ExitCode == 0, installed.Error);
    }

    /// <summary>Lets a program of Jupyter's find this kernel, and nothing of the machine's user.</summary>
    internal void Show(ProcessStartInfo start)
    {
        var own = Path.Combine(Prefix, "user");
        start.Environment["JUPYTER_PATH"] = Path.Combine(Prefix, "share", "jupyter");
        start.Environment["JUPYTER_DATA_DIR"] = Path.Combine(own, "data");
        start.Environment["JUPYTER_RUNTIME_DIR"] = Path.Combine(own, "runtime");
        start.Environment["JUPYTER_CONFIG_DIR"] = Path.Combine(own, "config");
        start.Environment["IPYTHONDIR"] = Path.Combine(own, "ipython");
        // A language with a decimal comma must change nothing.
        start.Environment["LC_ALL"] = "de_DE.UTF-8";
    }

    public ValueTask DisposeAsync()
    {
        _prefix.Dispose();
        return ValueTask.CompletedTask;
    }
}
