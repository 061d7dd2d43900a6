using System.Collections.Generic;
using System.Linq;

namespace Waywright;

/// <summary>A batch after the cleaning chain, beside the batch as it was read and what each step did.</summary>
/// <param name="AsRead">Before.</param>
/// <param name="Batch">After: go on with this one.</param>
/// <param name="Options">What the chain was allowed to change.</param>
/// <param name="Steps">In their order: roll-over, sign, spikes, retrace, drift.</param>
public sealed record CleanedBatch(SweepBatch AsRead, SweepBatch Batch, CleaningOptions Options, IReadOnlyList<CleaningStep> Steps)
{
    /// <summary>Whether any reading was changed or dropped.</summary>
    public bool IsChanged => Steps.Any(s => s.Changed.Count > 0);

    /// <summary>The step of that name.</summary>
    /// <exception cref="System.ArgumentException">No such step.</exception>
    public CleaningStep this[string step] => Steps.FirstOrDefault(s => s.Name == step)
        ?? throw new System.ArgumentException($"No step '{step}': the chain has {string.Join(", ", Steps.Select(s => s.Name))}.", nameof(step));
}
