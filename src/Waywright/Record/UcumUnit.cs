using System;
using System.Collections.Frozen;
using System.Linq;
using System.Text;

namespace Waywright;

/// <summary>
/// Unit texts of the record: codes of the Unified Code for Units of Measure, case-sensitive ("c/s") variant, version 2.1.
/// Only the atoms that such figures need are known; an unknown atom is refused, not passed on.
/// </summary>
internal static class UcumUnit
{
    // An atom, or the atom and the symbol that a reader expects. Metric atoms take a prefix.
    private static readonly FrozenDictionary<string, string> Metric = Table("m g s rad K N Pa J W Hz L A V B t gf bar Cel=°C");
    private static readonly FrozenDictionary<string, string> Plain = Table("deg=° '=′ ''=″ % min h d [in_i]=in [ft_i]=ft [lb_av]=lb [lbf_av]=lbf [degF]=°F [ppm]=ppm");
    private static readonly FrozenDictionary<string, string> Prefixes = Table("p n u=µ m c d da h k M G");

    public static bool IsValid(string unit) => unit == "1" || TrySymbol(unit) is not null;

    /// <summary>As a reader writes it: <c>kg·m/s²</c> for <c>kg.m/s2</c>; nothing for <c>1</c>.</summary>
    public static string Symbol(string unit) => unit == "1" ? "" : TrySymbol(unit) ?? unit;

    // Components joined by '.' and '/', a leading '/' allowed, an integer exponent after each.
    private static string? TrySymbol(string unit)
    {
        var symbol = new StringBuilder();
        var start = unit.StartsWith("1/", StringComparison.Ordinal) ? 2 : unit.StartsWith('/') ? 1 : 0;
        symbol.Append(start > 0 ? "1/" : "");
        while (true)
        {
            var length = unit.AsSpan(start).IndexOfAny('.', '/');
            var end = length < 0 ? unit.Length : start + length;
            if (!AppendComponent(unit.AsSpan(start, end - start), symbol))
                return null;
            if (end == unit.Length)
                return symbol.ToString();
            symbol.Append(unit[end] == '.' ? '·' : '/');
            start = end + 1;
        }
    }

    private static bool AppendComponent(ReadOnlySpan<char> component, StringBuilder symbol)
    {
        var exponent = component.Length;
        while (exponent > 0 && char.IsAsciiDigit(component[exponent - 1]))
            exponent--;
        if (exponent < component.Length && exponent > 0 && component[exponent - 1] is '+' or '-')
            exponent--;
        if (SymbolOf(component[..exponent].ToString()) is not { } atom)
            return false;
        symbol.Append(atom);
        foreach (var c in component[exponent..])
            symbol.Append(c switch { '-' => '⁻', '+' => '⁺', '1' => '¹', '2' => '²', '3' => '³', _ => (char)('⁰' + (c - '0')) });
        return true;
    }

    private static string? SymbolOf(string atom)
    {
        if (Plain.TryGetValue(atom, out var symbol) || Metric.TryGetValue(atom, out symbol))
            return symbol;
        for (var length = 1; length <= 2 && length < atom.Length; length++)
        {
            if (Prefixes.TryGetValue(atom[..length], out var prefix) && Metric.TryGetValue(atom[length..], out symbol))
                return prefix + symbol;
        }

        return null;
    }

    private static FrozenDictionary<string, string> Table(string entries)
        => entries.Split(' ').Select(entry => entry.Split('=')).ToFrozenDictionary(entry => entry[0], entry => entry[^1], StringComparer.Ordinal);
}
