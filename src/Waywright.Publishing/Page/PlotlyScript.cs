using System.IO.Compression;

namespace Waywright.Publishing;

/// <summary>The chart script that Plotly.NET carries, packed for a page: once, inert, to be unpacked by the page's loader.</summary>
internal static class PlotlyScript
{
    private const string Resource = "Plotly.NET.plotly-2.28.0.min.js";

    private static readonly Lazy<string> Text = new(Pack);

    public static string Version => Resource.Split('-')[1].Replace(".min.js", "", StringComparison.Ordinal);

    /// <summary>gzip, then base64.</summary>
    public static string Packed => Text.Value;

    /// <summary>The notices of the parts that the script is built of.</summary>
    public static string Notices
    {
        get
        {
            using var reader = new StreamReader(Open(Resource + ".LICENSE.txt"));
            return reader.ReadToEnd().ReplaceLineEndings("\n").Trim();
        }
    }

    private static string Pack()
    {
        using var packed = new MemoryStream();
        using (var script = Open(Resource))
        using (var gzip = new GZipStream(packed, CompressionLevel.Optimal, leaveOpen: true))
            script.CopyTo(gzip);
        return Convert.ToBase64String(packed.GetBuffer(), 0, (int)packed.Length);
    }

    private static Stream Open(string name)
        => typeof(Plotly.NET.GenericChart).Assembly.GetManifestResourceStream(name) ?? throw new InvalidOperationException($"Plotly.NET carries no {name}.");
}
