using System;
using System.Collections.Generic;
using System.Linq;

namespace Waywright;

/// <summary>What kept the rail where it was while it was swept.</summary>
internal enum HoldingKind
{
    /// <summary>It lay free on two supports and bent under its own weight between them.</summary>
    TwoSupports,

    /// <summary>It lay free on a plate.</summary>
    Plate,

    /// <summary>It was screwed down.</summary>
    Screwed,

    /// <summary>It was clamped.</summary>
    Clamped,
}

/// <summary>How a rail was held, read from <c>held</c>.</summary>
/// <param name="Kind">Which way.</param>
/// <param name="PlacesMm">Supports or clamps, mm from the dot, rising; none on a plate or base.</param>
internal sealed record RailHolding(HoldingKind Kind, FixedList<double> PlacesMm)
{
    public const string Expected = "one of: two supports at 71 mm, 249 mm; on a plate; screwed to base; clamped at 20 mm, 300 mm";

    private const string Supports = "two supports at ";
    private const string Clamps = "clamped at ";

    /// <summary>Null for any other text.</summary>
    public static RailHolding? Read(string text) => text switch
    {
        "on a plate" => new(HoldingKind.Plate, FixedList<double>.Empty),
        "screwed to base" => new(HoldingKind.Screwed, FixedList<double>.Empty),
        _ when text.StartsWith(Supports, StringComparison.Ordinal) => Places(text[Supports.Length..]) is { Count: 2 } places ? new(HoldingKind.TwoSupports, places) : null,
        _ when text.StartsWith(Clamps, StringComparison.Ordinal) => Places(text[Clamps.Length..]) is { } places ? new(HoldingKind.Clamped, places) : null,
        _ => null,
    };

    // Different places at 0 mm or more, each with its unit.
    private static FixedList<double>? Places(string text)
    {
        var places = new List<double>();
        foreach (var part in text.Split(','))
        {
            var place = part.AsSpan().Trim();
            if (!place.EndsWith("mm") || !Number.TryRead(place[..^2], out var mm, out _) || mm < 0 || places.Contains(mm))
                return null;
            places.Add(mm);
        }

        return FixedList<double>.Copy(places.Order());
    }
}
