using System;
using System.Threading;
using System.Threading.Tasks;

namespace Waywright;

/// <summary>How often each station touches the minimum zone when errors are added to the heights.</summary>
internal static class ContactTrials
{
    /// <summary>The share of simulations for each station.</summary>
    public static double[] Shares(Profile profile, ErrorTrials trials, CancellationToken cancel)
    {
        var z = trials.Stations.Residuals(profile.Heights);
        var counts = new int[profile.Count];
        var gate = new Lock();
        Parallel.For(0, trials.Trials, new ParallelOptions { CancellationToken = cancel }, () => new Counter(trials.Stations), (t, _, counter) =>
        {
            counter.Count(z, trials.All(t));
            return counter;
        }, counter =>
        {
            lock (gate)
            {
                for (var i = 0; i < counts.Length; i++)
                    counts[i] += counter.Counts[i];
            }
        });
        return Array.ConvertAll(counts, c => (double)c / trials.Trials);
    }

    private sealed class Counter(PreparedStations stations)
    {
        private readonly double[] _sum = new double[stations.Padded];

        public int[] Counts { get; } = new int[stations.Count];

        public void Count(ReadOnlySpan<double> z, ReadOnlySpan<double> e)
        {
            for (var i = 0; i < _sum.Length; i++)
                _sum[i] = z[i] + e[i];
            var zone = ZoneKernel.Solve(stations.Axis, _sum);
            ReadOnlySpan<int> touching = [zone.Falling.Upper, zone.Falling.Lower, zone.Rising.Upper, zone.Rising.Lower];
            for (var k = 0; k < touching.Length; k++)
            {
                if (!touching[..k].Contains(touching[k]))
                    Counts[touching[k]]++;
            }
        }
    }
}
