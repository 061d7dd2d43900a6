namespace Waywright.Notebooks;

/// <summary>The views of all result types, and the door to them for a plain C# file or the command.</summary>
public static class Views
{
    private static readonly Dictionary<Type, IView> ByType = typeof(Views).Assembly.GetTypes()
        .Where(t => typeof(IView).IsAssignableFrom(t) && t is { IsAbstract: false, IsInterface: false })
        .Select(t => (IView)Activator.CreateInstance(t)!)
        .ToDictionary(v => v.ResultType);

    internal static IEnumerable<IView> All => ByType.Values;

    /// <summary>The result in plain text: the verdict, then its table.</summary>
    /// <exception cref="ArgumentException">The type has no view.</exception>
    public static string Text(object result) => Of(result).Text(result);

    /// <summary>The result as an HTML fragment, as a cell shows it.</summary>
    /// <exception cref="ArgumentException">The type has no view.</exception>
    public static string Html(object result) => Of(result).Html(result);

    internal static IView? Find(Type type) => ByType.GetValueOrDefault(type.IsConstructedGenericType ? type.GetGenericTypeDefinition() : type);

    private static IView Of(object result)
    {
        ArgumentNullException.ThrowIfNull(result);
        return Find(result.GetType()) ?? throw new ArgumentException($"{result.GetType().Name} has no view.", nameof(result));
    }
}
