using System.Diagnostics;
using System.Net;
using System.Net.Sockets;
using Waywright.EndToEnd.Commands;

namespace Waywright.EndToEnd.Jupyter;

/// <summary>A real Jupyter Notebook on loopback that serves a copy of the shipped notebooks and their data.</summary>
internal sealed class NotebookServer : IAsyncDisposable
{
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(90);

    private readonly Process _server;
    private readonly TemporaryFolder _folder;
    private readonly string _address;
    private readonly Task _talk;

    private NotebookServer(Process server, TemporaryFolder folder, string address, Task talk) => (_server, _folder, _address, _talk) = (server, folder, address, talk);

    public static async Task<NotebookServer> StartAsync(InstalledKernel kernel)
    {
        var folder = new TemporaryFolder();
        foreach (var part in new[] { "notebooks", "datasets" }) Copy(Path.Combine(Command.Repository, part), Path.Combine(folder.Path, part));
        var address = $"http://127.0.0.1:{FreePort()}";
        var start = new ProcessStartInfo(Needed.Python, ["-m", "notebook", "--no-browser", "--allow-root", "--ip=127.0.0.1", $"--port={new Uri(address).Port}", "--port-retries=0", "--NotebookApp.token=", "--NotebookApp.password=", $"--notebook-dir={folder.Path}"])
        {
            RedirectStandardError = true,
        };
        kernel.Show(start);
        var server = Process.Start(start)!;
        var running = new TaskCompletionSource(TaskCreationOptions.RunContinuationsAsynchronously);
        var talk = ReadAsync(server, running);
        await running.Task.WaitAsync(Patience, TestContext.Current.CancellationToken);
        return new NotebookServer(server, folder, address, talk);
    }

    public string AddressOf(string notebook) => $"{_address}/notebooks/notebooks/{notebook}";

    public async ValueTask DisposeAsync()
    {
        // Its kernels end with it.
        if (!_server.HasExited) _server.Kill();
        await _server.WaitForExitAsync();
        await _talk;
        _server.Dispose();
        _folder.Dispose();
    }

    private static async Task ReadAsync(Process server, TaskCompletionSource running)
    {
        var said = new List<string>();
        while (await server.StandardError.ReadLineAsync() is { } line)
        {
            said.Add(line);
            if (line.Contains("is running at", StringComparison.Ordinal)) running.TrySetResult();
        }

        running.TrySetException(new InvalidOperationException($"Jupyter Notebook did not start: {string.Join("\n", said)}"));
    }

    private static int FreePort()
    {
        using var holder = new TcpListener(IPAddress.Loopback, 0);
        holder.Start();
        return ((IPEndPoint)holder.LocalEndpoint).Port;
    }

    private static void Copy(string from, string to)
    {
        foreach (var file in Directory.EnumerateFiles(from, "*", SearchOption.AllDirectories))
        {
            var target = Path.Combine(to, Path.GetRelativePath(from, file));
            Directory.CreateDirectory(Path.GetDirectoryName(target)!);
            File.Copy(file, target);
        }
    }
}
