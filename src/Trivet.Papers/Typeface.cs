using PdfSharp.Fonts;

namespace Trivet.Papers;

/// <summary>The one typeface of Trivet, out of this assembly (SIL Open Font License, Fonts/OFL.txt), whatever the machine has.</summary>
internal sealed class Typeface : IFontResolver
{
    public const string Family = "Barlow Semi Condensed";
    private const string Regular = "BarlowSemiCondensed-Regular.ttf", SemiBold = "BarlowSemiCondensed-SemiBold.ttf";

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
