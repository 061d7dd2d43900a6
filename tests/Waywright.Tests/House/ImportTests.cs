using System.Xml.Linq;
using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp;
using Microsoft.CodeAnalysis.CSharp.Syntax;

namespace Waywright.Tests;

public class ImportTests
{
    // Who may name whom, literally. The root holds plumbing that every room may use and that uses none.
    private static readonly Dictionary<string, string[]> Rooms = new()
    {
        [""] = [],
        ["Reading"] = [],
        ["Beams"] = [],
        ["Measurement"] = ["Reading"],
        ["Parts"] = ["Reading", "Measurement"],
        ["Straightness"] = ["Measurement"],
        ["Sweeps"] = ["Reading", "Parts", "Beams", "Straightness", "Measurement"],
        ["Mounting"] = ["Parts", "Beams", "Straightness", "Reading", "Measurement"],
        ["Grading"] = ["Sweeps", "Mounting", "Reading", "Parts", "Beams", "Straightness", "Measurement"],
        ["Belts"] = ["Reading", "Measurement", "Parts"],
        ["Assembly"] = ["Reading", "Measurement", "Parts"],
        ["Record"] = ["Reading", "Measurement"],
    };

    private static readonly Dictionary<string, string[]> Projects = new()
    {
        ["Waywright"] = [],
        ["Waywright.Placement"] = ["Waywright"],
        ["Waywright.Notebooks"] = ["Waywright.Placement"],
        ["Waywright.Kernel"] = ["Waywright.Notebooks"],
        ["Waywright.Publishing"] = ["Waywright.Kernel"],
        ["Waywright.Cli"] = ["Waywright.Publishing"],
    };

    [Fact]
    public void Each_room_of_the_library_names_only_the_rooms_it_may()
    {
        var library = Repository.PathOf("src", "Waywright");
        var options = new CSharpParseOptions(LanguageVersion.Preview);
        var trees = Directory.EnumerateFiles(library, "*.cs", SearchOption.AllDirectories)
            .Select(path => CSharpSyntaxTree.ParseText(File.ReadAllText(path), options, path))
            .ToArray();
        var references = ((string)AppContext.GetData("TRUSTED_PLATFORM_ASSEMBLIES")!).Split(Path.PathSeparator)
            .Where(path => Path.GetFileName(path) != "Waywright.dll")
            .Select(path => MetadataReference.CreateFromFile(path));
        var compilation = CSharpCompilation.Create("Rooms", trees, references, new CSharpCompilationOptions(OutputKind.DynamicallyLinkedLibrary, allowUnsafe: true));

        var met = new SortedSet<string>(StringComparer.Ordinal);
        foreach (var tree in trees)
        {
            var model = compilation.GetSemanticModel(tree);
            foreach (var name in tree.GetRoot().DescendantNodes().OfType<SimpleNameSyntax>())
            {
                var type = model.GetSymbolInfo(name).Symbol is { } symbol ? symbol as INamedTypeSymbol ?? symbol.ContainingType : null;
                foreach (var declaration in type?.OriginalDefinition.DeclaringSyntaxReferences ?? [])
                    met.Add($"{RoomOf(tree.FilePath)} -> {RoomOf(declaration.SyntaxTree.FilePath)}");
            }
        }

        Assert.Contains("Sweeps -> Straightness", met);
        Assert.All(met, edge =>
        {
            var (from, to) = (edge.Split(" -> ")[0], edge.Split(" -> ")[1]);
            Assert.True(Rooms.ContainsKey(from), $"{from} is no room of the house");
            Assert.True(from == to || to.Length == 0 || Rooms[from].Contains(to), $"{edge} is not allowed");
        });

        string RoomOf(string path) => Path.GetRelativePath(library, path) is var relative && relative.Contains(Path.DirectorySeparatorChar) ? relative.Split(Path.DirectorySeparatorChar)[0] : "";
    }

    [Fact]
    public void Projects_refer_to_each_other_one_way()
    {
        var found = Directory.EnumerateFiles(Repository.PathOf("src"), "*.csproj", SearchOption.AllDirectories)
            .ToDictionary(
                path => Path.GetFileNameWithoutExtension(path),
                path => XDocument.Load(path).Descendants("ProjectReference").Select(r => Path.GetFileNameWithoutExtension(r.Attribute("Include")!.Value)).ToArray());
        Assert.Equal(Projects.Keys.Order(), found.Keys.Order());
        Assert.All(found, project => Assert.Equal(Projects[project.Key], project.Value));
    }

    [Theory]
    [InlineData("Microsoft.DotNet.Interactive", "Waywright.Kernel")]
    [InlineData("NetMQ", "Waywright.Kernel")]
    [InlineData("Google.OrTools", "Waywright.Placement")]
    [InlineData("Plotly.NET", "Waywright.Notebooks")]
    [InlineData("Deedle", "Waywright.Notebooks")]
    [InlineData("Markdig", "Waywright.Publishing")]
    [InlineData("System.CommandLine", "Waywright.Cli")]
    public void One_project_alone_names_each_outer_library(string package, string project)
    {
        var naming = Directory.EnumerateFiles(Repository.PathOf("src"), "*.csproj", SearchOption.AllDirectories)
            .Where(path => XDocument.Load(path).Descendants("PackageReference").Any(r => r.Attribute("Include")!.Value == package))
            .Select(Path.GetFileNameWithoutExtension);
        Assert.Equal([project], naming);
    }
}
