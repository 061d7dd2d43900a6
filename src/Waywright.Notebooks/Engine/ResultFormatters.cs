using IFrameFormattable = Deedle.Internal.IFrameFormattable;
using ISeriesFormattable = Deedle.Internal.ISeriesFormattable;

namespace Waywright.Notebooks;

/// <summary>Tells the engine how results, charts and frames are shown.</summary>
internal static class ResultFormatters
{
    public static void Register()
    {
        if (!EngineBridge.IsPresent)
            return;
        foreach (var view in Views.All)
            EngineBridge.Register(view.ResultType, ("text/html", (o, w) => w.Write(view.Html(o))), ("text/plain", (o, w) => w.Write(view.Text(o))));
        EngineBridge.Register(typeof(Plotly.NET.GenericChart), ("text/html", (o, w) => w.Write(ChartView.Html((Plotly.NET.GenericChart)o))), ("text/plain", (o, w) => w.Write(ChartView.Text((Plotly.NET.GenericChart)o))));
        EngineBridge.Register(typeof(IFrameFormattable), ("text/html", (o, w) => w.Write(FrameGrid.Of((IFrameFormattable)o).Html())), ("text/plain", (o, w) => w.Write(FrameGrid.Of((IFrameFormattable)o).Text())));
        EngineBridge.Register(typeof(ISeriesFormattable), ("text/html", (o, w) => w.Write(FrameGrid.Of((ISeriesFormattable)o).Html())), ("text/plain", (o, w) => w.Write(FrameGrid.Of((ISeriesFormattable)o).Text())));
        EngineBridge.Register(typeof(InputFile), (OutputTypes.Input, (o, w) => w.Write(((InputFile)o).ToJson())), ("text/plain", (o, w) => w.Write(OutputTypes.Tell((InputFile)o))));
        EngineBridge.Register(typeof(KeptResult), (OutputTypes.Figures, (o, w) => w.Write(((KeptResult)o).ToJson())), ("text/plain", (o, w) => w.Write(OutputTypes.Tell((KeptResult)o))));
    }

    /// <summary>Gives charts that a cell makes the house's colours, where the host can load the chart library at all.</summary>
    public static void StyleCharts()
    {
        try
        {
            HouseStyle.Apply();
        }
        catch (Exception e) when (e is IOException or TypeLoadException or MissingMethodException)
        {
            // An older FSharp.Core in the host: verdicts and tables show all the same, and each chart says what it needs.
        }
    }
}
