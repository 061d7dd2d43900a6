namespace Waywright.Publishing;

/// <summary>The page's style and loader, as they stand in Assets.</summary>
internal static class PageAssets
{
    public static string Style { get; } = Read("page.css");

    // Small multiples are arranged by the same script in a notebook and on the page.
    public static string Script { get; } = $"{Notebooks.ArrangeScript.Text}\n{Read("page.js")}";

    public static string Read(string name)
    {
        using var stream = typeof(PageAssets).Assembly.GetManifestResourceStream(name) ?? throw new InvalidOperationException($"The assembly carries no {name}.");
        using var reader = new StreamReader(stream);
        return reader.ReadToEnd();
    }
}
