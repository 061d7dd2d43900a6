namespace Waywright.Publishing;

/// <summary>Where things stand on the page: settled before anything is written, so that every part can link to every other.</summary>
internal sealed class PageMap
{
    private readonly Dictionary<string, string> _results = new(StringComparer.Ordinal);
    private readonly Dictionary<string, string> _notebooks = new(StringComparer.Ordinal);
    private readonly Dictionary<string, string> _titles = new(StringComparer.Ordinal);
    private readonly HashSet<string> _inputs;

    public PageMap(PageContent content)
    {
        foreach (var id in (string[])["decided", "contents", "measured", "figures", "inputs", "parameters", "software", "licences"])
            Anchors.Take("", id);
        foreach (var run in content.Runs)
        {
            _notebooks.Add(run.Path, Anchors.Take("notebook", Path.GetFileNameWithoutExtension(run.Path)));
            _titles.Add(run.Path, PageMarkdown.TitleOf(run.Document) ?? Path.GetFileNameWithoutExtension(run.Path));
        }

        foreach (var (_, result) in content.Findings.Kept)
            _results.Add(result.Id, Anchors.Take("result", result.Id));
        _inputs = [.. content.Findings.Inputs.Select(input => input.Path)];
    }

    public Anchors Anchors { get; } = new();

    public string Result(string id) => _results[id];

    public string Notebook(string path) => _notebooks[path];

    public string Title(string path) => _titles[path];

    /// <summary>A relative link of a notebook: to another notebook's section, to a published input, or nowhere.</summary>
    public string? Place(string notebook, string url)
    {
        var parts = new Stack<string>(Path.GetDirectoryName(notebook)!.Replace('\\', '/').Split('/'));
        foreach (var part in Uri.UnescapeDataString(url.Split('#', '?')[0]).Split('/'))
        {
            if (part is "" or ".")
                continue;
            if (part != "..")
                parts.Push(part);
            else if (!parts.TryPop(out _))
                return null;
        }

        var path = string.Join('/', parts.Reverse());
        return _notebooks.TryGetValue(path, out var section) ? "#" + section : _inputs.Contains(path) ? "inputs/" + string.Join('/', path.Split('/').Select(Uri.EscapeDataString)) : null;
    }
}
