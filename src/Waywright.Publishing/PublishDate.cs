using System.Globalization;

namespace Waywright.Publishing;

/// <summary>The date that a build is published under.</summary>
public static class PublishDate
{
    /// <summary>The date asked for, else that of SOURCE_DATE_EPOCH (seconds since 1970-01-01 UTC, as reproducible builds use it), else none.</summary>
    /// <param name="asked">Year, month, day, such as <c>2027-03-01</c>; null when not given.</param>
    /// <param name="sourceDateEpoch">The environment variable's text; null or empty when not set.</param>
    /// <exception cref="InputException">Neither form.</exception>
    public static DateOnly? Choose(string? asked, string? sourceDateEpoch)
    {
        if (asked is not null)
        {
            return DateOnly.TryParseExact(asked, "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out var date)
                ? date
                : throw Problem("--date", asked, "a date such as 2027-03-01");
        }

        if (string.IsNullOrEmpty(sourceDateEpoch))
            return null;
        const long last = 253_402_300_799; // 9999-12-31T23:59:59Z
        return long.TryParse(sourceDateEpoch, NumberStyles.None, CultureInfo.InvariantCulture, out var seconds) && seconds <= last
            ? DateOnly.FromDateTime(DateTimeOffset.FromUnixTimeSeconds(seconds).UtcDateTime)
            : throw Problem("SOURCE_DATE_EPOCH", sourceDateEpoch, "whole seconds since 1970-01-01");
    }

    private static InputException Problem(string source, string found, string expected) => new(new InputProblem(source, null, null, $"'{found}'", expected));
}
