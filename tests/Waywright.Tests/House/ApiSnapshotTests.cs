using System.Reflection;
using PublicApiGenerator;
using Waywright.Notebooks;
using Waywright.Placement;

namespace Waywright.Tests;

/// <summary>What a package promises to those who reference it, member by member; the tool's package has no such promise.</summary>
public class ApiSnapshotTests
{
    private const string Renewal = "WAYWRIGHT_RENEW_API=1 dotnet test --project tests/Waywright.Tests -- --filter-class Waywright.Tests.ApiSnapshotTests";

    public static TheoryData<string> Packages => ["Waywright", "Waywright.Placement", "Waywright.Notebooks"];

    private static readonly Dictionary<string, Assembly> Assemblies = new[] { typeof(InputException), typeof(RailPlacement), typeof(Notebook) }.ToDictionary(t => t.Assembly.GetName().Name!, t => t.Assembly);

    [Theory]
    [MemberData(nameof(Packages))]
    public void The_public_surface_is_the_one_in_docs_api(string package)
    {
        var file = Repository.PathOf("docs", "api", package + ".txt");
        var now = Lines(Surface(Assemblies[package]));
        if (Environment.GetEnvironmentVariable("WAYWRIGHT_RENEW_API") == "1")
            File.WriteAllText(file, string.Join('\n', now) + "\n");
        var kept = File.Exists(file) ? Lines(File.ReadAllText(file)) : [];
        Assert.True(now.SequenceEqual(kept), Told(package, Difference(kept, now)));
    }

    // The projects that are packed as libraries are those with a snapshot: a fourth one must not be forgotten.
    [Fact]
    public void Every_packed_library_has_a_snapshot()
    {
        var packed = Directory.EnumerateFiles(Repository.PathOf("src"), "*.csproj", SearchOption.AllDirectories)
            .Where(project => File.ReadAllText(project) is var text && text.Contains("<IsPackable>true</IsPackable>", StringComparison.Ordinal) && !text.Contains("<PackAsTool>true</PackAsTool>", StringComparison.Ordinal))
            .Select(project => Path.GetFileNameWithoutExtension(project))
            .Order(StringComparer.Ordinal);
        Assert.Equal(packed, Assemblies.Keys.Order(StringComparer.Ordinal));
        Assert.Equal(packed, Directory.EnumerateFiles(Repository.PathOf("docs", "api")).Select(file => Path.GetFileNameWithoutExtension(file)!).Order(StringComparer.Ordinal));
    }

    [Fact]
    public void A_difference_names_the_lines_and_the_type_that_they_stand_in()
        => Assert.Equal(
            ["  in public sealed class Rail", "- public double LengthMm { get; }", "+ public double LengthM { get; }", "+ public double WidthMm { get; }"],
            Difference(
                ["namespace Waywright", "{", "    public sealed class Rail", "    {", "        public double LengthMm { get; }", "    }", "}"],
                ["namespace Waywright", "{", "    public sealed class Rail", "    {", "        public double LengthM { get; }", "        public double WidthMm { get; }", "    }", "}"]));

    // Attributes of the assembly name its version and commit: they differ from build to build.
    private static string Surface(Assembly assembly) => assembly.GeneratePublicApi(new ApiGeneratorOptions { IncludeAssemblyAttributes = false });

    private static string[] Lines(string text) => [.. text.ReplaceLineEndings("\n").Split('\n').Select(line => line.TrimEnd()).Where(line => line.Length > 0)];

    private static string Told(string package, IReadOnlyList<string> difference)
        => $"What {package} shows to others is not what docs/api/{package}.txt holds:\n{string.Join('\n', difference)}\nIf that is meant, renew the file and look at what changed before you commit it:\n{Renewal}";

    /// <summary>Lines that are gone (-) and new (+) below the type that they stand in.</summary>
    private static List<string> Difference(string[] kept, string[] now)
    {
        var (before, after) = (ByType(kept), ByType(now));
        var told = new List<string>();
        foreach (var type in before.Keys.Union(after.Keys).ToList())
        {
            string[] old = before.TryGetValue(type, out var b) ? [.. b] : [], fresh = after.TryGetValue(type, out var a) ? [.. a] : [];
            string[] lines = [.. old.Except(fresh).Select(line => "- " + line), .. fresh.Except(old).Select(line => "+ " + line)];
            if (lines.Length > 0)
                told.AddRange(["  in " + type, .. lines]);
        }

        return told.Count > 0 ? told : ["  the same lines in another order"];
    }

    private static Dictionary<string, List<string>> ByType(string[] lines)
    {
        var byType = new Dictionary<string, List<string>>(StringComparer.Ordinal);
        var type = "";
        foreach (var line in lines)
        {
            // Types stand four blanks deep, their members eight and more.
            if (line.StartsWith("    public ", StringComparison.Ordinal))
                type = line.Trim();
            if (!byType.TryGetValue(type, out var members))
                byType[type] = members = [];
            if (line.StartsWith("        ", StringComparison.Ordinal) || (line.StartsWith("    ", StringComparison.Ordinal) && line.Trim() is not ("{" or "}" or "") && line.Trim() != type))
                members.Add(line.Trim());
        }

        return byType;
    }
}
