using System.Security.Cryptography;

namespace Trivet.Files.Entries;

/// <summary>A photograph read from its line, or why it is not taken.</summary>
/// <param name="Content">A picture and nothing else, with its hash; empty where it is not taken.</param>
public sealed record PhotographRead(string Hash, byte[] Content, string Problem, string Remedy)
{
    public bool Ok => Problem.Length == 0;
}

/// <summary>
/// A photograph as one line of an export (docs/journal.md): canonical like entries and receipts, but known by the hash of its bytes, which the
/// entry names, and in no chain. So a journal may travel with its photographs or without, and one that was erased is missing in none.
/// </summary>
public static class PhotographText
{
    /// <summary>Largest photograph, bytes.</summary>
    public const int Largest = 4 * 1024 * 1024;

    private const int HashLength = 64;

    private const string Begin = "{\"bytes\":\"", Middle = "\",\"hash\":\"", End = "\",\"photograph\":1}";

    private static readonly int Around = Begin.Length + Middle.Length + HashLength + End.Length;

    /// <summary>Longest line, characters: base64 writes three bytes as four (RFC 4648, 4).</summary>
    public static int LongestLine { get; } = Around + (Largest + 2) / 3 * 4;

    public static string Of(string hash, byte[] content) => Begin + Convert.ToBase64String(content) + Middle + hash + End;

    /// <summary>Whether a line says it is a photograph: its members are sorted, and no other record begins with this one.</summary>
    public static bool IsOne(string line) => line.StartsWith(Begin, StringComparison.Ordinal);

    /// <summary>Reads one line. Never throws, whatever the line. The picture is looked through as one that a device sends.</summary>
    public static PhotographRead Read(string line)
    {
        const string Again = "bring the file again as it was written", TooLarge = "it is larger than 4 MB";
        if (line.Length > LongestLine) return No(TooLarge, Again);
        if (line.Length < Around || !IsOne(line) || !line.EndsWith(End, StringComparison.Ordinal)) return No("it is not in the form of a photograph", Again);
        string hash = line[^(End.Length + HashLength)..^End.Length];
        var base64 = line.AsSpan(Begin.Length, line.Length - Around);
        byte[] content = new byte[base64.Length / 4 * 3];
        if (!Convert.TryFromBase64Chars(base64, content, out int length)) return No("its bytes are not written as base64", Again);
        if (length > Largest) return No(TooLarge, Again);
        Array.Resize(ref content, length);
        if (Of(hash, content) != line) return No("it is not in the canonical form", Again);
        if (Convert.ToHexStringLower(SHA256.HashData(content)) != hash) return No("its bytes do not have its hash", Again);
        return JpegCheck.Problem(content) is { } problem ? No(problem, "its entry is kept without it") : new(hash, content, "", "");
    }

    private static PhotographRead No(string problem, string remedy) => new("", [], problem, remedy);
}
