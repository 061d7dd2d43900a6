namespace Waywright.EndToEnd.Pages;

/// <summary>What a test needs of the machine beside the SDK: without it the test is skipped, unless WAYWRIGHT_REQUIRE_ALL=1.</summary>
internal static class Required
{
    private static readonly string[] ChromiumNames = ["chromium", "chromium-browser"];

    /// <summary>The path of Chromium.</summary>
    public static string Chromium { get; } = OnPath(ChromiumNames);

    public static bool HasChromium => Chromium.Length > 0;

    public static void OfChromium() => Of(HasChromium, "Chromium");

    public static void Of(bool present, string what)
    {
        if (Environment.GetEnvironmentVariable("WAYWRIGHT_REQUIRE_ALL") == "1")
            Assert.True(present, $"WAYWRIGHT_REQUIRE_ALL is set: install {what}.");
        Assert.SkipUnless(present, $"needs {what}");
    }

    private static string OnPath(string[] names)
    {
        var folders = (Environment.GetEnvironmentVariable("PATH") ?? "").Split(Path.PathSeparator).Append("/usr/bin");
        return folders.SelectMany(folder => names.Select(name => Path.Combine(folder, name))).FirstOrDefault(File.Exists) ?? "";
    }
}
