namespace Waywright.Notebooks;

/// <summary>Opens what a builder fills in, sheet by sheet: what rests on an empty one says what is missing instead of failing.</summary>
public static class Sheet
{
    /// <summary>Reads a data file of the build where it is filled, and notes it as <see cref="Notebook.Data"/> does, empty or not; else names it as missing.</summary>
    /// <param name="path">Relative to the notebook's folder. A table with a header and no rows is empty; a JSON document whose note begins with <c>To do:</c> is not yet edited.</param>
    /// <param name="read">Its reader, such as <c>RailStock.Read</c>.</param>
    /// <exception cref="InputException">The file is filled and its reader refuses it, or lies outside the build folder.</exception>
    public static Sheet<T> Read<T>(string path, Func<string, T> read)
        where T : notnull
    {
        ArgumentException.ThrowIfNullOrWhiteSpace(path);
        ArgumentNullException.ThrowIfNull(read);
        var state = SheetText.Noted(path);
        return state.IsFilled ? new(read(path), []) : new(default, [state.Name]);
    }

    /// <summary>Takes parameters that a builder has to set: texts that are not empty.</summary>
    /// <param name="todo">What to measure or write, named as in the parameters cell.</param>
    /// <param name="texts">The parameters' values.</param>
    public static Sheet<IReadOnlyList<string>> Answers(string todo, params IReadOnlyList<string> texts)
    {
        ArgumentException.ThrowIfNullOrWhiteSpace(todo);
        ArgumentNullException.ThrowIfNull(texts);
        return texts.Any(string.IsNullOrWhiteSpace) ? new(default, [Sentence(todo)]) : new([.. texts], []);
    }

    // What ends with a full stop is a sentence, what doesn't a sheet's name.
    internal static string Sentence(string todo) => todo.EndsWith('.') ? todo : todo + ".";
}

/// <summary>A value that stands once its sheets are filled; until then, what is missing for it.</summary>
/// <typeparam name="T">Of the value.</typeparam>
public sealed class Sheet<T> : ISheet
    where T : notnull
{
    private readonly T? _value;

    internal Sheet(T? value, IReadOnlyList<string> missing) => (_value, Missing) = (value, missing);

    /// <summary>The sheets that have to be filled first, by name, and what else is to be done, in sentences; none where the value stands.</summary>
    public IReadOnlyList<string> Missing { get; }

    /// <summary>Whether the value stands.</summary>
    public bool IsFilled => Missing.Count == 0;

    /// <summary>The value, or null: for what can do without.</summary>
    public T? OrNull => IsFilled ? _value : default;

    object? ISheet.Value => IsFilled ? _value : null;

    /// <summary>Goes on with the value where it stands.</summary>
    public Sheet<TNext> Then<TNext>(Func<T, TNext> go)
        where TNext : notnull
    {
        ArgumentNullException.ThrowIfNull(go);
        return IsFilled ? new(go(_value!), []) : new(default, Missing);
    }

    /// <summary>Goes on with two values where both stand.</summary>
    public Sheet<TNext> Then<TOther, TNext>(Sheet<TOther> other, Func<T, TOther, TNext> go)
        where TOther : notnull
        where TNext : notnull
    {
        ArgumentNullException.ThrowIfNull(other);
        ArgumentNullException.ThrowIfNull(go);
        return IsFilled && other.IsFilled ? new(go(_value!, other._value!), []) : new(default, [.. Missing.Union(other.Missing)]);
    }

    /// <summary>Goes on only where the value holds enough; else says what to do.</summary>
    public Sheet<T> Needs(Func<T, bool> enough, string todo)
    {
        ArgumentNullException.ThrowIfNull(enough);
        ArgumentException.ThrowIfNullOrWhiteSpace(todo);
        return !IsFilled || enough(_value!) ? this : new(default, [Sheet.Sentence(todo)]);
    }

    /// <summary>Keeps the value for the record where it stands, as <see cref="Notebook.Keep"/> does.</summary>
    public Sheet<T> Keep(string id)
    {
        if (IsFilled)
            Notebook.Keep(id, _value!);
        return this;
    }
}

/// <summary>A sheet of any type, for those who show it.</summary>
internal interface ISheet
{
    object? Value { get; }

    IReadOnlyList<string> Missing { get; }
}
