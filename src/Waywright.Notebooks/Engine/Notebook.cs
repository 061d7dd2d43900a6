using System.Globalization;
using System.Security.Cryptography;

namespace Waywright.Notebooks;

/// <summary>What a notebook calls: start, open data, keep a result for the record.</summary>
public static class Notebook
{
    /// <summary>
    /// Cancelled when the reader asks the running cell to stop: pass it to whatever takes long, as in <c>MonteCarlo.Run(..., cancel: Notebook.Stop)</c>,
    /// or call <c>Notebook.Stop.ThrowIfCancellationRequested()</c> in a loop. A cell that never looks at it can only be ended with all variables.
    /// Never cancelled in a plain C# file.
    /// </summary>
    public static CancellationToken Stop => StopSignal.Current;

    /// <summary>
    /// First call of every notebook: figures are written the same in every language setting, and results, charts and frames are shown as Waywright shows them.
    /// In a plain C# file it sets the culture and nothing else.
    /// </summary>
    public static void Start()
    {
        CultureInfo.CurrentCulture = CultureInfo.CurrentUICulture = CultureInfo.InvariantCulture;
        CultureInfo.DefaultThreadCurrentCulture = CultureInfo.DefaultThreadCurrentUICulture = CultureInfo.InvariantCulture;
        ResultFormatters.Register();
        ResultFormatters.StyleCharts();
    }

    /// <summary>Opens a data file of the build: notes its path and SHA-256 in the notebook's outputs, so that the published build holds a copy, and gives the path back.</summary>
    /// <param name="path">Relative to the notebook's folder; within the build folder (the one that holds <c>notebooks/</c>).</param>
    /// <exception cref="InputException">No such file, or it lies outside the build folder, where a published build could not carry it.</exception>
    public static string Data(string path)
    {
        ArgumentException.ThrowIfNullOrWhiteSpace(path);
        var full = Path.GetFullPath(path);
        var name = BuildFolder.NameOf(full);
        if (name is null)
            throw new InputException(new InputProblem(path, null, null, "a file outside the build folder", "a file beside or below the folder that holds the notebooks, so that it can be published with them"));
        if (!File.Exists(full))
            throw new InputException(new InputProblem(path, null, null, Directory.Exists(full) ? "a folder" : "no such file", "the path of an existing file, seen from the notebook's folder"));
        byte[] bytes;
        try
        {
            bytes = File.ReadAllBytes(full);
        }
        catch (UnauthorizedAccessException)
        {
            throw new InputException(new InputProblem(path, null, null, "a file that may not be read", "read permission"));
        }

        EngineBridge.Display(new InputFile(name, Convert.ToHexStringLower(SHA256.HashData(bytes)), bytes.LongLength), OutputTypes.Input, "text/plain");
        return path;
    }

    /// <summary>Keeps a result's figures for the record of the build; the only door into it. Returns the result, so that a cell can end with it and show it.</summary>
    /// <param name="id">A path-like name, unique in the build: <c>belts/left</c>.</param>
    /// <param name="result">Any result of the library.</param>
    /// <exception cref="InputException">The id is not lower-case words, digits and dashes, separated by slashes.</exception>
    /// <exception cref="ArgumentException">The type is no result that has figures, or a figure's rerun tolerance is more than a tenth of its standard uncertainty.</exception>
    public static T Keep<T>(string id, T result)
        where T : notnull
    {
        ArgumentNullException.ThrowIfNull(id);
        if (!OutputTypes.IsId(id))
            throw new InputException(new InputProblem("Notebook.Keep", null, null, $"the id '{id}'", "lower-case letters, digits and dashes, parts separated by '/', such as belts/left"));
        EngineBridge.Display(OutputTypes.Keep(id, result), OutputTypes.Figures, "text/plain");
        return result;
    }
}
