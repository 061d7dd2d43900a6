using CsCheck;
using Microsoft.CodeAnalysis.CSharp;
using Microsoft.CodeAnalysis.CSharp.Syntax;
using Waywright.Publishing;

namespace Waywright.Tests.Publishing;

public sealed class ParameterTests : IDisposable
{
    private readonly BuildFolder _build = new();

    public void Dispose() => _build.Dispose();

    [Fact]
    public void Declarations_with_literals_are_read_with_their_comments()
    {
        var read = Read("""
            // What the gantry needs.
            string limit = "30 um"; // of the side face
            double ratio = 0.5;
            double length = 180; int seed = -7;
            /* a note */ bool warm = true;
            var text = @"a ""b"" \c";
            var big = 1_000.5e3d;
            string escaped = "tab\t quote\" unit \u00b5m";
            """);
        Assert.Equal(
            [
                new("limit", "string", "30 um", "of the side face", false),
                new("ratio", "double", "0.5", "", false),
                new("length", "double", "180", "", false),
                new("seed", "int", "-7", "", false),
                new("warm", "bool", "true", "", false),
                new("text", "string", "a \"b\" \\c", "", false),
                new("big", "double", "1000500", "", false),
                new("escaped", "string", "tab\t quote\" unit µm", "", false),
            ],
            read);
    }

    [Theory]
    [InlineData("var x = DateTime.Now;", "cell 'c1':1:9: found 'DateTime.Now', expected a literal")]
    [InlineData("int x = 1.5;", "1:9: found '1.5', expected a whole number such as 12")]
    [InlineData("double x = 1,5;", "1:13: found ',5', expected ';'")]
    [InlineData("string x = 5;", "1:12: found '5', expected a text in quotes")]
    [InlineData("bool x = yes;", "1:10: found 'yes', expected true or false")]
    [InlineData("int x = true;", "1:9: found 'true', expected a whole number such as 12")]
    [InlineData("decimal x = 5;", "1:1: found 'decimal', expected a declaration of a string, double, int or bool with a literal")]
    [InlineData("const int x = 5;", "1:1: found 'const', expected a declaration")]
    [InlineData("int x = 5\nint y = 6;", "2:1: found 'int', expected ';'")]
    [InlineData("int x = 5; int x = 6;", "1:16: found 'x', expected each name once")]
    [InlineData("string x = \"open", "expected a closing quote")]
    [InlineData("string x = \"a\\q\";", "expected one of the escapes")]
    [InlineData("double x = 1e999;", "expected a number such as 12.5")]
    [InlineData("int x = 99999999999;", "expected a whole number such as 12")]
    [InlineData("Console.WriteLine();", "1:1: found 'Console.WriteLine()', expected")]
    public void Anything_else_in_the_parameters_cell_is_refused_with_its_place(string code, string message)
        => Assert.Contains(message, Assert.Throws<InputException>(() => Read(code)).Message, StringComparison.Ordinal);

    [Fact]
    public async Task A_name_that_no_notebook_declares_stops_before_a_cell_runs()
    {
        var (thrown, sessions) = await Refused(new() { ["limt"] = "25" });
        Assert.Equal("--set limt: found a name that no notebook declares, expected one of limit, seed, warm, wide", thrown.Message);
        Assert.Empty(sessions.Started);
        Assert.False(Directory.Exists(_build.Out));
    }

    [Theory]
    [InlineData("seed", "1.5", "--set seed: found '1.5', expected a whole number such as 12")]
    [InlineData("wide", "1,5", "--set wide: found '1,5', expected a number such as 12.5")]
    [InlineData("wide", "NaN", "--set wide: found 'NaN', expected a number such as 12.5")]
    [InlineData("wide", "1e999", "--set wide: found '1e999', expected a number such as 12.5")]
    [InlineData("warm", "yes", "--set warm: found 'yes', expected true or false")]
    [InlineData("warm", "True", "--set warm: found 'True', expected true or false")]
    public async Task A_value_of_the_wrong_type_stops_before_a_cell_runs(string name, string value, string message)
    {
        var (thrown, sessions) = await Refused(new() { [name] = value });
        Assert.Equal(message, thrown.Message);
        Assert.Empty(sessions.Started);
    }

    [Fact]
    public async Task Every_wrong_parameter_is_named_at_once()
        => Assert.Equal(2, (await Refused(new() { ["nope"] = "1", ["seed"] = "x" })).Thrown.Problems.Count);

    [Fact]
    public async Task A_set_parameter_is_assigned_behind_its_declaration_and_recorded()
    {
        Notebook();
        var codes = new List<string>();
        var sessions = new ScriptedSessions((_, code, _) =>
        {
            codes.Add(code);
            return Output.Done();
        });
        var result = await Publish(sessions, new() { ["limit"] = "25 um", ["wide"] = "2" });
        Assert.Equal(["c2", "injected-parameters", "c3"], sessions.Ran);
        Assert.Equal("limit = \"25 um\";\nwide = 2;", codes[1]);
        Assert.Equal(
            [
                new("notebooks/1.ipynb", "limit", "string", "25 um", true), new("notebooks/1.ipynb", "seed", "int", "7", false),
                new("notebooks/1.ipynb", "warm", "bool", "false", false), new("notebooks/1.ipynb", "wide", "double", "2", true),
            ],
            result.Record!.Parameters);
        Assert.Equal(7, result.Record.Seed);
    }

    // The compiler is the judge: whatever text is set, the injected statement is one assignment of exactly that text.
    [Theory]
    [InlineData("plain")]
    [InlineData("\"; System.Environment.Exit(1); //")]
    [InlineData("back\\slash \\\" \\n")]
    [InlineData("line\nend\r\u2028\u2029\u0085 null\0")]
    [InlineData("${x} {{y}} 𝛼 µ")]
    public void A_text_with_quotes_stays_a_text(string text) => CheckLiteral(text);

    [Fact]
    public void Any_text_stays_a_text() => Gen.String.Sample(CheckLiteral);

    [Fact]
    public async Task An_old_injected_cell_is_replaced()
    {
        Notebook();
        var sessions = new ScriptedSessions((_, _, _) => Output.Done());
        await Publish(sessions, new() { ["seed"] = "9" });
        File.Copy(Path.Combine(_build.Out, "notebooks", "1.ipynb"), Path.Combine(_build.Root, "notebooks", "1.ipynb"), overwrite: true);
        sessions.Ran.Clear();
        var result = await Publish(sessions, []);
        Assert.Equal(["c2", "c3"], sessions.Ran);
        Assert.Equal(7, result.Record!.Seed);
    }

    private static void CheckLiteral(string text)
    {
        var tree = CSharpSyntaxTree.ParseText(new Parameter("x", "string", text, "", true).ToAssignment(), new CSharpParseOptions(kind: Microsoft.CodeAnalysis.SourceCodeKind.Script), cancellationToken: TestContext.Current.CancellationToken);
        Assert.Empty(tree.GetDiagnostics(TestContext.Current.CancellationToken));
        var statement = Assert.Single(((CompilationUnitSyntax)tree.GetRoot(TestContext.Current.CancellationToken)).Members);
        var assignment = (AssignmentExpressionSyntax)((ExpressionStatementSyntax)((GlobalStatementSyntax)statement).Statement).Expression;
        Assert.Equal(text, ((LiteralExpressionSyntax)assignment.Right).Token.Value);
    }

    private async Task<(InputException Thrown, ScriptedSessions Sessions)> Refused(Dictionary<string, string> set)
    {
        Notebook();
        var sessions = new ScriptedSessions((_, _, _) => Output.Done());
        return (await Assert.ThrowsAsync<InputException>(() => Publish(sessions, set)), sessions);
    }

    private void Notebook() => _build.Notebook("1", "# One", "//#parameters\nstring limit = \"30 um\"; int seed = 7; bool warm = false; double wide = 1.5;", "code");

    private Task<PublishResult> Publish(ScriptedSessions sessions, Dictionary<string, string> set)
        => new Publisher(sessions.StartAsync, TimeProvider.System).PublishAsync(_build.Request() with { Set = set }, null, TestContext.Current.CancellationToken);

    private static IReadOnlyList<Parameter> Read(string code)
        => ParametersCell.Declared(NotebookDocument.Parse(BuildFolder.Notebook("//#parameters\n" + code).ToJsonString(), "book.ipynb"), "book.ipynb");
}
