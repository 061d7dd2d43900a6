using Microsoft.DotNet.Interactive;
using Microsoft.DotNet.Interactive.Commands;

namespace Waywright.Kernel;

/// <summary>A cell that asks its reader for input is told why it gets none: what was typed would stand in no record.</summary>
internal sealed class RefusedInput : TextReader
{
    public const string Why = "A cell can't ask for input here, because a rerun could not answer: give the value in the notebook's parameters cell, or with --set.";

    public static void Register(CompositeKernel kernel)
    {
        kernel.RegisterCommandHandler<RequestInput>((command, context) => Refuse(command, context));
        kernel.RegisterCommandHandler<RequestInputs>((command, context) => Refuse(command, context));
    }

    public override int Peek() => throw new InvalidOperationException(Why);

    public override int Read() => throw new InvalidOperationException(Why);

    public override int Read(char[] buffer, int index, int count) => throw new InvalidOperationException(Why);

    public override string? ReadLine() => throw new InvalidOperationException(Why);

    public override string ReadToEnd() => throw new InvalidOperationException(Why);

    private static Task Refuse(KernelCommand command, KernelInvocationContext context)
    {
        context.Fail(command, message: Why);
        return Task.CompletedTask;
    }
}
