using Trivet.Cells;
using Trivet.Views.Drawings;
using Trivet.Views.Words;

namespace Trivet.Views.Pictures;

/// <summary>The page of a picture: its size, its label outside the drawing with a leader, its arrows.</summary>
internal static class PicturePage
{
    /// <summary>
    /// Label size: on a tablet, where the page is some 200 mm wide, capitals are 6 mm high, 20 minutes of arc at 1 m (ISO 9241-303, from memory); on a
    /// telephone 360 pixels wide still 14 pixels.
    /// </summary>
    public const double Width = 640, Height = 480, Label = 26, Band = 50, Margin = 12;

    public static Sheet New(Cell cell, string part, string description, Locale locale)
    {
        var words = locale.Language.Picture;
        string name = cell.Name ?? locale.Language.UnnamedCell;
        return new(part.Length == 0 ? Locale.Fill(words.WholeTitle, ("cell", name)) : Locale.Fill(words.Title, ("part", part), ("cell", name)), Locale.Fill(description, ("part", part)), Width, Height) { Bold = true };
    }

    /// <summary>Room for a label, also where a page has no narrow face and sets it wider.</summary>
    public static double Room(string text, double size = Label) => 1.15 * TextMetrics.Width(text, size);

    /// <summary>The label in a band over or under the drawing, its leader down or up to a dot on the part.</summary>
    public static void Leader(Sheet sheet, string text, (double X, double Y) part, bool above, double left = Margin, double right = Width - Margin)
    {
        text = TextMetrics.Cut(text, Label, (right - left) / 1.15);
        double w = Room(text), x = Math.Clamp(part.X - w / 2, left, right - w), baseline = above ? Margin + 22 : Height - Margin - 8;
        sheet.Text(x + w / 2, baseline, text, Label, "k", Anchor.Middle);
        if (!double.IsFinite(part.X)) return;
        double shelf = above ? baseline + 9 : baseline - 27;
        // Not upright, so that it is not taken for a post.
        double elbow = Math.Clamp(part.X + (part.X > x + w / 2 ? -28 : 28), x + 6, x + w - 6);
        sheet.Line(x, shelf, x + w, shelf, "y");
        sheet.Line(elbow, shelf, part.X, part.Y, "y");
        sheet.Circle(part.X, part.Y, 4.5, "j");
    }

    /// <summary>A block arrow from one point towards another, filled with paper.</summary>
    public static void Arrow(Sheet sheet, (double X, double Y) from, (double X, double Y) to, double width = 9)
    {
        double dx = to.X - from.X, dy = to.Y - from.Y, n = Math.Sqrt(dx * dx + dy * dy);
        if (n < 1) return;
        (dx, dy) = (dx / n, dy / n);
        double head = Math.Min(2.4 * width, 0.6 * n), neck = n - head;
        (double, double) At(double along, double across) => (from.X + along * dx - across * dy, from.Y + along * dy + across * dx);
        sheet.Polygon([At(0, width / 2), At(neck, width / 2), At(neck, 1.15 * width), At(n, 0), At(neck, -1.15 * width), At(neck, -width / 2), At(0, -width / 2)], "u");
    }

    /// <summary>What a part is called on a picture.</summary>
    public static string Name(Cell cell, string pointer, Locale locale)
    {
        var words = locale.Language.Picture;
        return Fields.Path(pointer) switch
        {
            [] => "",
            ["frame", "feet"] => words.Feet,
            ["frame", "feet", var post] => post,
            ["frame", "members", var member, ..] => member,
            ["frame", ..] => words.Frame,
            ["robot", "platform", ..] => words.Platform,
            ["robot", "rotary", ..] => words.Rotary,
            ["robot", "linearAxis", ..] => words.LinearAxis,
            ["robot", "chains", var chain, ..] => Fields.Words(cell, "/robot/chains/" + chain, locale),
            ["drives", "axes", var axis, ..] => Fields.Words(cell, "/drives/axes/" + axis, locale),
            ["robot", ..] => words.Robot,
            ["mount", ..] => words.Base,
            ["tool", "parts", var part, ..] => Fields.Words(cell, "/tool/parts/" + part, locale),
            ["tool", ..] => words.Tool,
            ["cabinet"] or ["cabinet", not "modules", ..] or ["io", "signals" or "banks"] => words.Cabinet,
            [var list, var id, ..] when list is "stations" or "cables" => Fields.Words(cell, $"/{list}/{id}", locale),
            [var trade, var list, var id, ..] => Fields.Words(cell, $"/{trade}/{list}/{id}", locale),
            _ => Fields.Words(cell, pointer, locale),
        };
    }
}
