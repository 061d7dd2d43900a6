using System.Runtime.CompilerServices;
using System.Security.Cryptography;
using System.Text;

namespace Waywright.Notebooks;

/// <summary>
/// A picture as an HTML fragment: the static picture, the live figure as inert JSON, a caption, its data folded, and what a notebook needs to draw it.
/// The same picture gives the same bytes.
/// </summary>
internal static class FigureHtml
{
    private const string NotLive = "Static only: this notebook host carries an FSharp.Core too old for live charts; Waywright's own kernel has one.";

    /// <param name="picture">What is drawn.</param>
    /// <param name="caption">One or two sentences that state what it shows.</param>
    /// <param name="data">The figures behind it, folded under it, if given.</param>
    public static string Of(Picture picture, string caption, TextTable? data = null) => Of(picture, caption, data, LiveScript.Kernel);

    public static string Of(Picture picture, string caption, TextTable? data, LiveScript live)
    {
        var drawn = SvgPicture.Draw(picture);
        string json;
        try
        {
            json = Json(picture);
        }
        catch (Exception e) when (e is FileLoadException or FileNotFoundException or TypeLoadException or MissingMethodException or TypeInitializationException)
        {
            return Figure(IdOf(drawn), drawn, "", Caption($"{caption} {NotLive}") + Folded(data));
        }

        var id = IdOf(json);
        return Figure(id, drawn, Inert(json), Caption(caption) + Folded(data)) + live.For(id);
    }

    /// <summary>Data, layout and config of a picture's live figure, with every <c>&lt;</c> escaped.</summary>
    // Kept apart so that a host whose FSharp.Core is too old fails here, and the static picture is already there.
    [MethodImpl(MethodImplOptions.NoInlining)]
    public static string Json(Picture picture) => Escaped(picture.Slider is { } slider ? slider.Add(Drawn(picture), Drawn) : Drawn(picture));

    public static string Escaped(string json) => json.Replace("<", "\\u003c", StringComparison.Ordinal);

    public static string IdOf(string json) => "ww-" + Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(json)))[..12];

    public static string Inert(string json) => $"<script type=\"application/json\" class=\"ww-plot\">{json}</script>";

    public static string Caption(string caption) => $"<figcaption>{SvgText.Encode(caption)}</figcaption>";

    public static string Figure(string id, string still, string data, string below)
        => $"<figure class=\"ww-figure\" id=\"{id}\" style=\"margin:1em 0\">{still}{data}{below}</figure>";

    private static string Drawn(Picture picture) => Plotly.NET.GenericChart.toJson(PlotlyPicture.Draw(picture));

    private static string Folded(TextTable? data) => data is null ? "" : Markup.Details("Data", Markup.Table(data, "The figures behind the picture"));
}
