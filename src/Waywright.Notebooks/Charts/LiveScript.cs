using System.IO.Compression;
using GenericChart = Plotly.NET.GenericChart;

namespace Waywright.Notebooks;

/// <summary>
/// What a notebook front end needs to draw figures without a network: Plotly, as Plotly.NET carries it, packed into the first figure of a kernel,
/// and one short call with each figure. It stands between two comments, so that a published page can take it out and bring its own.
/// </summary>
internal sealed class LiveScript
{
    public const string Opening = "<!--ww:live-->";
    public const string Closing = "<!--/ww:live-->";

    private static readonly Lazy<string> Loader = new(MakeLoader);
    private int _sent;

    /// <summary>The one of this process: a kernel sends the loader once.</summary>
    public static LiveScript Kernel { get; } = new();

    public string For(string id)
    {
        var loader = Interlocked.Exchange(ref _sent, 1) == 0 ? Loader.Value : "";
        return $"{Opening}{loader}<script>window.waywright&&waywright.show(\"{id}\")</script>{Closing}";
    }

    /// <summary>Plotly's script as Plotly.NET carries it.</summary>
    public static Stream OpenPlotly()
    {
        var assembly = typeof(GenericChart).Assembly;
        var name = assembly.GetManifestResourceNames().Single(n => n.EndsWith(".min.js", StringComparison.Ordinal));
        return assembly.GetManifestResourceStream(name)!;
    }

    // 'module' is ours and 'define' is shadowed: on a page with an AMD loader the script must not register itself there, nor replace the page's own Plotly.
    private static string MakeLoader() => $$"""
        <script>{{DrawScript.Text}}
        waywright.start(async () => {
          const packed = Uint8Array.from(atob("{{Packed()}}"), c => c.charCodeAt(0));
          const script = await new Response(new Blob([packed]).stream().pipeThrough(new DecompressionStream("gzip"))).text();
          const module = { exports: {} };
          new Function("module", "exports", "define", script).call(window, module, module.exports, undefined);
          return module.exports;
        });</script>
        """;

    private static string Packed()
    {
        using var script = OpenPlotly();
        using var packed = new MemoryStream();
        using (var gzip = new GZipStream(packed, CompressionLevel.Optimal, leaveOpen: true))
            script.CopyTo(gzip);
        return Convert.ToBase64String(packed.GetBuffer(), 0, (int)packed.Length);
    }
}
