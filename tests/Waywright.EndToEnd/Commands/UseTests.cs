namespace Waywright.EndToEnd.Commands;

public sealed class UseTests
{
    [Theory]
    [InlineData("waywright: found 'grades', expected one of new, publish, verify, straightness, grade, plan, tension, pluck, kernel|See 'waywright --help'.", "grades")]
    [InlineData("waywright: found no verb, expected one of new, publish, verify, straightness, grade, plan, tension, pluck, kernel|See 'waywright --help'.")]
    [InlineData("waywright kernel: found 'start', expected one of install, remove, run|See 'waywright kernel --help'.", "kernel", "start")]
    [InlineData("Required argument 'FILE' missing for command: 'run'.|See 'waywright kernel run --help'.", "kernel", "run")]
    [InlineData("waywright publish: found the option '--oot', expected one of --out, --set, --date, --cell-limit, --memory-limit|See 'waywright publish --help'.", "publish", "--oot", "x")]
    [InlineData("--cell-limit: found 'abc', expected a number above 0 and below 100000|See 'waywright publish --help'.", "publish", "--cell-limit", "abc")]
    [InlineData("--memory-limit: found 'NaN', expected a number above 0 and below 100000|See 'waywright publish --help'.", "publish", "--memory-limit", "NaN")]
    [InlineData("--cell-limit: found '-1', expected a number above 0 and below 100000|See 'waywright publish --help'.", "publish", "--cell-limit", "-1")]
    [InlineData("--reseed: found 'x', expected a whole number|See 'waywright verify --help'.", "verify", ".", "--reseed", "x")]
    [InlineData("--screws: found 'all', expected one of every, every-other, every-other-far-end, every-other-both-ends|See 'waywright grade --help'.", "grade", "s.csv", "--screws", "all")]
    [InlineData("--guide: found 'maybe', expected a length with its unit, such as 180 mm, or unknown", "plan", "--dial", "0.01mm", "--length", "320mm", "--limit", "30um", "--guide", "maybe")]
    [InlineData("Option '--span' is required.|Option '--density' is required.|See 'waywright tension --help'.", "tension")]
    public async Task What_was_mistyped_is_named_in_one_line_with_what_would_do(string said, params string[] typed)
    {
        var command = await Command.RunAsync(typed);
        command.IsRefused();
        Assert.Equal(said.Split('|'), command.Error.Trim().Split(Environment.NewLine));
    }
}
