using System.Globalization;
using System.Linq;

namespace Waywright;

/// <summary>What the drag adds to a rail's answer.</summary>
internal static class DragAnswer
{
    /// <summary>A return: a place that stays with the rail whichever way and with whatever carriage it is gone over.</summary>
    public static GradeAnswer? Bound(RailDrag? drag)
        => drag?.Places.FirstOrDefault(p => p.Cause == DragCause.Rail) is { } place
            ? new(GradedBatch.Return, $"It binds at {place.Where}: {Times(place)} the usual drag, and the place stays with the rail ({place.Seen}).", $"{place.Next} Keep the log as the proof.")
            : null;

    /// <summary>The answer by straightness, with what the drag leaves open.</summary>
    public static GradeAnswer Beside(GradeAnswer answer, RailDrag? drag)
    {
        if (drag is null || answer.Grade == GradedBatch.Return)
            return answer;
        if (drag.Open.Count > 0)
        {
            var (place, next) = (drag.Open[0], string.Join(" ", drag.Open.Select(p => p.Next)));
            return answer.Grade == GradedBatch.MeasureAgain
                ? answer with { Next = $"{answer.Next} {next}" }
                : new(GradedBatch.MeasureAgain, $"At {place.Where} a carriage takes {Times(place)} the usual drag ({place.Seen}); whether the rail or the carriage binds is not proven.", next);
        }

        var beside = drag.Places.Where(p => p.Cause is DragCause.Carriage or DragCause.Direction).Select(p => p.Next).Where(n => !answer.Next.Contains(n[1..], System.StringComparison.Ordinal));
        return answer with { Next = string.Join(" ", beside.Prepend(answer.Next)) };
    }

    private static string Times(DragPlace place) => string.Create(CultureInfo.InvariantCulture, $"{place.PeakRatio:0.0} times");
}
