using System.Buffers.Binary;

namespace Trivet.Desk.Sync;

/// <summary>
/// Looks whether a photograph is a JPEG that carries the picture alone. Devices draw it anew before they send it; what still tells a place, a
/// time or a device is not taken. Markers as in ITU-T T.81, annex B, and JEITA CP-3451 (from memory).
/// </summary>
internal static class JpegCheck
{
    private const byte StartOfScan = 0xDA, Comment = 0xFE, Exif = 0xE1, Profile = 0xE2, LastApplication = 0xEF;

    /// <summary>What is wrong, in words; null where nothing is.</summary>
    public static string? Problem(ReadOnlySpan<byte> content)
    {
        if (content.Length < 4 || content[0] != 0xFF || content[1] != 0xD8) return "this is no JPEG picture";
        for (int at = 2; at + 4 <= content.Length;)
        {
            if (content[at] != 0xFF) return "this JPEG picture is damaged";
            byte marker = content[at + 1];
            if (marker == StartOfScan) return null;
            if (marker is Comment or Exif or (> Profile and <= LastApplication)) return "the photograph tells more than its picture; take it with the page, which draws it anew";
            int length = BinaryPrimitives.ReadUInt16BigEndian(content[(at + 2)..]);
            if (length < 2) return "this JPEG picture is damaged";
            at += 2 + length;
        }
        return "this JPEG picture is damaged";
    }
}
