using Waywright.Kernel;

namespace Waywright.EndToEnd.Sessions;

/// <summary>A library that a cell uses can register views and show values although it does not reference the engine.</summary>
public sealed class FormatterDoorTests(SharedSession shared) : IClassFixture<SharedSession>
{
    private const string Door = """
        using System.IO;
        static class Door
        {
            const string Engine = "Microsoft.DotNet.Interactive.Formatting";
            static readonly Type Formatter = Type.GetType($"{Engine}.Formatter, {Engine}");
            static readonly Type Displays = Type.GetType($"System.DisplayExtensions, {Engine}");

            public static void Register(Type type, string mimeType, Action<object, TextWriter> write) =>
                Formatter?.GetMethod("Register", new[] { typeof(Type), typeof(Action<object, TextWriter>), typeof(string) }).Invoke(null, new object[] { type, write, mimeType });

            public static void Prefer(Type type, params string[] mimeTypes) =>
                Formatter?.GetMethod("SetPreferredMimeTypesFor").Invoke(null, new object[] { type, mimeTypes });

            public static void Show(object value, params string[] mimeTypes) =>
                Displays?.GetMethod("Display", new[] { typeof(object), typeof(string[]) }).Invoke(null, new object[] { value, mimeTypes });
        }
        interface IResult { double Value { get; } }
        record Bow(double Value) : IResult;
        Door.Register(typeof(IResult), "text/html", (value, to) => to.Write($"<b>{((IResult)value).Value}</b>"));
        Door.Register(typeof(IResult), "text/plain", (value, to) => to.Write(((IResult)value).Value));
        Door.Register(typeof(IResult), "application/vnd.waywright.figures+json", (value, to) => to.Write($"{{\"value\":{((IResult)value).Value}}}"));
        Door.Prefer(typeof(IResult), "text/html", "text/plain");
        """;

    private readonly ICellSession _session = shared.Session;

    [Fact]
    public async Task A_returned_value_and_a_shown_one_carry_their_types()
    {
        var run = await _session.RunAsync($"{Door}\nDoor.Show(new Bow(2.5), \"text/html\", \"application/vnd.waywright.figures+json\");\nnew Bow(1.5)");
        Assert.Equal(CellOutcome.Done, run.Outcome);
        Assert.Equal(
            ["""{"application/vnd.waywright.figures+json":{"value":2.5},"text/html":"<b>2.5</b>"}""", """{"text/html":"<b>1.5</b>","text/plain":"1.5"}"""],
            run.Outputs.Select(output => System.Text.RegularExpressions.Regex.Unescape(output["data"]!.ToJsonString())));
    }

    [Fact]
    public async Task The_running_cell_is_found_by_name()
    {
        var run = await _session.RunAsync("""
            var context = Type.GetType("Microsoft.DotNet.Interactive.KernelInvocationContext, Microsoft.DotNet.Interactive");
            Console.Write(context.GetProperty("Current").GetValue(null) is not null);
            """);
        Assert.Equal("True", run.Stdout());
    }
}
