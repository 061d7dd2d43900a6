using System.Text.Json.Nodes;

namespace Waywright.Kernel;

/// <summary>What the kernel says of itself.</summary>
internal static class KernelInfo
{
    /// <summary>The name that notebooks and folders know the kernel by.</summary>
    public const string Name = "waywright";

    /// <summary>The name that a person picks it by.</summary>
    public const string DisplayName = "C# (Waywright)";

    public const string Language = "C#";

    public static JsonObject Reply() => new()
    {
        ["status"] = "ok",
        ["protocol_version"] = JupyterFrames.Version,
        ["implementation"] = Name,
        ["implementation_version"] = CarriedPackages.Version,
        ["banner"] = $"Waywright {CarriedPackages.Version}: C# cells, with the library's charts and tables",
        ["help_links"] = new JsonArray(),
        ["language_info"] = new JsonObject
        {
            ["name"] = Language,
            ["version"] = "14.0",
            ["mimetype"] = "text/x-csharp",
            ["file_extension"] = ".cs",
            ["pygments_lexer"] = "csharp",
        },
    };
}
