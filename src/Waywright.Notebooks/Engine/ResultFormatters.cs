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
        EngineBridge.Register(typeof(InputFile), (OutputTypes.Input, (o, w) => w.Write(((InputFile)o).ToJson())), ("text/plain", (o, w) => w.Write(OutputTypes.Tell((InputFile)o))));
        EngineBridge.Register(typeof(KeptResult), (OutputTypes.Figures, (o, w) => w.Write(((KeptResult)o).ToJson())), ("text/plain", (o, w) => w.Write(OutputTypes.Tell((KeptResult)o))));
    }
}
