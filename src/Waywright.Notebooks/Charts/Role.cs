namespace Waywright.Notebooks;

/// <summary>What a mark in a picture stands for. The role decides its colour; a dash, a shape or a word tells the same again.</summary>
internal enum Role
{
    /// <summary>The data.</summary>
    Ink,

    /// <summary>Data behind the data: single readings under the combined ones.</summary>
    Faint,

    /// <summary>A fitted line or a model's curve.</summary>
    Fitted,

    /// <summary>A zone or an interval, filled lightly.</summary>
    Zone,

    /// <summary>A limit.</summary>
    Limit,

    /// <summary>A contact of the zone, or what was chosen.</summary>
    Contact,

    /// <summary>What isn't decided.</summary>
    Undecided,

    /// <summary>What is there only for orientation.</summary>
    Context,
}

/// <summary>The colours of the roles: the colour-blind-safe set of Okabe and Ito (2008), ink and grey.</summary>
internal static class Roles
{
    /// <summary>Stands for the text colour of the page that shows the figure.</summary>
    public const string InkColour = "#000000";

    /// <summary>How much of a filled area's colour shows.</summary>
    public const double FillOpacity = 0.3;

    /// <summary>The same as the last two digits of a colour.</summary>
    public const string FillHex = "4D";

    public static string Colour(this Role role) => role switch
    {
        Role.Fitted => "#0072B2",
        Role.Zone => "#56B4E9",
        Role.Limit => "#D55E00",
        Role.Contact => "#009E73",
        Role.Undecided => "#E69F00",
        Role.Context => "#808080",
        _ => InkColour,
    };

    /// <summary>How much of a mark's colour shows.</summary>
    public static double Opacity(this Role role) => role == Role.Faint ? 0.45 : 1;
}
