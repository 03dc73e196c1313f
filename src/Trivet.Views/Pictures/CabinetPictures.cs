using System.Collections.Immutable;
using Trivet.Assessment;
using Trivet.Cabling;
using Trivet.Cells;
using Trivet.Views.Cabling;
using Trivet.Views.Drawings;
using Trivet.Views.Wiring;
using Trivet.Views.Words;

namespace Trivet.Views.Pictures;

/// <summary>One module on its rail with what its switches read, and one cable with both its ends.</summary>
internal static class CabinetPictures
{
    private const double Top = 104, Tall = 150, Unstated = 0.045, Hatch = 9;

    /// <summary>The rail with a module marked; the whole strip with all addresses where no module is meant.</summary>
    public static Drawing? Rail(Assessed cell, string pointer, Locale locale)
    {
        if (cell.Cell.Cabinet.Modules.IsEmpty) return null;
        var rail = WiringSheet.Of(cell.Cell, locale);
        if (rail.Modules.FirstOrDefault(m => pointer == "/cabinet/modules/" + m.Id || pointer.StartsWith($"/cabinet/modules/{m.Id}/", StringComparison.Ordinal)) is not { } own) return CabinetStrip.Of(rail, locale);
        var sheet = PicturePage.New(cell.Cell, own.Name, locale.Language.Picture.Rail, locale);
        const double room = PicturePage.Width - 2 * PicturePage.Margin;
        double total = rail.Modules.Sum(m => m.Gap + Width(m)), scale = Math.Min(room / total, 2400), x = (PicturePage.Width - total * scale) / 2;
        sheet.Line(Math.Max(2, x - 8), Top + Tall / 2, Math.Min(PicturePage.Width - 2, x + total * scale + 8), Top + Tall / 2, "e");
        var at = (X: 0.0, Width: 0.0);
        foreach (var module in rail.Modules)
        {
            x += module.Gap * scale;
            double width = Width(module) * scale;
            if (ReferenceEquals(module, own)) at = (x, width);
            else sheet.Rectangle(new(x, Top, width, Tall), "p");
            x += width;
        }

        Marked(sheet, new(at.X, Top, at.Width, Tall));
        PicturePage.Leader(sheet, own.Name, (at.X + at.Width / 2, Top + 20), true);
        Switches(sheet, own, at.X + at.Width / 2);
        return sheet.Finish();
    }

    private static double Width(WiringRow module) => double.IsFinite(module.Width) && module.Width > 0 ? module.Width : Unstated;

    private static void Marked(Sheet sheet, Box box)
    {
        sheet.Rectangle(box, "p");
        var lines = new List<PageLine>();
        for (double s = Hatch; s < box.Width + box.Height; s += Hatch)
        {
            double from = Math.Max(0, s - box.Height), to = Math.Min(box.Width, s);
            lines.Add(new(Pen.Hatch, box.X + from, box.Y + s - from, box.X + to, box.Y + s - to));
        }

        sheet.Path(LineWork.Path(lines), "n");
        sheet.Rectangle(box, "r");
    }

    /// <summary>The switches large, in the order they are read.</summary>
    private static void Switches(Sheet sheet, WiringRow own, double middle)
    {
        int n = own.Digits.Length;
        if (n == 0) return;
        bool levers = !own.LeversUp.IsEmpty;
        double size = Math.Min(levers ? 40 : 76, (PicturePage.Width - 2 * PicturePage.Margin) / n), y = Top + Tall + 70;
        double x = Math.Clamp(middle - n * size / 2, PicturePage.Margin, PicturePage.Width - PicturePage.Margin - n * size);
        sheet.Line(middle, Top + Tall + 4, Math.Clamp(middle, x + 8, x + n * size - 8), y - 8, "y");
        for (int i = 0; i < n; i++, x += size)
        {
            if (levers)
            {
                sheet.Rectangle(new(x + 4, y, size - 8, 92), "p");
                sheet.Rectangle(new(x + 4, own.LeversUp[i] ? y : y + 46, size - 8, 46), "u");
            }
            else
            {
                sheet.Rectangle(new(x + 4, y, size - 8, size - 8), "u");
                sheet.Text(x + size / 2, y + (size - 8) / 2 + 14, own.Digits[i], 40, "k", Anchor.Middle);
            }
        }
    }

    private const double EndWide = 200, EndTall = 96, Small = 18;

    /// <summary>A cable between its two ends; over and under it up to two others whose plugs fit there.</summary>
    public static Drawing? Cable(Assessed assessed, string pointer, Locale locale)
    {
        var cell = assessed.Cell;
        if (Fields.Path(pointer) is not ["cables", var id, ..] || !cell.Cables.TryGetValue(id, out var cable)) return null;
        string label = CableSections.LabelOf(cell, id);
        var words = locale.Language.Picture;
        var sheet = PicturePage.New(cell, label, words.Cable, locale);
        const double middle = PicturePage.Height / 2, left = PicturePage.Margin, right = PicturePage.Width - PicturePage.Margin - EndWide;
        End(sheet, cell, left, middle, cable.From, cable.FromEnd, "r");
        End(sheet, cell, right, middle, cable.To, cable.ToEnd, "r");
        sheet.Line(left + EndWide, middle, right, middle, "r");
        sheet.Text(PicturePage.Width / 2, middle - 16, TextMetrics.Cut(label, PicturePage.Label, right - left - EndWide - 12), PicturePage.Label, "k", Anchor.Middle);
        if (cable.Mark is { } mark) sheet.Text(PicturePage.Width / 2, middle + 30, TextMetrics.Cut(mark, Small, right - left - EndWide - 12), Small, "s", Anchor.Middle);

        var groups = SwapGroups.Of(cell, new()).Where(g => g.Ends.Any(e => e.Cable == id)).ToArray();
        var others = groups.SelectMany(g => g.Ends).Where(e => e.Cable != id).Select(e => e.Cable).Distinct().Take(2).ToArray();
        for (int i = 0; i < others.Length; i++)
        {
            double y = i == 0 ? PicturePage.Margin + EndTall / 2 : PicturePage.Height - PicturePage.Margin - EndTall / 2;
            bool atLeft = false, atRight = false;
            foreach (var group in groups)
                foreach (var end in group.Ends.Where(e => e.Cable == others[i]))
                {
                    bool from = group.Ends.Any(e => e.Cable == id && e.AtFrom);
                    if (from ? atLeft : atRight) continue;
                    (atLeft, atRight) = (atLeft || from, atRight || !from);
                    var other = cell.Cables[others[i]];
                    End(sheet, cell, from ? left : right, y, end.AtFrom ? other.From : other.To, end.AtFrom ? other.FromEnd : other.ToEnd, "h");
                }

            sheet.Line(atLeft ? left + EndWide : left + EndWide + 40, y, atRight ? right : right - 40, y, "h");
            double room = right - left - EndWide - 12;
            sheet.Text(PicturePage.Width / 2, y - 12, TextMetrics.Cut(CableSections.LabelOf(cell, others[i]), PicturePage.Label, room), PicturePage.Label, "s", Anchor.Middle);
            sheet.Text(PicturePage.Width / 2, y + 26, TextMetrics.Cut(words.NotThis, Small, room), Small, "s", Anchor.Middle);
        }

        return sheet.Finish();
    }

    private static void End(Sheet sheet, Cell cell, double x, double middle, string? place, CableEnd end, string style)
    {
        sheet.Rectangle(new(x, middle - EndTall / 2, EndWide, EndTall), style);
        var lines = TextMetrics.Wrap(CableSections.PlaceOf(cell, place), Small + 2, (EndWide - 20) / 1.15, 2);
        string socket = string.Join(' ', new[] { end.Socket, end.Connector, end.Coding }.OfType<string>());
        double y = middle - (lines.Count + (socket.Length > 0 ? 1 : 0)) * 13 + 20;
        foreach (string line in lines)
        {
            sheet.Text(x + 12, y, line, Small + 2, "k");
            y += 26;
        }

        if (socket.Length > 0) sheet.Text(x + 12, y, TextMetrics.Cut(socket, Small, (EndWide - 20) / 1.15), Small, "s");
    }
}
