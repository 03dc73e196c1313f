using System.Collections.Immutable;
using Trivet.Views.Cabling;
using Trivet.Views.Papers;

namespace Trivet.Papers;

/// <summary>A sheet of labels that printers take, by its sizes in millimetres.</summary>
/// <param name="Id">Columns and rows: <c>3x8</c>.</param>
/// <param name="PitchX">From a label's left edge to the next one's.</param>
public sealed record LabelSheet(string Id, int Columns, int Rows, double Left, double Top, double Width, double Height, double PitchX, double PitchY)
{
    /// <summary>Common sheets of A4 (sizes as stationers print them; common practice, no source).</summary>
    public static ImmutableArray<LabelSheet> A4 { get; } =
    [
        new("3x8", 3, 8, 0, 0.5, 70, 37, 70, 37),
        new("3x7", 3, 7, 7.2, 15.1, 63.5, 38.1, 66.1, 38.1),
        new("4x10", 4, 10, 8, 21.5, 48.5, 25.4, 48.5, 25.4),
        new("5x13", 5, 13, 4.7, 10.7, 38.1, 21.2, 40.6, 21.2),
    ];

    public int PerPage => Columns * Rows;
}

/// <summary>
/// Lays labels on sheets: the text large, what this end leads to and the other, a QR code, and whom it must not be swapped with. Nothing is cut: type and code are made smaller until all fits, as far as both
/// can still be read; what does not fit even then is left out whole, the cable's name first, and told by <see cref="Shortened"/>.
/// </summary>
public static class LabelSheets
{
    private const double Width = 210, Height = 297, Inset = 2, LineHeight = 1.3, Bar = 1.8;

    /// <summary>Smallest type that is read at arm's length, and smallest share of its room that a code may take (common practice, no source), millimetres and 1.</summary>
    private const double SmallestType = 1.5, ReadableType = 1.9, SmallestCode = 0.7;

    /// <param name="skip">Labels of the first sheet that are used up already.</param>
    public static ImmutableArray<Paper> Of(string title, ImmutableArray<CableLabel> labels, LabelSheet sheet, int skip = 0)
    {
        var papers = ImmutableArray.CreateBuilder<Paper>();
        for (int first = -Math.Clamp(skip, 0, sheet.PerPage - 1); first < labels.Length; first += sheet.PerPage)
        {
            var marks = ImmutableArray.CreateBuilder<Mark>();
            for (int place = 0; place < sheet.PerPage; place++)
            {
                int i = first + place;
                if (i < 0 || i >= labels.Length) continue;
                double x = sheet.Left + place % sheet.Columns * sheet.PitchX, y = Height - sheet.Top - place / sheet.Columns * sheet.PitchY - sheet.Height;
                Draw(marks, Laid.Out(labels[i], sheet), x, y, sheet);
            }
            papers.Add(new(title, title, Width, Height, marks.ToImmutable()));
        }
        return papers.ToImmutable();
    }

    /// <summary>The texts of the labels that something had to be left out of on such a sheet.</summary>
    public static ImmutableArray<string> Shortened(ImmutableArray<CableLabel> labels, LabelSheet sheet) =>
        [.. labels.Where(l => Laid.Out(l, sheet).LeftOut).Select(l => l.Text).Distinct()];

    private static void Draw(ImmutableArray<Mark>.Builder marks, Laid laid, double x, double y, LabelSheet sheet)
    {
        if (laid.Code > 0) marks.AddRange(QrMarks.Of(laid.Label.Link, new(x + sheet.Width - Inset - laid.Code, y + (sheet.Height - laid.Code) / 2), laid.Code));
        double left = x + Inset, top = y + sheet.Height - Inset;
        Write(laid.Label.Text, laid.Big, true);
        foreach (var (text, strong) in laid.Lines) Write(text, laid.Small, strong);
        if (laid.Warning.Count == 0) return;
        // A bar beside the warning, so that it is seen before it is read.
        double height = laid.Warning.Count * laid.Small * LineHeight, at = y + Inset;
        marks.Add(new FillMark([new(left, at), new(left + 0.9, at), new(left + 0.9, at + height), new(left, at + height)]));
        top = at + height;
        left += Bar;
        foreach (string line in laid.Warning) Write(line, laid.Small, true);

        void Write(string text, double size, bool strong)
        {
            top -= size * LineHeight;
            marks.Add(new Label(new(left, top + 0.3 * size), text, size, TextAnchor.Start, strong));
        }
    }

    /// <summary>A label with its sizes and lines.</summary>
    private sealed record Laid(CableLabel Label, double Code, double Big, double Small, IReadOnlyList<(string Text, bool Strong)> Lines, IReadOnlyList<string> Warning, bool LeftOut)
    {
        public static Laid Out(CableLabel label, LabelSheet sheet)
        {
            // What is least needed where the cable is plugged in goes first: its name, what the other end leads to, its mark.
            CableLabel[] less = [label, label with { Name = "" }, label with { Name = "", There = "" }, label with { Name = "", There = "", Mark = "" }];
            double h = sheet.Height, code = label.Link.Length == 0 ? 0 : Math.Min(h - 2 * Inset, 0.45 * sheet.Width), start = Math.Min(2.6, h / 11);
            foreach (var own in less)
            {
                // First smaller type that is still read with ease, then a smaller code, then both as small as may be.
                for (double small = start; small > ReadableType - 1e-9; small -= 0.1) if (Try(own, code, small) is { } laid) return laid;
                for (double share = 1; share > SmallestCode - 1e-9; share -= 0.05)
                    for (double small = Math.Min(start, ReadableType); small > SmallestType - 1e-9; small -= 0.1)
                        if (Try(own, code * share, small) is { } laid) return laid;
            }
            // A single word wider than the label: it is cut, with the sign for it.
            double room = sheet.Width - code - 3 * Inset;
            return new(label, code, SmallestType, SmallestType, [(DraftingTable.Cut(label.Here, SmallestType, room), true)],
                label.NotWith.Length == 0 ? [] : [DraftingTable.Cut(label.NotWith, SmallestType, room - Bar)], true);

            Laid? Try(CableLabel own, double qr, double small)
            {
                double room = sheet.Width - qr - 3 * Inset, big = qr > 0 ? Math.Min(5.5, h / 5) : Math.Min(12, h / 2.5);
                big = Math.Min(big, big * room / DraftingTable.WidthOf(own.Text, big));
                var lines = new List<(string, bool)>();
                Add(own.Mark, true);
                Add(own.Here, true);
                Add(own.There.Length == 0 ? "" : "– " + own.There, false);
                Add(own.Name, false);
                var warning = Wrapped(own.NotWith, room - Bar);
                bool fits = big >= small && big * LineHeight + (lines.Count + warning.Count) * small * LineHeight <= h - 2 * Inset + 1e-9
                    && Whole(room, own.Mark, own.Here, own.There, own.Name) && Whole(room - Bar, own.NotWith);
                return fits ? new(label, qr, big, small, lines, warning, own != label) : null;

                // A line is broken between words only.
                bool Whole(double most, params ReadOnlySpan<string> texts)
                {
                    foreach (string text in texts)
                        foreach (string word in text.Split(' ')) if (DraftingTable.WidthOf(word, small) > most) return false;
                    return true;
                }

                void Add(string text, bool strong) => lines.AddRange(Wrapped(text, room).Select(l => (l, strong)));

                List<string> Wrapped(string text, double most) => text.Length == 0 ? [] : [.. DraftingTable.Lines(text, most * DraftingTable.Type / small, int.MaxValue)];
            }
        }
    }
}
