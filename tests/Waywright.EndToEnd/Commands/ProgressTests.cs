using Waywright.Cli;
using Waywright.Publishing;

namespace Waywright.EndToEnd.Commands;

/// <summary>With a clock of our own: nothing here waits.</summary>
public sealed class ProgressTests : IDisposable
{
    private readonly HandClock _clock = new();
    private readonly StringWriter _terminal = new() { NewLine = "\n" };

    public void Dispose() => _terminal.Dispose();

    [Fact]
    public void Steady_work_takes_as_long_again_as_its_rate_says()
    {
        var left = new TimeLeft(_clock);
        Assert.Null(left.Estimate());
        for (var i = 1; i <= 4; i++)
        {
            _clock.Pass(10);
            left.Note(i / 10.0);
        }

        Assert.Equal(60, left.Estimate()!.Value.TotalSeconds, 1e-6);
        Assert.Equal("about 1 min left", left.Words());
        _clock.Pass(25);
        Assert.Equal(35, left.Estimate()!.Value.TotalSeconds, 1e-6);
        Assert.Equal("about 35 s left", left.Words());
    }

    [Fact]
    public void A_slow_start_counts_half_once_the_later_half_goes_faster()
    {
        var left = new TimeLeft(_clock);
        _clock.Pass(10);
        left.Note(0.1);
        _clock.Pass(10);
        left.Note(0.5);
        // 0.5 in 20 s on the whole, 0.4 in the last 10 s: 0.0325 each second on the mean.
        Assert.Equal(0.5 / 0.0325, left.Estimate()!.Value.TotalSeconds, 1e-6);
    }

    [Theory]
    [InlineData(double.NaN, 0)]
    [InlineData(-1, 5)]
    [InlineData(0, 5)]
    [InlineData(0.5, 0)]
    [InlineData(double.PositiveInfinity, 5)]
    [InlineData(1, 5)]
    [InlineData(1e-300, 5)]
    [InlineData(0.999, 1e9)]
    public void An_estimate_is_never_negative_nor_no_number(double share, double seconds)
    {
        var left = new TimeLeft(_clock);
        _clock.Pass(seconds);
        left.Note(share);
        left.Note(share / 2);
        _clock.Pass(1e6);
        Assert.InRange(left.Share, 0, 1);
        Assert.True(left.Estimate() is null || left.Estimate() >= TimeSpan.Zero);
        Assert.DoesNotContain("NaN", left.Words());
        Assert.DoesNotContain("-", left.Words());
    }

    [Fact]
    public void A_terminal_has_one_line_that_is_rewritten_and_gone_at_the_end()
    {
        using (var line = new ProgressLine(_terminal, 60, _clock))
        {
            Cell(line, 0);
            for (var i = 1; i <= 6; i++)
            {
                _clock.Pass(5);
                Cell(line, i);
            }

            Assert.EndsWith("\rcell 7 of 31 · grade-rails · about 2 min left", _terminal.ToString());
        }

        Assert.DoesNotContain('\n', _terminal.ToString());
        Assert.EndsWith("\r" + new string(' ', "cell 7 of 31 · grade-rails · about 2 min left".Length) + "\r", _terminal.ToString());
    }

    [Fact]
    public void A_narrow_terminal_has_a_shorter_line_and_a_hostile_name_moves_no_cursor()
    {
        using var line = new ProgressLine(_terminal, 20, _clock);
        _clock.Pass(5);
        line.Report(new PublishProgress("notebooks/a\u001b[2J\nb\r.ipynb", 1, 1, 1, 2, 1, 2));
        var shown = _terminal.ToString()[1..];
        Assert.Equal(19, shown.Length);
        Assert.DoesNotContain(shown, char.IsControl);
    }

    [Fact]
    public void A_file_gets_a_plain_line_every_ten_seconds()
    {
        using var line = new ProgressLine(_terminal, null, _clock, "grading rails");
        for (var i = 1; i <= 30; i++)
        {
            _clock.Pass(1);
            line.Report(i / 60.0);
        }

        Assert.Equal("grading rails · 2 % · about 1 min left\ngrading rails · 18 % · about 50 s left\ngrading rails · 35 % · about 40 s left\n", _terminal.ToString());
    }

    [Theory]
    [InlineData(60)]
    [InlineData(null)]
    public void What_is_over_in_a_second_says_nothing(int? width)
    {
        using (var line = new ProgressLine(_terminal, width, _clock))
        {
            for (var i = 0; i < 9; i++)
            {
                _clock.Pass(0.1);
                Cell(line, i);
            }
        }

        Assert.Equal("", _terminal.ToString());
    }

    [Fact]
    public async Task Grade_with_json_says_nothing_but_json_on_standard_output()
    {
        var run = await Command.RunAsync("grade", "datasets/demo/rails/sweeps.csv", "--setups", "datasets/demo/rails/setups.json", "--json");
        Assert.Equal(0, run.ExitCode);
        Assert.NotEmpty(run.Json["rails"]!.AsArray());
        Assert.All(run.Error.Split('\n', StringSplitOptions.RemoveEmptyEntries), line => Assert.StartsWith("grading rails · ", line));
        Assert.DoesNotContain('\r', run.Error);
    }

    private static void Cell(ProgressLine line, int before) => line.Report(new PublishProgress("notebooks/grade-rails.ipynb", 1, 1, before + 1, 31, before, 31));

    private sealed class HandClock : TimeProvider
    {
        private long _now;

        public override long TimestampFrequency => TimeSpan.TicksPerSecond;

        public override long GetTimestamp() => _now;

        public void Pass(double seconds) => _now += (long)(seconds * TimeSpan.TicksPerSecond);
    }
}
