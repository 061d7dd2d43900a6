using System.Text.Json.Nodes;
using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp;

namespace Waywright.Kernel;

/// <summary>Whether a console front end should run what was typed, or wait for another line.</summary>
internal static class Completeness
{
    private static readonly CSharpParseOptions Script = new(LanguageVersion.Latest, DocumentationMode.None, SourceCodeKind.Script);

    public static JsonObject Of(string code)
    {
        var source = CellSource.Of(CarriedPackages.Blank(code, out _)).Code;
        var tree = CSharpSyntaxTree.ParseText(source, Script);
        if (!SyntaxFactory.IsCompleteSubmission(tree)) return new JsonObject { ["status"] = "incomplete", ["indent"] = Indent(source) };
        var isBroken = tree.GetDiagnostics().Any(found => found.Severity == DiagnosticSeverity.Error);
        return new JsonObject { ["status"] = isBroken ? "invalid" : "complete" };
    }

    // As the last line begins, and further in after an opening bracket.
    private static string Indent(string source)
    {
        var line = source[(source.LastIndexOf('\n') + 1)..];
        var begins = line[..(line.Length - line.TrimStart().Length)];
        return line.TrimEnd().EndsWith('{') ? begins + "    " : begins;
    }
}
