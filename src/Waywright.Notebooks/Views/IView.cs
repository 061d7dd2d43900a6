namespace Waywright.Notebooks;

/// <summary>How results of one type look: first the verdict with the action, then picture or table, then the details.</summary>
internal interface IView
{
    /// <summary>The type it shows.</summary>
    Type ResultType { get; }

    /// <summary>One sentence: the action, then the reason.</summary>
    string Verdict(object result);

    /// <summary>An HTML fragment under 30 kB.</summary>
    string Html(object result);

    /// <summary>The same in plain text: verdict, then a table.</summary>
    string Text(object result);

    /// <summary>What a record keeps.</summary>
    /// <param name="result">The result.</param>
    /// <param name="id">What it is kept under; the figures' ids begin with it.</param>
    IEnumerable<Figure> Figures(object result, string id);
}

/// <summary>A view of one type.</summary>
internal abstract class View<T> : IView
    where T : notnull
{
    public Type ResultType => typeof(T);

    public string Verdict(object result) => Verdict((T)result);

    public string Html(object result) => Html((T)result);

    public string Text(object result) => Text((T)result);

    public IEnumerable<Figure> Figures(object result, string id) => Figures((T)result, id);

    protected abstract string Verdict(T result);

    protected abstract string Html(T result);

    protected abstract string Text(T result);

    protected virtual IEnumerable<Figure> Figures(T result, string id) => [];
}
