namespace Waywright.Tests;

/// <summary>Log relative error: to how many digits a value agrees with a certified one (McCullough, The American Statistician 52 (1998) 358-366).</summary>
internal static class Digits
{
    public static double Of(double certified, double value)
    {
        var error = Math.Abs(value - certified) / (certified == 0 ? 1 : Math.Abs(certified));
        return error == 0 ? 15 : Math.Min(15, -Math.Log10(error));
    }

    public static void AtLeast(double digits, double certified, double value, string what)
    {
        var reached = Of(certified, value);
        var message = FormattableString.Invariant($"{what}: LRE {reached:F1}, {digits:F1} wanted; certified {certified:R}, got {value:R}");
        TestContext.Current.TestOutputHelper?.WriteLine(message);
        Assert.True(reached >= digits, message);
    }
}
