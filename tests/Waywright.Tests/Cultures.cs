using System.Globalization;
using System.Reflection;
using Xunit.v3;

namespace Waywright.Tests;

/// <summary>Runs every test of a class, inherited ones too, under a culture. Put the checks in an abstract class and derive one class for each culture.</summary>
[AttributeUsage(AttributeTargets.Class)]
public sealed class UnderCultureAttribute(string name) : BeforeAfterTestAttribute
{
    private CultureInfo? _before;

    public override void Before(MethodInfo methodUnderTest, IXunitTest test)
    {
        var culture = CultureInfo.GetCultureInfo(name);
        // Without ICU data every culture writes numbers like the invariant one, and the class would prove nothing.
        if (1.5.ToString(culture) == "1.5")
            throw new InvalidOperationException($"Culture {name} writes 1.5 with a point here: install libicu, or choose another culture.");
        _before = CultureInfo.CurrentCulture;
        CultureInfo.CurrentCulture = culture;
    }

    public override void After(MethodInfo methodUnderTest, IXunitTest test) => CultureInfo.CurrentCulture = _before ?? CultureInfo.InvariantCulture;
}
