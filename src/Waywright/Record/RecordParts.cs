using System;
using System.Collections.Generic;
using System.Linq;

namespace Waywright;

/// <summary>A file that an analysis read, as it was when it was read.</summary>
public sealed record InputFile
{
    /// <summary>Names a file by path and content.</summary>
    /// <param name="path">Relative to the build folder, forward slashes, no <c>..</c>.</param>
    /// <param name="sha256">SHA-256 of its bytes, 64 lower-case hexadecimal digits (FIPS 180-4).</param>
    /// <param name="bytes">Its length, 0 or more.</param>
    /// <exception cref="ArgumentException">One of these is not of that form.</exception>
    public InputFile(string path, string sha256, long bytes)
    {
        Path = RecordText.RelativePath(path, nameof(path));
        Sha256 = RecordText.Sha256(sha256, nameof(sha256));
        Bytes = bytes >= 0 ? bytes : throw new ArgumentException("A file has 0 bytes or more.", nameof(bytes));
    }

    /// <summary>Relative to the build folder, forward slashes.</summary>
    public string Path { get; }

    /// <summary>SHA-256 of its bytes, lower-case hexadecimal.</summary>
    public string Sha256 { get; }

    /// <summary>Its length.</summary>
    public long Bytes { get; }

    /// <summary>One object as JSON, as a cell's output carries it.</summary>
    public string ToJson() => RecordJson.Write(this);

    /// <summary>Reads what <see cref="ToJson"/> wrote.</summary>
    /// <exception cref="InputException">Not such an object.</exception>
    public static InputFile Parse(string json, string source) => RecordReader.ReadInput(json, source);
}

/// <summary>A result that a cell keeps: its verdict in one sentence, the same as plain text, and its figures.</summary>
public sealed record KeptResult
{
    /// <summary>Keeps a result under an id.</summary>
    /// <param name="id">Unique in a build, such as <c>belts/left</c>.</param>
    /// <param name="verdict">One sentence with the action first.</param>
    /// <param name="text">The result as plain text; may have several lines.</param>
    /// <param name="figures">Its figures, copied; no id twice.</param>
    /// <exception cref="ArgumentException">An id with blanks, an empty verdict, a figure's id twice.</exception>
    public KeptResult(string id, string verdict, string text, IEnumerable<Figure> figures)
    {
        Id = RecordText.Id(id, nameof(id));
        Verdict = RecordText.Filled(verdict, nameof(verdict));
        Text = text ?? throw new ArgumentNullException(nameof(text));
        Figures = FixedList<Figure>.Copy(figures);
        if (Figures.DistinctBy(f => f.Id).Count() != Figures.Count)
            throw new ArgumentException($"Two figures of '{id}' have the same id.", nameof(figures));
    }

    /// <summary>Unique in a build.</summary>
    public string Id { get; }

    /// <summary>One sentence with the action first.</summary>
    public string Verdict { get; }

    /// <summary>The result as plain text.</summary>
    public string Text { get; }

    /// <summary>Its figures.</summary>
    public IReadOnlyList<Figure> Figures { get; }

    /// <summary>One object as JSON, as a cell's output carries it.</summary>
    public string ToJson() => RecordJson.Write(this);

    /// <summary>Reads what <see cref="ToJson"/> wrote.</summary>
    /// <exception cref="InputException">Not such an object.</exception>
    public static KeptResult Parse(string json, string source) => RecordReader.ReadKept(json, source);
}

/// <summary>What a kept result decided.</summary>
/// <param name="Id">The result's id.</param>
/// <param name="Notebook">The notebook that kept it.</param>
/// <param name="Verdict">One sentence with the action first.</param>
public sealed record Decision(string Id, string Notebook, string Verdict);

/// <summary>A notebook of an analysis.</summary>
/// <param name="Path">In the published folder, such as <c>notebooks/rails.ipynb</c>.</param>
/// <param name="SourceSha256">SHA-256 of the notebook without outputs, counts and set parameters, in the form it is published in: the same before and after a run.</param>
public sealed record RecordedNotebook(string Path, string SourceSha256);

/// <summary>A parameter of a notebook and the value it ran with.</summary>
/// <param name="Notebook">The notebook's path in the published folder.</param>
/// <param name="Name">Its name in the parameters cell.</param>
/// <param name="Type"><c>string</c>, <c>double</c>, <c>int</c> or <c>bool</c>.</param>
/// <param name="Value">Its value, numbers in invariant form.</param>
/// <param name="IsSet">Set for this run; otherwise the notebook's own.</param>
public sealed record NotebookParameter(string Notebook, string Name, string Type, string Value, bool IsSet);

/// <summary>A program or package that took part.</summary>
public sealed record SoftwareVersion(string Name, string Version);
