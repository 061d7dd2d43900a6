using System;
using System.Collections.Generic;
using System.Linq;

namespace Waywright;

/// <summary>
/// What an analysis of a build found, with everything that is needed to find it again: notebooks, inputs, parameters, figures.
/// The same analysis of the same inputs gives an equal record: nothing in it depends on the machine's folders or clock.
/// </summary>
public sealed record BuildRecord
{
    /// <summary>The first member's value in the JSON form, by which a record is known.</summary>
    public const string Format = "waywright build record 1";

    /// <summary>Makes a record; the lists are copied, and those whose order says nothing are sorted by ordinal.</summary>
    /// <param name="title">What the analysis is of.</param>
    /// <param name="date">The date that it is published under.</param>
    /// <param name="seed">The seed of its random numbers, if it names one.</param>
    /// <param name="licence">The licence it is published under; empty when none is stated.</param>
    /// <param name="parameters">Every parameter of every notebook with the value it had; sorted.</param>
    /// <param name="notebooks">In the order in which they ran.</param>
    /// <param name="inputs">Every file that was read; sorted.</param>
    /// <param name="decisions">What was decided, in the order of the notebooks.</param>
    /// <param name="figures">What was found, in the order of the notebooks.</param>
    /// <param name="software">What it was found with; sorted.</param>
    /// <exception cref="ArgumentException">An empty title; an input, a notebook, a decision or a figure twice.</exception>
    public BuildRecord(
        string title,
        DateOnly date,
        int? seed,
        string licence,
        IEnumerable<NotebookParameter> parameters,
        IEnumerable<RecordedNotebook> notebooks,
        IEnumerable<InputFile> inputs,
        IEnumerable<Decision> decisions,
        IEnumerable<Figure> figures,
        IEnumerable<SoftwareVersion> software)
    {
        Title = RecordText.Filled(title, nameof(title));
        Date = date;
        Seed = seed;
        Licence = licence ?? throw new ArgumentNullException(nameof(licence));
        Parameters = Sorted(parameters, p => $"{p.Notebook}\0{p.Name}", nameof(parameters));
        Notebooks = Unique(notebooks, n => n.Path, nameof(notebooks));
        Inputs = Sorted(inputs, i => i.Path, nameof(inputs));
        Decisions = Unique(decisions, d => d.Id, nameof(decisions));
        Figures = Unique(figures, f => f.Id, nameof(figures));
        Software = Sorted(software, s => s.Name, nameof(software));
    }

    /// <summary>What the analysis is of.</summary>
    public string Title { get; }

    /// <summary>The date that it is published under.</summary>
    public DateOnly Date { get; }

    /// <summary>The seed of its random numbers; null when it names none.</summary>
    public int? Seed { get; }

    /// <summary>The licence it is published under; empty when none is stated.</summary>
    public string Licence { get; }

    /// <summary>Parameters, sorted by notebook and name.</summary>
    public IReadOnlyList<NotebookParameter> Parameters { get; }

    /// <summary>Notebooks, in the order in which they ran.</summary>
    public IReadOnlyList<RecordedNotebook> Notebooks { get; }

    /// <summary>Files that were read, sorted by path.</summary>
    public IReadOnlyList<InputFile> Inputs { get; }

    /// <summary>What was decided.</summary>
    public IReadOnlyList<Decision> Decisions { get; }

    /// <summary>What was found.</summary>
    public IReadOnlyList<Figure> Figures { get; }

    /// <summary>What it was found with, sorted by name.</summary>
    public IReadOnlyList<SoftwareVersion> Software { get; }

    /// <summary>The record as JSON (its schema: docs/record.schema.json): sorted keys, two blanks of indent, LF, a line end at the end; equal records give equal texts.</summary>
    public string ToJson() => RecordJson.Write(this);

    /// <summary>Reads what <see cref="ToJson"/> wrote.</summary>
    /// <param name="json">The text.</param>
    /// <param name="source">What messages call it.</param>
    /// <exception cref="InputException">Not JSON, not such a record, or members that it can't have.</exception>
    public static BuildRecord Parse(string json, string source) => RecordReader.ReadRecord(json, source);

    private static FixedList<T> Sorted<T>(IEnumerable<T> items, Func<T, string> key, string parameter)
        => Unique(items.OrderBy(key, StringComparer.Ordinal), key, parameter);

    private static FixedList<T> Unique<T>(IEnumerable<T> items, Func<T, string> key, string parameter)
    {
        var list = FixedList<T>.Copy(items);
        var seen = new HashSet<string>(StringComparer.Ordinal);
        return list.FirstOrDefault(item => !seen.Add(key(item))) is { } twice
            ? throw new ArgumentException($"'{key(twice).Replace('\0', ' ')}' stands twice.", parameter)
            : list;
    }
}
