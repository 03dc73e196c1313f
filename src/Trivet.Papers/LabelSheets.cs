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

/// <summary>Lays labels on sheets: the text large, what this end leads to and the other, a QR code, and whom it must not be swapped with.</summary>
public static class LabelSheets
{
    private const double Width = 210, Height = 297, Inset = 2;

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
                Draw(marks, labels[i], x, y, sheet.Width, sheet.Height);
            }
            papers.Add(new(title, title, Width, Height, marks.ToImmutable()));
        }
        return papers.ToImmutable();
    }

    private static void Draw(ImmutableArray<Mark>.Builder marks, CableLabel label, double x, double y, double w, double h)
    {
        double qr = label.Link.Length == 0 ? 0 : Math.Min(h - 2 * Inset, 0.45 * w), room = w - qr - 3 * Inset, left = x + Inset, top = y + h - Inset;
        if (qr > 0) marks.AddRange(QrMarks.Of(label.Link, new(x + w - Inset - qr, y + (h - qr) / 2), qr));
        // A number is read from afar, a cable's text from near.
        double big = qr > 0 ? Math.Min(5.5, h / 5) : Math.Min(12, h / 2.5), small = Math.Min(2.6, h / 11), barHeight = small * 1.3;
        Write(label.Text, big, true);
        if (label.Mark.Length > 0) Write(label.Mark, small, true);
        if (label.Here.Length > 0)
            foreach (string line in DraftingTable.Lines(label.Here, room * DraftingTable.Type / small)) Write(line, small, true);
        if (label.There.Length > 0) Write("– " + label.There, small);
        Write(label.Name, small);
        if (label.NotWith.Length == 0) return;
        // A bar beside the warning, so that it is seen before it is read.
        double at = y + Inset;
        marks.Add(new FillMark([new(left, at), new(left + 0.9, at), new(left + 0.9, at + barHeight), new(left, at + barHeight)]));
        marks.Add(new Label(new(left + 1.8, at + 0.3 * small), DraftingTable.Cut(label.NotWith, small, room - 1.8), small, TextAnchor.Start, true));

        void Write(string text, double size, bool strong = false)
        {
            top -= size * 1.3;
            if (top < y + Inset + (label.NotWith.Length > 0 ? barHeight : 0)) return;
            marks.Add(new Label(new(left, top + 0.3 * size), DraftingTable.Cut(text, size, room), size, TextAnchor.Start, strong));
        }
    }
}
