namespace Trivet.Cabling;

/// <summary>Contacts of proximity switches with M8 and M12 plugs [IEC-60947-5-2, annex D], from memory in part (docs/sources.md).</summary>
public static class SensorContacts
{
    /// <summary>Colour of the core on a contact, in the letters of IEC 60757: 1 plus, 2 opening or second output, 3 minus, 4 closing output; null for another.</summary>
    public static string? Colour(string? contact) => contact?.Trim() switch
    {
        "1" => "BN",
        "2" => "WH",
        "3" => "BU",
        "4" => "BK",
        _ => null,
    };
}
