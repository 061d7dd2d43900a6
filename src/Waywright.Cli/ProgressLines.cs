using Waywright.Publishing;

namespace Waywright.Cli;

/// <summary>Progress as plain lines on standard error: one for each notebook, and on a terminal the running cell in place.</summary>
internal sealed class ProgressLines(TextWriter writer) : IProgress<PublishProgress>
{
    private readonly bool _inPlace = !Console.IsErrorRedirected;
    private string _notebook = "";

    public void Report(PublishProgress value)
    {
        if (value.Notebook != _notebook)
        {
            if (_inPlace && _notebook.Length > 0)
                writer.WriteLine();
            _notebook = value.Notebook;
            if (!_inPlace)
                writer.WriteLine($"running {value.Notebook} ({value.NotebookNumber} of {value.NotebookCount}), {value.CellCount} cells");
        }

        if (_inPlace)
            writer.Write($"\rrunning {value.Notebook} ({value.NotebookNumber} of {value.NotebookCount}), cell {value.CellNumber} of {value.CellCount} ");
        if (_inPlace && value.NotebookNumber == value.NotebookCount && value.CellNumber == value.CellCount)
            writer.WriteLine();
    }
}
