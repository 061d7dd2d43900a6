namespace Waywright.Publishing;

/// <summary>The parameters of one notebook: declared in the cell tagged <c>parameters</c>, set by a cell that a run adds behind it.</summary>
internal static class ParametersCell
{
    /// <summary>What a notebook declares; empty without such a cell.</summary>
    /// <exception cref="InputException">Two such cells, or something else in it than declarations with literals.</exception>
    public static IReadOnlyList<Parameter> Declared(NotebookDocument notebook, string source)
    {
        var cells = notebook.Cells.Where(cell => cell.IsCode && cell.Has(NotebookCell.ParametersTag)).ToList();
        if (cells.Count > 1)
            throw new InputException(new InputProblem(source, null, null, "two cells tagged 'parameters'", "one"));
        return cells.Count == 0 ? [] : new DeclarationReader(cells[0].Source, $"{source}, cell '{cells[0].Id}'").Read();
    }

    /// <summary>Gives each set parameter its value and leaves the others; notes names that no notebook declares and values of the wrong type.</summary>
    /// <param name="declared">By notebook, in order.</param>
    /// <param name="set">Name and value text.</param>
    /// <exception cref="InputException">Lists every name and value that can't be set.</exception>
    public static IReadOnlyList<IReadOnlyList<Parameter>> Apply(IReadOnlyList<IReadOnlyList<Parameter>> declared, IReadOnlyDictionary<string, string> set)
    {
        var known = declared.SelectMany(d => d).Select(p => p.Name).Distinct().Order(StringComparer.Ordinal).ToList();
        var problems = set.Keys.Where(name => !known.Contains(name))
            .Select(name => new InputProblem($"--set {name}", null, null, $"a name that no notebook declares", known.Count == 0 ? "no --set: these notebooks have no parameters" : $"one of {string.Join(", ", known)}"))
            .ToList();
        var applied = declared.Select(list => (IReadOnlyList<Parameter>)[.. list.Select(p => Apply(p, set, problems))]).ToList();
        return problems.Count == 0 ? applied : throw new InputException(problems.Distinct());
    }

    /// <summary>Adds the cell that sets the parameters of a run; none when nothing is set.</summary>
    public static void Inject(NotebookDocument notebook, IReadOnlyList<Parameter> parameters)
    {
        var assignments = parameters.Where(p => p.IsSet).Select(p => p.ToAssignment()).ToList();
        if (assignments.Count == 0)
            return;
        var at = notebook.Cells.Index().Single(cell => cell.Item.IsCode && cell.Item.Has(NotebookCell.ParametersTag)).Index;
        notebook.InsertAfter(at, NotebookCell.Injected(string.Join('\n', assignments)));
    }

    private static Parameter Apply(Parameter parameter, IReadOnlyDictionary<string, string> set, List<InputProblem> problems)
    {
        if (!set.TryGetValue(parameter.Name, out var text))
            return parameter;
        var (applied, expected) = parameter.With(text);
        if (applied is null)
            problems.Add(new InputProblem($"--set {parameter.Name}", null, null, $"'{text}'", expected));
        return applied ?? parameter;
    }
}
