using System.Globalization;

namespace Waywright;

/// <summary>What was said of an instrument's errors.</summary>
internal readonly record struct InstrumentErrors(double? PermissibleError, DialLimits? Dial, double Repeatability, double DegreesOfFreedom, double Retrace, CalibrationLine? Check);

/// <summary>Collects what can't be true of an instrument.</summary>
internal sealed class InstrumentProblems(string source)
{
    private readonly ProblemList _problems = new(source);

    public void ThrowIfAny() => _problems.ThrowIfAny();

    public void Text(string field, string? text, string expected)
    {
        if (string.IsNullOrWhiteSpace(text))
            Add($"no {field}", expected);
    }

    public void Positive(string field, double value)
    {
        if (!double.IsFinite(value) || value <= 0)
            Add($"{field} {Shown(value)}", "a number above 0");
    }

    public void NotNegative(string field, double? value)
    {
        if (value is { } number && (!double.IsFinite(number) || number < 0))
            Add($"{field} {Shown(number)}", "a number of 0 or more");
    }

    public void DegreesOfFreedom(double value)
    {
        if (value is not >= 1)
            Add($"degrees of freedom {Shown(value)}", "1 or more: repeats less 1");
    }

    public ReadTo Reading(string? text)
    {
        switch (text)
        {
            case "whole": return ReadTo.Whole;
            case "half": return ReadTo.Half;
            case "tenth": return ReadTo.Tenth;
            default:
                Add($"read to {ProblemList.Shown(text)}", "whole, half or tenth");
                return ReadTo.Whole;
        }
    }

    public void Dial(DialLimits? dial, string? unit, double? permissibleError)
    {
        if (dial is null)
            return;
        if (unit != "um" && !string.IsNullOrWhiteSpace(unit))
            Add($"unit {ProblemList.Shown(unit)}", "um, the unit of a dial's limits");
        if (permissibleError is not null)
            Add("a dial's limits and a permissible error", "one of them");
        Positive("travel of one turn", dial.TurnUm);
        NotNegative("limit over a tenth of a turn", dial.TenthTurnUm);
        NotNegative("limit over half a turn", dial.HalfTurnUm);
        NotNegative("limit over one turn", dial.OneTurnUm);
        NotNegative("limit over the whole range", dial.FullRangeUm);
        NotNegative("retrace of the dial", dial.RetraceUm);
        NotNegative("repeatability of the dial", dial.RepeatabilityUm);
        if (dial.TenthTurnUm > dial.HalfTurnUm || dial.HalfTurnUm > dial.OneTurnUm || dial.OneTurnUm > dial.FullRangeUm)
            Add("a dial's limit that is larger over less travel", "limits that grow with the travel");
    }

    public void Check(CalibrationLine? check)
    {
        if (check is { HasProvenSlope: false })
            Add("a check whose slope is not proven to differ from 0", "a check against values further apart");
    }

    private void Add(string found, string expected) => _problems.Add(null, null, found, expected);

    private static string Shown(double value) => double.IsFinite(value) ? NumberText.Plain(value) : value.ToString(CultureInfo.InvariantCulture);
}
