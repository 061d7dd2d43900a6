using System;
using System.Collections.Generic;
using System.Globalization;

namespace Waywright;

/// <summary>Reads records back, strictly: an unknown member, a missing one or a wrong type is a problem with its line and column.</summary>
internal static class RecordReader
{
    private const long MostBytes = 1L << 53;

    public static BuildRecord ReadRecord(string json, string source) => Read(json, source, root =>
    {
        root.OnlyMembers("date", "decisions", "figures", "format", "inputs", "licence", "notebooks", "parameters", "seed", "software", "title");
        root.OneOf("format", required: true, BuildRecord.Format);
        return new BuildRecord(
            Text(root, "title"),
            Date(root, "date"),
            (int?)root.Whole("seed", int.MinValue, int.MaxValue),
            Text(root, "licence"),
            List(root, "parameters", Parameter),
            List(root, "notebooks", Notebook),
            List(root, "inputs", Input),
            List(root, "decisions", Decision),
            List(root, "figures", Figure),
            List(root, "software", Software));
    });

    public static InputFile ReadInput(string json, string source) => Read(json, source, Input);

    public static KeptResult ReadKept(string json, string source) => Read(json, source, root =>
    {
        root.OnlyMembers("figures", "id", "text", "verdict");
        return new KeptResult(Text(root, "id"), Text(root, "verdict"), Text(root, "text"), List(root, "figures", Figure));
    });

    private static Figure Figure(JsonPlace place)
    {
        place.OnlyMembers("absoluteTolerance", "coverageFactor", "degreesOfFreedom", "high", "id", "low", "method", "name", "relativeTolerance", "standardUncertainty", "text", "unit", "value");
        return new Figure(
            Text(place, "id"),
            Text(place, "name"),
            Number(place, "value"),
            place.Text("text"),
            Text(place, "unit"),
            Number(place, "standardUncertainty"),
            Number(place, "degreesOfFreedom"),
            Number(place, "coverageFactor"),
            Number(place, "low"),
            Number(place, "high"),
            Text(place, "method"),
            Number(place, "relativeTolerance", required: true) ?? 0,
            Number(place, "absoluteTolerance", required: true) ?? 0);
    }

    private static InputFile Input(JsonPlace place)
    {
        place.OnlyMembers("bytes", "path", "sha256");
        return new InputFile(Text(place, "path"), Text(place, "sha256"), place.Whole("bytes", 0, MostBytes, required: true) ?? 0);
    }

    private static Decision Decision(JsonPlace place)
    {
        place.OnlyMembers("id", "notebook", "verdict");
        return new Decision(RecordText.Id(Text(place, "id"), "decisions"), NotebookPath(place, "notebook"), RecordText.Filled(Text(place, "verdict"), "decisions"));
    }

    private static RecordedNotebook Notebook(JsonPlace place)
    {
        place.OnlyMembers("path", "sourceSha256");
        return new RecordedNotebook(NotebookPath(place, "path"), RecordText.Sha256(Text(place, "sourceSha256"), "notebooks"));
    }

    private static NotebookParameter Parameter(JsonPlace place)
    {
        place.OnlyMembers("name", "notebook", "set", "type", "value");
        return new NotebookParameter(
            NotebookPath(place, "notebook"),
            RecordText.Id(Text(place, "name"), "parameters"),
            place.OneOf("type", required: true, "string", "double", "int", "bool") ?? "",
            Text(place, "value"),
            Flag(place, "set"));
    }

    private static SoftwareVersion Software(JsonPlace place)
    {
        place.OnlyMembers("name", "version");
        return new SoftwareVersion(RecordText.Filled(Text(place, "name"), "software"), RecordText.Filled(Text(place, "version"), "software"));
    }

    private static T Read<T>(string json, string source, Func<JsonPlace, T> read)
    {
        var problems = new ProblemList(source);
        var root = JsonPlace.Read(json, problems);
        try
        {
            var value = read(root);
            problems.ThrowIfAny();
            return value;
        }
        catch (ArgumentException e)
        {
            // What is missing or of the wrong type comes first: the constructors then complain of its stand-in.
            problems.ThrowIfAny();
            throw new InputException(new InputProblem(source, null, null, "a record that can't be: " + e.Message, "a record as Waywright wrote it"));
        }
    }

    private static string Text(JsonPlace place, string name) => place.Text(name, required: true) ?? "";

    // A record may come from anybody: a path in it must not lead out of the folder that it is read for.
    private static string NotebookPath(JsonPlace place, string name) => RecordText.RelativePath(Text(place, name), "notebooks");

    private static double? Number(JsonPlace place, string name, bool required = false) => place.Number(name, double.MinValue, double.MaxValue, required);

    private static bool Flag(JsonPlace place, string name)
    {
        if (place.Member(name, required: true) is not { } member)
            return false;
        if (member.Raw is not ("true" or "false"))
            member.Reject("true or false");
        return member.Raw == "true";
    }

    private static DateOnly Date(JsonPlace place, string name)
    {
        if (place.Text(name, required: true) is not { } text)
            return default;
        if (DateOnly.TryParseExact(text, "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out var date))
            return date;
        place.Member(name)!.Reject("a date such as 2027-03-01");
        return default;
    }

    private static List<T> List<T>(JsonPlace place, string name, Func<JsonPlace, T> read)
    {
        var items = new List<T>();
        if (place.Member(name, required: true) is not { } member)
            return items;
        if (member.Kind != System.Text.Json.JsonTokenType.StartArray)
            member.Reject("a list");
        foreach (var item in member.Items)
            items.Add(read(item));
        return items;
    }
}
