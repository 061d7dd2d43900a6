using Waywright.EndToEnd.Pages;

namespace Waywright.EndToEnd.Commands;

/// <summary>What a terminal gets of texts that would steer it.</summary>
public sealed class TerminalTests
{
    private const string Rows = "rail,face,pass,direction,position_mm,reading_um\n";

    [Fact]
    public async Task No_argument_name_or_file_of_a_verb_reaches_the_terminal_raw()
    {
        using var folder = new TemporaryFolder();
        foreach (var text in HostileTexts.Wild.Where(text => !text.Contains('\0') && !text.Contains('\ud800') && text.Length < 1000))
        {
            var file = Path.Combine(folder.Path, text.Replace('/', '_') + ".csv");
            await File.WriteAllTextAsync(file, Rows + string.Concat(Enumerable.Range(0, 6).Select(i => FormattableString.Invariant($"\"{text}\",side,1,forward,{50 * i},{i % 2}\n"))), TestContext.Current.CancellationToken);
            IsPlain(await Command.RunInAsync(folder.Path, "straightness", file));
        }

        foreach (var arguments in new string[][] { ["gra\u001b[31mde"], ["grade", "\u001b]0;title\u0007.csv"], ["tension", "--span", "1\u009b2J mm", "--density", "8 g/m", "--force", "9 N"], ["publish", "\u202e.ipynb"] })
        {
            var run = await Command.RunInAsync(folder.Path, arguments);
            Assert.Equal(2, run.ExitCode);
            IsPlain(run);
        }
    }

    [Fact]
    public async Task A_rails_name_of_signs_that_are_not_seen_is_refused_with_its_place()
    {
        using var folder = new TemporaryFolder();
        foreach (var name in (string[])["R\u202e1", "R\u200b1", "R\u009b1", "R\u001b1"])
            (await Command.RunAsync("grade", folder.Write("sweeps.csv", Rows + name + ",side,1,forward,0,1\n"))).IsRefused("sweeps.csv:2:1: found 'R\uFFFD1', expected a rail's name of 1 to 64 printable characters");
    }

    [Fact]
    public async Task A_notebook_with_half_a_surrogate_pair_is_refused_with_its_line()
    {
        using var folder = new TemporaryFolder();
        folder.Write("notebooks/a.ipynb", "{\"nbformat\": 4, \"nbformat_minor\": 5, \"metadata\": {},\n\"cells\": [{\"cell_type\": \"markdown\", \"metadata\": {}, \"source\": \"# R \\ud800\"}]}");
        (await Command.RunInAsync(folder.Path, "publish")).IsRefused("notebooks/a.ipynb:2: found a text with half of a surrogate pair");
    }

    private static void IsPlain(Command run)
    {
        Assert.DoesNotContain(run.Out, HostileTexts.IsHidden);
        Assert.DoesNotContain(run.Error, HostileTexts.IsHidden);
        Assert.DoesNotContain("   at ", run.Error);
    }
}
