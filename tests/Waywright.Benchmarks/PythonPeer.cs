using System.Diagnostics;
using System.Globalization;

namespace Waywright.Benchmarks;

/// <summary>
/// A Python program that waits between turns: it answers one line for each line it is asked, so that its blocks alternate with ours in one run.
/// <c>versions</c> is answered by text, <c>answer NAME</c> by a number, <c>run NAME COUNT</c> by seconds.
/// </summary>
internal sealed class PythonPeer : IDisposable
{
    private const string Python = "/usr/bin/python3";

    private readonly Process _process;

    /// <param name="script">Beside the benchmark, under tests/Waywright.Benchmarks.</param>
    /// <param name="arguments">What the script is given.</param>
    public PythonPeer(string script, params string[] arguments)
    {
        if (!File.Exists(Python))
            throw new FileNotFoundException($"The peers run on Debian's Python: install python3-scipy and python3-pandas. Not found: {Python}");
        var start = new ProcessStartInfo(Python, [Path.Combine(Repository.Root, "tests", "Waywright.Benchmarks", script), .. arguments])
        {
            RedirectStandardInput = true,
            RedirectStandardOutput = true,
        };
        _process = Process.Start(start)!;
    }

    public string Ask(string question)
    {
        _process.StandardInput.WriteLine(question);
        _process.StandardInput.Flush();
        return _process.StandardOutput.ReadLine() ?? throw new InvalidOperationException($"The peer ended at '{question}'; its reason is on standard error.");
    }

    public double Answer(string name) => Number(Ask($"answer {name}"));

    public Contender Contender(string name, string title, string timed) => new(title, timed, count => Number(Ask(string.Create(CultureInfo.InvariantCulture, $"run {name} {count}"))));

    public void Dispose()
    {
        _process.StandardInput.Close();
        _process.WaitForExit();
        _process.Dispose();
    }

    private static double Number(string text) => double.Parse(text, CultureInfo.InvariantCulture);
}
