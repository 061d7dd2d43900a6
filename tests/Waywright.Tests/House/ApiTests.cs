using System.Reflection;
using System.Runtime.CompilerServices;
using UnitsNet;
using Waywright.Notebooks;
using Waywright.Placement;

namespace Waywright.Tests;

public class ApiTests
{
    private static readonly Assembly Library = typeof(InputException).Assembly;
    private static readonly Assembly NotebookLibrary = typeof(Notebook).Assembly;
    private static readonly Assembly PlacementLibrary = typeof(RailPlacement).Assembly;

    public static TheoryData<Type> PublicTypes => [.. Library.GetExportedTypes().Concat(PlacementLibrary.GetExportedTypes()).Concat(NotebookLibrary.GetExportedTypes())];

    [Fact]
    public void The_library_shows_about_a_hundred_public_types_in_one_namespace()
    {
        var types = Library.GetExportedTypes().Where(t => !t.IsNested).ToArray();
        Assert.InRange(types.Length, 10, 140);
        Assert.All(types, t => Assert.Equal("Waywright", t.Namespace));
        Assert.All(PlacementLibrary.GetExportedTypes(), t => Assert.Equal("Waywright.Placement", t.Namespace));
        Assert.All(NotebookLibrary.GetExportedTypes().Where(t => !t.IsNested), t => Assert.Equal("Waywright.Notebooks", t.Namespace));
    }

    [Fact]
    public void No_public_type_is_named_like_a_room()
    {
        var rooms = Directory.EnumerateDirectories(Repository.PathOf("src", "Waywright")).Select(Path.GetFileName).ToHashSet();
        Assert.DoesNotContain(Library.GetExportedTypes(), t => rooms.Contains(t.Name));
    }

    [Theory]
    [MemberData(nameof(PublicTypes))]
    public void A_public_type_can_not_be_changed_from_outside(Type type)
    {
        const BindingFlags all = BindingFlags.Public | BindingFlags.Instance | BindingFlags.Static | BindingFlags.DeclaredOnly;
        Assert.DoesNotContain(type.GetFields(all), f => !f.IsLiteral && !f.IsInitOnly && !(type.IsEnum && f.Name == "value__"));
        Assert.DoesNotContain(type.GetProperties(all), p => p.SetMethod is { IsPublic: true } set && !set.ReturnParameter.GetRequiredCustomModifiers().Contains(typeof(IsExternalInit)));
        Assert.DoesNotContain(type.GetProperties(all), p => p.PropertyType.IsArray);
        Assert.DoesNotContain(type.GetMethods(all), m => m.ReturnType.IsArray);
        Assert.DoesNotContain(type.GetFields(BindingFlags.NonPublic | BindingFlags.Static | BindingFlags.DeclaredOnly), f => !f.IsInitOnly && !f.IsLiteral && !f.Name.StartsWith('<'));
    }

    [Theory]
    [MemberData(nameof(PublicTypes))]
    public void A_record_does_not_compare_arrays_or_UnitsNet_values(Type type)
    {
        if (type.GetMethod("<Clone>$") is null)
            return;
        // A record's generated Equals compares each instance field; one written by hand has no CompilerGenerated mark.
        var equals = type.GetMethod("Equals", [type]);
        if (equals is null || equals.GetCustomAttribute<CompilerGeneratedAttribute>() is null)
            return;
        var fields = type.GetFields(BindingFlags.NonPublic | BindingFlags.Public | BindingFlags.Instance);
        Assert.DoesNotContain(fields, f => f.FieldType.IsArray || typeof(IQuantity).IsAssignableFrom(f.FieldType));
    }

    [Fact]
    public void Every_public_result_has_a_view()
    {
        // A result is a public record; what only describes a part of one (a contact, a limit) is shown within its whole.
        string[] parts =
        [
            "AlignedPass", "BarSection", "CarriageDrag", "CleanedReading", "CleaningOptions", "Contribution", "Decision", "DialLimits", "Distribution", "DragPlace", "ErrorShape", "FeatureLimit", "FeatureValue", "LimitMargin", "Figure", "GradeRule", "GradeState", "InputFile", "InputProblem", "KeptResult", "LocalStraightness", "MachinePosition",
            "MinimumZone", "MonteCarloInput", "NotebookParameter", "PlacedRail", "PlacementOptions", "Profile", "ProfileErrors", "RailCard", "RecordedNotebook", "ReferenceLine", "SoftwareVersion", "SupportedBeam", "SweepCorrection", "SweepPass", "ToleranceLimits", "UncertaintyComponent", "UnfilledPosition", "VarianceLine", "ZoneContact", "BeltEnd", "BeltEffect", "PitchCandidate", "BeltPulley", "Pluck", "PluckPartial", "PluckCandidate", "PluckSearch",
        ];
        var results = Library.GetExportedTypes().Concat(PlacementLibrary.GetExportedTypes()).Where(t => t.GetMethod("<Clone>$") is not null).Select(t => t.Name).Except(parts);
        var shown = Views.All.Select(v => v.ResultType.Name).ToHashSet();
        Assert.All(results, name => Assert.Contains(name, shown));
    }
}
