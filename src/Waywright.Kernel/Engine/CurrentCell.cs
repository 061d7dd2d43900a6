namespace Waywright.Kernel;

/// <summary>
/// The cell that runs now, and where its events go.
/// A thread that an earlier cell left behind is told apart by its execution context: what it says is dropped.
/// </summary>
internal sealed class CurrentCell
{
    private readonly Lock _gate = new();
    private readonly AsyncLocal<int> _owner = new();
    private int _number;
    private Action<CellEvent>? _listener;

    /// <summary>Starts the next cell. Must be called in the execution context that the cell will run in.</summary>
    public void Open(Action<CellEvent> listener)
    {
        lock (_gate)
        {
            _owner.Value = ++_number;
            _listener = listener;
        }
    }

    /// <summary>Passes an event on, unless it comes from a cell that is over.</summary>
    public void Say(CellEvent said)
    {
        lock (_gate)
        {
            if (_owner.Value == 0 || _owner.Value == _number) _listener?.Invoke(said);
        }
    }

    /// <summary>Ends the cell: nothing is passed on until the next one.</summary>
    public void Close()
    {
        lock (_gate) _listener = null;
    }
}
