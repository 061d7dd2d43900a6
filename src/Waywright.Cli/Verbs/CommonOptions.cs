using System.CommandLine;

namespace Waywright.Cli;

/// <summary>Options that several verbs share.</summary>
internal static class CommonOptions
{
    public static Option<bool> Json() => new("--json") { Description = "Answer in JSON." };

    public static Option<string?> Setups() => new("--setups") { Description = "setups.json: how the sweeps were taken." };

    public static SweepBatch ReadBatch(string path, string? setups) => SweepBatch.Read(path, setups is null ? null : SetupBook.Read(setups));
}
