using System;
using System.Collections.Generic;
using System.Runtime.ExceptionServices;
using System.Threading;
using System.Threading.Tasks;

namespace Waywright;

/// <summary>The same work on many things, on all cores; what comes out doesn't depend on how many there are.</summary>
internal static class OnAllCores
{
    /// <summary>Results in the order of the things; where some fail, the first of them in that order is thrown as it is.</summary>
    public static TResult[] Select<T, TResult>(IReadOnlyList<T> things, Func<T, TResult> work, CancellationToken cancel, IProgress<double>? progress = null)
    {
        var (results, errors) = (new TResult[things.Count], new ExceptionDispatchInfo?[things.Count]);
        var done = 0;
        Parallel.For(0, results.Length, new ParallelOptions { CancellationToken = cancel }, i =>
        {
            try
            {
                results[i] = work(things[i]);
                progress?.Report((double)Interlocked.Increment(ref done) / results.Length);
            }
            catch (Exception error) when (error is not OperationCanceledException)
            {
                errors[i] = ExceptionDispatchInfo.Capture(error);
            }
        });
        foreach (var error in errors)
            error?.Throw();
        return results;
    }
}
