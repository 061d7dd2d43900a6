using System.Globalization;

namespace Waywright.Cli;

/// <summary>
/// How long the rest of some work takes if it goes on as before: at the mean of the rate of all that is done and the rate of its later half, since a first cell
/// starts compilers and a last one may simulate.
/// </summary>
internal sealed class TimeLeft(TimeProvider clock)
{
    private readonly long _began = clock.GetTimestamp();
    private readonly List<(double Seconds, double Share)> _told = [(0, 0)];

    public TimeSpan Elapsed => clock.GetElapsedTime(_began);

    /// <summary>The share that is done: never goes back.</summary>
    public double Share => _told[^1].Share;

    /// <summary>Notes that a share of the work is done; what is no number, less than before or above 1 is taken as what it can mean.</summary>
    public void Note(double share)
    {
        if (share > Share)
            _told.Add((Elapsed.TotalSeconds, Math.Min(share, 1)));
    }

    /// <summary>Null while nobody can know; never negative.</summary>
    public TimeSpan? Estimate()
    {
        var (at, share) = _told[^1];
        if (share <= 0 || at <= 0)
            return null;
        var whole = share / at;
        var (from, fromShare) = _told.Last(told => told.Seconds <= at / 2);
        var rate = (whole + ((share - fromShare) / (at - from))) / 2;
        // Since the last note more time has passed: what it took is gone.
        var seconds = ((1 - share) / rate) - (Elapsed.TotalSeconds - at);
        return TimeSpan.FromSeconds(Math.Clamp(seconds, 0, TimeSpan.FromDays(99).TotalSeconds));
    }

    /// <summary>As it is said: <c>about 20 s left</c>; empty while nobody can know.</summary>
    public string Words() => Estimate()?.TotalSeconds switch
    {
        null => "",
        < 5 => "a few seconds left",
        < 57.5 and var seconds => string.Create(CultureInfo.InvariantCulture, $"about {5 * Math.Round(seconds / 5):0} s left"),
        < 5400 and var seconds => string.Create(CultureInfo.InvariantCulture, $"about {Math.Round(seconds / 60):0} min left"),
        { } seconds => string.Create(CultureInfo.InvariantCulture, $"about {Math.Round(seconds / 3600):0} h left"),
    };
}
