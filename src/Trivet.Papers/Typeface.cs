using PdfSharp.Fonts;

namespace Trivet.Papers;

/// <summary>The one typeface of Trivet, out of this assembly (SIL Open Font License, Fonts/OFL.txt), whatever the machine has.</summary>
internal sealed class Typeface : IFontResolver
{
    public const string Family = "Barlow Semi Condensed";
    private const string Regular = "BarlowSemiCondensed-Regular.ttf", SemiBold = "BarlowSemiCondensed-SemiBold.ttf";

    /// <summary>The text in letters that the face has: units and signs beyond them spelled out, as they are where the letter is missing: ohm, m and f for pins and sockets (common practice, no source).</summary>
    public static string Spelled(string text) => text.Replace("Ω", "ohm", StringComparison.Ordinal).Replace("≤", "<=", StringComparison.Ordinal).Replace("≥", ">=", StringComparison.Ordinal)
        .Replace("→", "->", StringComparison.Ordinal).Replace("←", "<-", StringComparison.Ordinal)
        .Replace("♂", "m", StringComparison.Ordinal).Replace("♀", "f", StringComparison.Ordinal);

    public FontResolverInfo ResolveTypeface(string familyName, bool isBold, bool isItalic) => new(isBold ? SemiBold : Regular);

    public byte[] GetFont(string faceName)
    {
        using var resource = typeof(Typeface).Assembly.GetManifestResourceStream(faceName)
            ?? throw new ArgumentException($"There is no font {faceName} in this assembly.", nameof(faceName));
        using var bytes = new MemoryStream();
        resource.CopyTo(bytes);
        return bytes.ToArray();
    }
}
