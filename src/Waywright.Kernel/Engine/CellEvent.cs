using System.Text.Json.Nodes;
using System.Text.Json.Serialization;

namespace Waywright.Kernel;

/// <summary>What a running cell says, in the order in which it says it.</summary>
[JsonPolymorphic(TypeDiscriminatorPropertyName = "say")]
[JsonDerivedType(typeof(StreamWritten), "stream")]
[JsonDerivedType(typeof(ValueDisplayed), "display")]
[JsonDerivedType(typeof(DisplayUpdated), "update")]
[JsonDerivedType(typeof(ValueReturned), "result")]
internal abstract record CellEvent;

/// <summary>Text written to the console.</summary>
/// <param name="Name"><c>stdout</c> or <c>stderr</c>.</param>
/// <param name="Text">Line ends are kept; the pieces of one stream join without a gap.</param>
internal sealed record StreamWritten(string Name, string Text) : CellEvent;

/// <summary>A value shown before the cell's end.</summary>
/// <param name="DisplayId">What a later <see cref="DisplayUpdated"/> names it by.</param>
/// <param name="Data">MIME bundle, keys in ordinal order.</param>
internal sealed record ValueDisplayed(string? DisplayId, JsonObject Data) : CellEvent;

/// <summary>New data for a value shown earlier.</summary>
internal sealed record DisplayUpdated(string DisplayId, JsonObject Data) : CellEvent;

/// <summary>The value of the cell's last expression.</summary>
internal sealed record ValueReturned(JsonObject Data) : CellEvent;

/// <summary>The exception that ended the cell, or the reasons why it does not compile.</summary>
/// <param name="Name">Type of the exception, or <see cref="CellErrors.DoesNotCompile"/>.</param>
/// <param name="Value">Its message.</param>
/// <param name="Trace">Where it happened, a line each.</param>
internal sealed record CellFailed(string Name, string Value, IReadOnlyList<string> Trace);
