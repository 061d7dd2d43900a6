using System.Reactive.Disposables;
using Microsoft.CodeAnalysis.CSharp.Scripting;
using Microsoft.CodeAnalysis.Scripting;
using Microsoft.DotNet.Interactive;
using Microsoft.DotNet.Interactive.Commands;
using Microsoft.DotNet.Interactive.CSharp;
using Microsoft.DotNet.Interactive.Events;
using Microsoft.DotNet.Interactive.PackageManagement;
using Microsoft.DotNet.Interactive.Utility;
using Waywright.Notebooks;

namespace Waywright.Kernel;

/// <summary>
/// The notebook engine in this process: cells share their variables and run one after another.
/// It takes over the process's console for good, so a process has one.
/// </summary>
internal sealed class CellEngine : IDisposable
{
    // Run before the first cell: what that cell would cost is mostly the compiler's own start.
    // It also mends the engine's 'display', which returns another value than the one that it shows, so that an Update of it shows a second output.
    // Full names: a using line here would hold in every cell.
    private const string Prelude = """
        static Microsoft.DotNet.Interactive.Formatting.DisplayedValue display(object value, params string[] mimeTypes) =>
            Microsoft.DotNet.Interactive.KernelInvocationContext.Current is { } cell
                ? Microsoft.DotNet.Interactive.KernelInvocationContextExtensions.Display(cell, value, mimeTypes)
                : DisplayExtensions.Display(value, mimeTypes);
        static Microsoft.DotNet.Interactive.Formatting.DisplayedValue Display(this object value, params string[] mimeTypes) => display(value, mimeTypes);
        Console.Write("");
        1
        """;

    private readonly CompositeKernel _root;
    private readonly CSharpKernel _csharp;
    private readonly CurrentCell _current = new();
    private readonly StopSource _stop = new();

    private CellEngine()
    {
        // The engine swaps the console whenever the number of its listeners leaves nought: one that stays keeps ours in place.
        ConsoleOutput.Subscribe(_ => Disposable.Empty);
        Console.SetOut(new CellConsole("stdout", _current));
        Console.SetError(new CellConsole("stderr", _current));
        Console.SetIn(new RefusedInput());

        _csharp = new CSharpKernel().UseNugetDirective(AddReferences).UseKernelHelpers().UseValueSharing();
        _csharp.AddAssemblyReferences(CarriedPackages.Assemblies
            .Select(name => Path.Combine(AppContext.BaseDirectory, $"{name}.dll"))
            .Where(File.Exists));
        _root = new CompositeKernel { _csharp };
        _root.DefaultKernelName = _csharp.Name;
        RefusedInput.Register(_root);
    }

    /// <summary>Starts the engine and runs a cell that nobody sees: most of what a first cell costs is the compiler's own start.</summary>
    public static async Task<CellEngine> StartAsync()
    {
        // The compiler starts while the engine composes itself: a quarter off on two cores.
        var compiler = Task.Run(() => CSharpScript.EvaluateAsync("1", CellLines.Set(ScriptOptions.Default, "start")));
        var engine = new CellEngine();
        await compiler;
        var failure = await engine.RunAsync(0, "prelude", Prelude, _ => { });
        if (failure is not null) throw new InvalidOperationException($"the notebook engine did not start: {failure.Value}");
        return engine;
    }

    /// <summary>Runs one cell to its end.</summary>
    /// <returns>The failure that ended it, not passed to the listener; null when it ran through.</returns>
    public async Task<CellFailed?> RunAsync(int number, string cellId, string code, Action<CellEvent> listener)
    {
        var source = CellSource.Of(CarriedPackages.Blank(code, out var mismatch));
        if (mismatch is not null) return new CellFailed("VersionMismatch", mismatch, [mismatch]);

        _current.Open(listener);
        StopSignal.Give(_stop.Begin(number));
        try
        {
            var failed = source.Directives.Length == 0 ? null : await SubmitAsync(cellId, source.Directives);
            failed ??= await SubmitAsync(cellId, source.Code);
            return failed is not null && _stop.IsStopped(number) ? CellErrors.WhenStopped(failed) : failed;
        }
        finally
        {
            _current.Close();
        }
    }

    /// <summary>Asks a cell, by <see cref="Notebook.Stop"/>, to end; from any thread.</summary>
    public void Stop(int number) => _stop.Stop(number);

    /// <summary>Tells what may stand at a place, or what stands there. Not while a cell runs.</summary>
    public async Task<SessionMessage> AnswerAsync(AskAbout asked)
    {
        var code = CellSource.Of(CarriedPackages.Blank(asked.Code, out _)).Code;
        var place = new LinePosition(asked.Line, asked.Column);
        if (asked.Question == Question.Complete)
        {
            var completed = await _root.SendAsync(new RequestCompletions(code, place, _csharp.Name));
            return new Completed([.. completed.Events.OfType<CompletionsProduced>().SelectMany(all => all.Completions).Select(one => new Suggestion(one.DisplayText, one.Kind))]);
        }

        var hovered = await _root.SendAsync(new RequestHoverText(code, place, _csharp.Name));
        return new Inspected(hovered.Events.OfType<HoverTextProduced>().FirstOrDefault() is { Content.Count: > 0 } found ? EngineEvents.Bundle(found.Content) : null);
    }

    public void Dispose()
    {
        _root.Dispose();
        _stop.Dispose();
    }

    private async Task<CellFailed?> SubmitAsync(string cellId, string code)
    {
        CellLines.Set(_csharp, cellId);
        using var events = _root.KernelEvents.Subscribe(new Listener(said =>
        {
            if (EngineEvents.Read(said) is { } known) _current.Say(known);
        }));
        var command = new SubmitCode(code, _csharp.Name);
        // Never cancelled by the engine: it would leave the cell running behind the next one.
        var result = await _root.SendAsync(command, CancellationToken.None);
        var failed = result.Events.OfType<CommandFailed>().LastOrDefault(one => one.Command == command);
        return failed is null ? null : CellErrors.Read(failed);
    }

    private static Task AddReferences(CSharpKernel kernel, IReadOnlyList<ResolvedPackageReference> packages)
    {
        kernel.AddAssemblyReferences(packages.SelectMany(package => package.AssemblyPaths));
        return Task.CompletedTask;
    }

    private sealed class Listener(Action<KernelEvent> said) : IObserver<KernelEvent>
    {
        public void OnCompleted()
        {
        }

        public void OnError(Exception error)
        {
        }

        public void OnNext(KernelEvent value) => said(value);
    }
}
