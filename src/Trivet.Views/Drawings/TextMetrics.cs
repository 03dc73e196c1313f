namespace Trivet.Views.Drawings;

/// <summary>
/// Widths of text, so that a drawing can be laid out before anyone renders it. The advances are those of a common grotesque
/// (from memory of the published metrics of its family, thousandths of the size); faces listed in <see cref="Ink"/> are as wide or
/// narrower, so that what fits here fits on the page.
/// </summary>
internal static class TextMetrics
{
    /// <summary>Height of capitals over the baseline and of what hangs below it, as parts of the size.</summary>
    public const double Ascent = 0.74, Descent = 0.22;

    // Space to tilde.
    private static readonly short[] Advances =
    [
        278, 278, 355, 556, 556, 889, 667, 191, 333, 333, 389, 584, 278, 333, 278, 278,
        556, 556, 556, 556, 556, 556, 556, 556, 556, 556, 278, 278, 584, 584, 584, 556,
        1015, 667, 667, 722, 722, 667, 611, 778, 722, 278, 500, 667, 556, 833, 722, 778,
        667, 778, 722, 667, 611, 722, 667, 944, 667, 667, 611, 278, 278, 278, 469, 556,
        333, 556, 556, 500, 556, 556, 278, 556, 556, 222, 222, 500, 222, 833, 556, 556,
        556, 556, 333, 500, 278, 556, 500, 722, 500, 500, 500, 334, 260, 334, 584,
    ];

    /// <summary>Width of a text at a size, the size's own unit.</summary>
    public static double Width(string text, double size)
    {
        double sum = 0;
        foreach (var rune in text.EnumerateRunes())
            sum += rune.Value is >= ' ' and <= '~' ? Advances[rune.Value - ' '] : rune.Value == 0xA0 ? Advances[0] : rune.Value < 0x250 ? 640 : 1000;
        return sum * size / 1000;
    }

    /// <summary>The text cut to a width, with an ellipsis where something was left out.</summary>
    public static string Cut(string text, double size, double width)
    {
        if (Width(text, size) <= width) return text;
        int n = text.Length;
        while (n > 0 && Width(text[..n] + "…", size) > width) n -= n > 1 && char.IsLowSurrogate(text[n - 1]) ? 2 : 1;
        return text[..n].TrimEnd() + "…";
    }

    /// <summary>The text in lines no wider than a width, broken at spaces; at most so many lines, the last cut.</summary>
    public static List<string> Wrap(string text, double size, double width, int lines)
    {
        var all = new List<string>();
        string line = "";
        foreach (string word in text.Split(' ', StringSplitOptions.RemoveEmptyEntries))
        {
            string longer = line.Length == 0 ? word : line + " " + word;
            if (Width(longer, size) <= width || line.Length == 0) line = longer;
            else
            {
                all.Add(line);
                line = word;
            }
        }

        if (line.Length > 0) all.Add(line);
        if (all.Count > lines)
        {
            all[lines - 1] = string.Join(' ', all.Skip(lines - 1));
            all.RemoveRange(lines, all.Count - lines);
        }

        return [.. all.Select(l => Cut(l, size, width))];
    }
}
