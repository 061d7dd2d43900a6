using System;
using System.Globalization;
using System.Linq;

namespace Waywright;

/// <summary>What the numbers of a record must be: finite, or not there.</summary>
internal static class RecordNumber
{
    public static double? Finite(double? value, string figure, string parameter)
        => value is null || double.IsFinite(value.Value) ? value : throw Wrong(value, figure, parameter, "finite");

    public static double? AtLeastZero(double? value, string figure, string parameter)
        => Finite(value, figure, parameter) is null or >= 0 ? value : throw Wrong(value, figure, parameter, "0 or more");

    public static double? Positive(double? value, string figure, string parameter)
        => Finite(value, figure, parameter) is null or > 0 ? value : throw Wrong(value, figure, parameter, "above 0");

    private static ArgumentException Wrong(double? value, string figure, string parameter, string needed)
        => new(string.Create(CultureInfo.InvariantCulture, $"Figure '{figure}': {parameter} is {value}, and must be {needed}."), parameter);
}

/// <summary>What the texts of a record must be.</summary>
internal static class RecordText
{
    public static string Filled(string text, string parameter)
        => !string.IsNullOrWhiteSpace(text) ? text : throw new ArgumentException("The text must not be empty.", parameter);

    /// <summary>Ids are compared, linked to and typed: no blanks, nothing invisible.</summary>
    public static string Id(string id, string parameter)
        => !string.IsNullOrEmpty(id) && !id.Any(c => char.IsWhiteSpace(c) || char.IsControl(c))
            ? id
            : throw new ArgumentException($"'{id}' is no id: an id has no blanks, such as 'rails/R03/side-strt'.", parameter);

    /// <summary>A path that means the same on every machine and can't leave the folder it is relative to.</summary>
    public static string RelativePath(string path, string parameter)
        => IsRelativePath(path) ? path : throw new ArgumentException($"'{path}' is no path inside a build folder: it needs forward slashes and no '..', drive or leading slash.", parameter);

    public static bool IsRelativePath(string path)
        => path.Length > 0
            && path.IndexOfAny(['\\', ':', '\0']) < 0
            && !path.Any(char.IsControl)
            && path.Split('/').All(part => part.Length > 0 && part is not "." and not "..");

    public static string Sha256(string digits, string parameter)
        => IsSha256(digits) ? digits : throw new ArgumentException($"'{digits}' is no SHA-256: 64 lower-case hexadecimal digits.", parameter);

    public static bool IsSha256(string digits) => digits.Length == 64 && digits.All(char.IsAsciiHexDigitLower);
}
