using System.Globalization;

namespace Waywright.Tests;

/// <summary>Runs a whole class under one culture: decimal comma (de-DE), dotted and dotless i (tr-TR), other digits and signs (fa-IR).</summary>
public abstract class UnderCulture : IDisposable
{
    private readonly CultureInfo _before = CultureInfo.CurrentCulture;
    private readonly CultureInfo _languageBefore = CultureInfo.CurrentUICulture;

    protected UnderCulture(string name)
    {
        var culture = name.Length == 0 ? CultureInfo.InvariantCulture : new CultureInfo(name, useUserOverride: false);
        CultureInfo.CurrentCulture = culture;
        CultureInfo.CurrentUICulture = culture;
    }

    public void Dispose()
    {
        CultureInfo.CurrentCulture = _before;
        CultureInfo.CurrentUICulture = _languageBefore;
        GC.SuppressFinalize(this);
    }
}
