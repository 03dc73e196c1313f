using System.Security.Cryptography;
using System.Text;
using System.Text.RegularExpressions;
using Trivet.Cells;
using Trivet.Files;

namespace Trivet.Store;

/// <summary>What the store lets in: every input has a bound, so that neither database nor page ever meets one without.</summary>
internal static partial class Inputs
{
    /// <summary>Largest canonical text kept, bytes of UTF-8. A full cell has some tens of thousands.</summary>
    public const int LargestText = 16 * 1024 * 1024;

    /// <summary>Longest words of what changed, characters.</summary>
    public const int LongestWords = 2000;

    public const int LongestPerson = 128;

    private static readonly UTF8Encoding Strict = new(encoderShouldEmitUTF8Identifier: false, throwOnInvalidBytes: true);

    /// <summary>SHA-256 of a text as UTF-8, lower-case hexadecimal: the same as <see cref="CellFile.Hash"/> for a canonical text.</summary>
    public static string Hash(string text) => Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(text)));

    public static string Hash(byte[] content) => Convert.ToHexStringLower(SHA256.HashData(content));

    /// <summary>The canonical text of a cell, or why it is not kept.</summary>
    public static (string Text, Refusal? Refusal) TextOf(Cell cell)
    {
        string text = CellFile.Canonical(cell);
        if (!Encodable(text, out int bytes))
            return ("", new Refusal("The description holds half a character (a lone surrogate).", "Type the text again where it looks broken."));
        return bytes > LargestText
            ? ("", new Refusal($"The description is {bytes / 1048576.0:0.0} MB long; the store keeps at most {LargestText / 1048576} MB.", "Shorten its notes."))
            : (text, null);
    }

    public static Refusal? OfPerson(string person) => string.IsNullOrWhiteSpace(person) || person.Length > LongestPerson || !Plain(person)
        ? new Refusal("The person's id is empty, too long or holds a control character.", $"Give 1 to {LongestPerson} plain characters.")
        : null;

    public static Refusal? OfStamp(Stamp by, string words)
    {
        if (OfPerson(by.Person) is { } unfit) return unfit;
        if (words.Length > LongestWords || !Plain(words))
            return new Refusal("The words of what changed are too long or hold a control character.", $"Write at most {LongestWords} characters.");
        return null;
    }

    public static Refusal? OfCellId(string id) => CellId().IsMatch(id)
        ? null
        : new Refusal($"\"{(id.Length > 80 ? id[..80] + "…" : id)}\" cannot be the id of a cell.",
            "Use 1 to 64 lower-case letters, digits and single hyphens between them: jar-lids.");

    public static Refusal? OfPersonId(string id) => CellId().IsMatch(id)
        ? null
        : new Refusal($"\"{(id.Length > 80 ? id[..80] + "…" : id)}\" cannot be the id of a person.",
            "Use 1 to 64 lower-case letters, digits and single hyphens between them: ada.");

    public static Refusal? OfName(string name) => string.IsNullOrWhiteSpace(name) || name.Length > LongestPerson || !Plain(name)
        ? new Refusal("The name is empty, too long or holds a control character.", $"Give 1 to {LongestPerson} plain characters.")
        : null;

    /// <summary>A zero character is refused by PostgreSQL, and no control character but a line end belongs into a line of a list.</summary>
    private static bool Plain(string text) => Encodable(text, out _) && !text.Any(c => char.IsControl(c) && c is not ('\n' or '\t'));

    private static bool Encodable(string text, out int bytes)
    {
        try
        {
            bytes = Strict.GetByteCount(text);
            return true;
        }
        catch (EncoderFallbackException)
        {
            bytes = 0;
            return false;
        }
    }

    [GeneratedRegex(@"^(?=.{1,64}\z)[a-z0-9]+(-[a-z0-9]+)*\z", RegexOptions.CultureInvariant)]
    private static partial Regex CellId();
}

internal sealed record Refusal(string Problem, string Remedy);
