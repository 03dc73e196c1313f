using System.Buffers.Binary;
using System.Globalization;

namespace Trivet.Files.Entries;

/// <summary>
/// Looks whether a photograph is a JPEG that carries the picture alone. Devices draw it anew before they send it; what still tells a place, a
/// time or a device, or lies behind the picture, is not taken. Walks all segments and scans once and decodes nothing: what the pixels and their
/// coded data hold is not seen. Markers and segments as in ITU-T T.81, annex B, JFIF 1.02 and ICC.1, annex B (all from memory).
/// </summary>
public static class JpegCheck
{
    /// <summary>Most pixels a picture may claim: whoever looks at it must decode them.</summary>
    public const int MostPixels = 50_000_000;

    /// <summary>Most scans: a progressive picture has about ten, and each costs a decoder a pass over all pixels.</summary>
    public const int MostScans = 64;

    /// <summary>Most segments: some for every scan, and those at the beginning.</summary>
    private const int MostSegments = 4 * MostScans;

    private const byte StartOfImage = 0xD8, EndOfImage = 0xD9, StartOfScan = 0xDA, Baseline = 0xC0, Progressive = 0xC2, HuffmanTables = 0xC4, LastFrame = 0xCF,
        FirstRestart = 0xD0, LastRestart = 0xD7, QuantizationTables = 0xDB, NumberOfLines = 0xDC, RestartInterval = 0xDD, Expand = 0xDF,
        FirstApplication = 0xE0, Profile = 0xE2, Comment = 0xFE;

    private const string Anew = "take it with the page, which draws it anew",
        NoJpeg = "this is no JPEG picture",
        Damaged = "this JPEG picture is damaged",
        OtherKind = $"this JPEG picture is of a kind that not every browser draws; {Anew}",
        TellsMore = $"the photograph tells more than its picture; {Anew}",
        Behind = $"something lies behind the picture; {Anew}",
        TooMany = $"this JPEG picture is cut into too many pieces; {Anew}";

    /// <summary>What is wrong, in words; null where nothing is. Any bytes may come; the time grows in proportion to their number.</summary>
    public static string? Problem(ReadOnlySpan<byte> content)
    {
        if (!content.StartsWith((ReadOnlySpan<byte>)[0xFF, StartOfImage])) return NoJpeg;
        var rest = content[2..];
        ReadOnlySpan<byte> frame = [];
        int segments = 0, scans = 0;
        bool header = false, profile = false, restarts = false;
        while (TakeMarker(ref rest) is { } marker)
        {
            if (marker == EndOfImage) return scans == 0 ? Damaged : rest.IsEmpty ? null : Behind;
            if (!TakeSegment(ref rest, out var segment)) return Damaged;
            if (++segments > MostSegments) return TooMany;
            switch (marker)
            {
                case FirstApplication when !header && IsBareHeader(segment):
                    header = true;
                    break;
                case Profile when !profile && IsWholeProfile(segment):
                    profile = true;
                    break;
                case >= FirstApplication and <= Comment:
                    return TellsMore;
                case HuffmanTables when AreHuffmanTables(segment):
                case QuantizationTables when AreQuantizationTables(segment):
                    break;
                case RestartInterval when segment.Length == 2:
                    restarts = BinaryPrimitives.ReadUInt16BigEndian(segment) > 0;
                    break;
                case >= Baseline and <= Progressive when frame.IsEmpty:
                    if (FrameProblem(segment) is { } problem) return problem;
                    frame = segment;
                    break;
                case StartOfScan when IsScanOf(frame, segment) && SkipScan(ref rest, restarts):
                    if (++scans > MostScans) return TooMany;
                    break;
                // Lossless, arithmetic and hierarchical pictures, and such as tell their height only behind the first scan.
                case > Progressive and <= LastFrame and not HuffmanTables:
                case >= NumberOfLines and <= Expand and not RestartInterval:
                    return OtherKind;
                default:
                    return Damaged;
            }
        }
        return Damaged;
    }

    /// <summary>The next marker; any number of fill bytes may stand before it (B.1.1.2). Null where no marker comes next.</summary>
    private static byte? TakeMarker(scoped ref ReadOnlySpan<byte> rest)
    {
        int at = rest.IndexOfAnyExcept((byte)0xFF);
        if (at < 1) return null;
        byte marker = rest[at];
        rest = rest[(at + 1)..];
        return marker;
    }

    /// <summary>What a segment holds behind its length, which counts itself.</summary>
    private static bool TakeSegment(scoped ref ReadOnlySpan<byte> rest, out ReadOnlySpan<byte> segment)
    {
        segment = [];
        if (rest.Length < 2 || BinaryPrimitives.ReadUInt16BigEndian(rest) is var length && (length < 2 || length > rest.Length)) return false;
        segment = rest[2..length];
        rest = rest[length..];
        return true;
    }

    /// <summary>Goes to the marker behind the coded data. In these a byte FF is followed by 00; restarts count from 0 to 7 and round again (E.1.4).</summary>
    private static bool SkipScan(scoped ref ReadOnlySpan<byte> rest, bool restarts)
    {
        int next = FirstRestart;
        while (rest.IndexOf((byte)0xFF) is >= 0 and var at && at + 1 < rest.Length)
        {
            if (rest[at + 1] == 0)
            {
                rest = rest[(at + 2)..];
                continue;
            }
            rest = rest[at..];
            var behind = rest;
            if (TakeMarker(ref behind) is not { } marker) return false;
            if (marker is < FirstRestart or > LastRestart) return true;
            if (!restarts || marker != next) return false;
            next = next == LastRestart ? FirstRestart : next + 1;
            rest = behind;
        }
        return false;
    }

    /// <summary>Precision, height, width, number of components, and for each its id, sampling and table (B.2.2).</summary>
    private static string? FrameProblem(ReadOnlySpan<byte> frame)
    {
        if (frame.Length < 6 || frame.Length != 6 + 3 * frame[5]) return Damaged;
        int height = BinaryPrimitives.ReadUInt16BigEndian(frame[1..]), width = BinaryPrimitives.ReadUInt16BigEndian(frame[3..]);
        if (frame[0] != 8 || frame[5] is not (1 or 3) || height == 0) return OtherKind;
        if (width == 0) return Damaged;
        if ((long)width * height > MostPixels)
            return string.Create(CultureInfo.InvariantCulture, $"the picture claims {width} × {height} pixels; taken are at most {MostPixels / 1_000_000} million");
        for (var part = frame[6..]; !part.IsEmpty; part = part[3..])
            if (part[1] >> 4 is < 1 or > 4 || (part[1] & 15) is < 1 or > 4 || part[2] > 3) return Damaged;
        return null;
    }

    /// <summary>Number of components, for each its id and tables, then which coefficients (B.2.3). Without a frame before it there is none.</summary>
    private static bool IsScanOf(ReadOnlySpan<byte> frame, ReadOnlySpan<byte> scan)
    {
        if (frame.IsEmpty || scan.IsEmpty || scan[0] is 0 || scan[0] > frame[5] || scan.Length != 4 + 2 * scan[0]) return false;
        for (int i = 1; i < scan.Length - 3; i += 2)
        {
            bool known = false;
            for (int j = 6; j < frame.Length; j += 3) known |= frame[j] == scan[i];
            if (!known) return false;
        }
        return true;
    }

    /// <summary>One or several tables and nothing else: class and number, how many codes of each of sixteen lengths, their values (B.2.4.2).</summary>
    private static bool AreHuffmanTables(ReadOnlySpan<byte> tables)
    {
        for (bool any = false; ; any = true)
        {
            if (tables.IsEmpty) return any;
            if (tables.Length < 17 || tables[0] >> 4 > 1 || (tables[0] & 15) > 3) return false;
            int values = 0;
            foreach (byte codes in tables[1..17]) values += codes;
            if (values > 256 || tables.Length < 17 + values) return false;
            tables = tables[(17 + values)..];
        }
    }

    /// <summary>One or several tables and nothing else: precision and number, then 64 steps of one byte or two (B.2.4.1).</summary>
    private static bool AreQuantizationTables(ReadOnlySpan<byte> tables)
    {
        for (bool any = false; ; any = true)
        {
            if (tables.IsEmpty) return any;
            int length = tables[0] >> 4 == 0 ? 65 : 129;
            if (tables[0] >> 4 > 1 || (tables[0] & 15) > 3 || tables.Length < length) return false;
            tables = tables[length..];
        }
    }

    /// <summary>The JFIF mark: version and density, without a small picture of its own.</summary>
    private static bool IsBareHeader(ReadOnlySpan<byte> segment) => segment.Length == 14 && segment.StartsWith("JFIF\0"u8) && segment[12] == 0 && segment[13] == 0;

    /// <summary>What the colours mean, in one piece: browsers add it to what they draw. Its own header has 128 bytes.</summary>
    private static bool IsWholeProfile(ReadOnlySpan<byte> segment) => segment.Length >= 14 + 128 && segment.StartsWith("ICC_PROFILE\0\u0001\u0001"u8);
}
