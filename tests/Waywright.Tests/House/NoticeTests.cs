using System.Text.Json;
using System.Text.RegularExpressions;

namespace Waywright.Tests;

public partial class NoticeTests
{
    [Fact]
    public void The_third_party_notices_list_each_package_that_ships_with_its_version()
    {
        var shipped = Directory.EnumerateFiles(Repository.PathOf("src"), "packages.lock.json", SearchOption.AllDirectories)
            .SelectMany(path => JsonDocument.Parse(File.ReadAllText(path)).RootElement.GetProperty("dependencies").EnumerateObject())
            .SelectMany(framework => framework.Value.EnumerateObject())
            .Where(package => package.Value.GetProperty("type").GetString() != "Project" && package.Value.TryGetProperty("resolved", out _))
            // Analyzers run at build time and are not part of what ships.
            .Where(package => package.Name != "Microsoft.CodeAnalysis.BannedApiAnalyzers" && package.Name != "Microsoft.NET.ILLink.Tasks")
            .Select(package => $"{package.Name} {package.Value.GetProperty("resolved").GetString()}")
            .Distinct()
            .Order(StringComparer.OrdinalIgnoreCase);
        var listed = Row().Matches(File.ReadAllText(Repository.PathOf("docs", "third-party-notices.md"))).Select(m => $"{m.Groups[1].Value} {m.Groups[2].Value}").Skip(1);
        Assert.Equal(shipped, listed.Order(StringComparer.OrdinalIgnoreCase));
    }

    [GeneratedRegex(@"^\| ([\w.\-]+) \| ([\w.\-+]+) \| [^|]*\w[^|]*\|", RegexOptions.Multiline)]
    private static partial Regex Row();
}
