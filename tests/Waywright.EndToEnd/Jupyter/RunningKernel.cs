namespace Waywright.EndToEnd.Jupyter;

/// <summary>One kernel for the tests of a class that leave it as it was.</summary>
public sealed class RunningKernel(InstalledKernel kernel) : IAsyncLifetime
{
    private JupyterClient? _client;

    /// <summary>Its front end; the test is skipped where there is none.</summary>
    internal JupyterClient Client
    {
        get
        {
            Needed.OfClient();
            return _client!;
        }
    }

    public async ValueTask InitializeAsync()
    {
        if (Needed.HasClient) _client = await JupyterClient.StartAsync(kernel, Path.GetTempPath());
    }

    public async ValueTask DisposeAsync()
    {
        if (_client is not null) await _client.DisposeAsync();
    }
}
