using System.Text;

namespace Trivet.Files;

/// <summary>Text from a file as it may stand in a message: short, on one line, nothing that steers a terminal.</summary>
internal static class Shown
{
    public static string Short(string text)
    {
        var shown = new StringBuilder();
        foreach (var rune in text.EnumerateRunes())
        {
            if (shown.Length >= 40) return shown.Append('…').ToString();
            bool harmless = Rune.GetUnicodeCategory(rune) is not (System.Globalization.UnicodeCategory.Control or System.Globalization.UnicodeCategory.Format
                or System.Globalization.UnicodeCategory.LineSeparator or System.Globalization.UnicodeCategory.ParagraphSeparator);
            shown.Append(harmless ? rune.ToString() : "·");
        }

        return shown.ToString();
    }
}
