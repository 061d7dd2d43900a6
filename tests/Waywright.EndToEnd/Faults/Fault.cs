namespace Waywright.EndToEnd.Faults;

/// <summary>What one kind of fault did to a publish.</summary>
/// <param name="Case">The fault.</param>
/// <param name="Times">How often it was tried.</param>
/// <param name="Seen">What happened, in figures.</param>
/// <param name="Whole">How often the page was whole afterwards.</param>
/// <param name="Clean">How often the next run was clean: it published, and nothing but the page was left.</param>
/// <param name="Looked">How often a next run was tried.</param>
/// <param name="ExitCodes">All that were seen.</param>
/// <param name="Message">On standard error, without the machine's paths; empty when nobody could say anything.</param>
internal sealed record Fault(string Case, int Times, string Seen, int Whole, int Clean, int Looked, IReadOnlyCollection<int> ExitCodes, string Message)
{
    /// <summary>What must hold of any fault that the command lives to tell.</summary>
    public Fault IsTold(params string[] said)
    {
        Assert.Equal((Times, Looked), (Whole, Clean));
        Assert.Equal([2], ExitCodes);
        Assert.DoesNotContain("   at ", Message);
        Assert.Single(Message.Split('\n'));
        Assert.All(said, part => Assert.Contains(part, Message));
        return this;
    }

    /// <summary>The lines of standard error but for progress, with folders of this machine cut away.</summary>
    public static string Told(string error, TinyBuild build)
        => string.Join('\n', error.Split('\n').Select(line => line.Trim()).Where(line => line.Length > 0 && !line.StartsWith("cell ", StringComparison.Ordinal)))
            .Replace(Path.GetDirectoryName(build.Out)! + "/", "", StringComparison.Ordinal);
}
