using System.Globalization;
using Waywright.Notebooks;

namespace Waywright.Tests.Notebooks;

public class RoleTests
{
    // Okabe and Ito, "Color Universal Design" (2008), the table of the barrier-free palette; R, G, B, 0 to 255. Values from memory.
    [Theory]
    [InlineData("Fitted", 0, 114, 178)]
    [InlineData("Zone", 86, 180, 233)]
    [InlineData("Limit", 213, 94, 0)]
    [InlineData("Contact", 0, 158, 115)]
    [InlineData("Undecided", 230, 159, 0)]
    public void Colours_are_those_of_the_published_palette(string role, int red, int green, int blue)
        => Assert.Equal((red, green, blue), Parts(Enum.Parse<Role>(role).Colour()));

    // WCAG 2.2, success criterion 1.4.11: 3:1 for graphics; relative luminance as in its glossary.
    [Theory]
    [InlineData("#FFFFFF")]
    [InlineData("#131518")]
    public void Lines_and_marks_stand_out_three_to_one_from_light_and_dark_paper(string paper)
    {
        // A zone is a filled area behind data; what is undecided has an outline of ink.
        Role[] carried = [Role.Zone, Role.Undecided, Role.Ink, Role.Faint];
        foreach (var role in Enum.GetValues<Role>().Except(carried))
            Assert.True(Contrast(role.Colour(), paper) >= 3, $"{role} on {paper}: {Contrast(role.Colour(), paper):0.00}");
    }

    [Fact]
    public void The_two_ways_of_writing_a_fill_agree()
        => Assert.Equal(Roles.FillOpacity, int.Parse(Roles.FillHex, NumberStyles.HexNumber, CultureInfo.InvariantCulture) / 255.0, 0.002);

    private static double Contrast(string one, string other)
    {
        var (a, b) = (Luminance(one), Luminance(other));
        return (Math.Max(a, b) + 0.05) / (Math.Min(a, b) + 0.05);
    }

    private static double Luminance(string colour)
    {
        var (red, green, blue) = Parts(colour);
        return (0.2126 * Linear(red)) + (0.7152 * Linear(green)) + (0.0722 * Linear(blue));

        static double Linear(int part) => part / 255.0 is var share && share <= 0.04045 ? share / 12.92 : Math.Pow((share + 0.055) / 1.055, 2.4);
    }

    private static (int Red, int Green, int Blue) Parts(string colour)
    {
        var value = int.Parse(colour.AsSpan(1), NumberStyles.HexNumber, CultureInfo.InvariantCulture);
        return (value >> 16, (value >> 8) & 255, value & 255);
    }
}
