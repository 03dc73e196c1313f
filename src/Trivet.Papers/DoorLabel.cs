using System.Collections.Immutable;
using Trivet.Views.Papers;
using Trivet.Views.Words;

namespace Trivet.Papers;

/// <summary>
/// The label of a cabinet's door: the cell's name, a QR code that opens its steps on the floor page, and the same address in letters for whoever can't scan it. It holds no pairing code and no
/// person's name, so it may hang in plain sight.
/// </summary>
public static class DoorLabel
{
    /// <summary>Of the label, and of the code with its quiet zone; millimetres. A code of this size is read from about half a metre (a tenth of the distance; common practice, no source).</summary>
    public const double Width = 120, Height = 68, Code = 48;

    private const double Inset = 4, LineHeight = 1.3, LargestName = 9, SmallestName = 2.25, Sentence = 2.9, LargestAddress = 3.2, SmallestAddress = 2;

    /// <summary>Lines that an address may take; one that needs more is set smaller.</summary>
    private const int AddressLines = 3;

    /// <param name="desk">Of the desk on the network, ending in a slash.</param>
    public static Uri Link(Uri desk, string cellId) => new(desk, $"floor/?cell={Uri.EscapeDataString(cellId)}");

    public static PaperFile File(string cellName, string cellId, Uri desk, DateTime made)
    {
        var paper = Of(cellName.Length > 0 ? cellName : cellId, Link(desk, cellId));
        return new("door-label.pdf", SettingFiles.Pdf, PaperPdf.Of(paper.Title, made, paper));
    }

    public static Paper Of(string name, Uri link)
    {
        var marks = ImmutableArray.CreateBuilder<Mark>();
        // Where it is cut out of a larger sheet.
        marks.Add(new Stroke([new(0, 0), new(Width, 0), new(Width, Height), new(0, Height)], Pen.Thin, true));
        string address = link.AbsoluteUri;
        marks.AddRange(QrMarks.Of(address, new(Width - Inset - Code, Height - Inset - Code), Code));

        double room = Width - Code - 3 * Inset, top = Height - Inset;
        ImmutableArray<string> sentences = [.. FloorWords.All.SelectMany(w => DraftingTable.Lines(w.DoorLabel, room * DraftingTable.Type / Sentence, int.MaxValue))];
        var (size, lines) = Fitted(name, room, Code - sentences.Length * Sentence * LineHeight - Inset);
        foreach (string line in lines) Write(line, size, true);
        top -= Inset;
        foreach (string line in sentences) Write(line, Sentence, false);

        top = Height - Inset - Code - 1;
        var (small, parts) = Broken(address, Width - 2 * Inset);
        foreach (string part in parts) Write(part, small, false);
        return new(name, address, Width, Height, marks.ToImmutable());

        void Write(string text, double type, bool strong)
        {
            top -= type * LineHeight;
            marks.Add(new Label(new(Inset, top + 0.3 * type), text, type, TextAnchor.Start, strong));
        }
    }

    /// <summary>As large as it fits, broken between words; cut, with the sign for it, only where the smallest type is too large.</summary>
    private static (double Size, ImmutableArray<string> Lines) Fitted(string name, double width, double height)
    {
        for (double size = LargestName; size > SmallestName - 1e-9; size -= 0.25)
        {
            if (name.Split(' ').Any(word => DraftingTable.WidthOf(word, size) > width)) continue;
            ImmutableArray<string> lines = [.. DraftingTable.Lines(name, width * DraftingTable.Type / size, int.MaxValue)];
            if (lines.Length * size * LineHeight <= height) return (size, lines);
        }
        int most = Math.Max(1, (int)(height / (SmallestName * LineHeight)));
        return (SmallestName, [.. DraftingTable.Lines(name, width * DraftingTable.Type / SmallestName, most)]);
    }

    /// <summary>An address has no spaces: it is broken anywhere, and never cut, since one that lacks a letter leads nowhere.</summary>
    private static (double Size, ImmutableArray<string> Lines) Broken(string address, double width)
    {
        double size = LargestAddress;
        while (size > SmallestAddress && Lines(size).Length > (size > 0.8 * LargestAddress ? 1 : AddressLines)) size -= 0.1;
        return (size, Lines(size));

        ImmutableArray<string> Lines(double type)
        {
            var lines = ImmutableArray.CreateBuilder<string>();
            for (int from = 0, n; from < address.Length; from += n)
            {
                for (n = 1; from + n < address.Length && DraftingTable.WidthOf(address.Substring(from, n + 1), type) <= width; n++) { }
                lines.Add(address.Substring(from, n));
            }
            return lines.ToImmutable();
        }
    }
}
