using System.Collections.Immutable;
using Trivet.Assessment;
using Trivet.Cells;
using Trivet.Numerics;
using Trivet.Views.Drawings;
using Trivet.Views.Words;

namespace Trivet.Views.Pictures;

/// <summary>Which way things are turned: the robot from above with its chains as numbered, the platform from below. The first chain is the marked one.</summary>
internal static class TurnedPictures
{
    private const double Side = 140, Over = 46, Axis = 46, AxisText = 20;

    public static Drawing? FromAbove(Assessed cell, Locale locale)
    {
        var chains = Chains(cell);
        if (chains.IsEmpty) return null;
        // The base under everything, so that it hides nothing of what it hangs over.
        var pieces = Marked(CellSolids.Of(cell, Fitted.Robot).Where(p => p.Pointers.Any(o => o.StartsWith("/robot", StringComparison.Ordinal))), chains[0].Id)
            .Select(p => p.Pointers.Contains("/mount") ? p with { Solid = p.Solid.Moved(-5 * Vec3.UnitZ) } : p).ToImmutableArray();
        return Draw(cell, pieces, Axonometry.FromAbove, Window.Of(pieces, Axonometry.FromAbove), [.. chains.Select((c, i) => (Name(c.Id, i), c.Start, i == 0))], true, locale.Language.Picture.FromAbove, locale);

        string Name(string id, int i) => $"{(i + 1).ToString(locale.Culture)} · {id}";
    }

    public static Drawing? FromBelow(Assessed cell, Fitted fitted, Locale locale)
    {
        var chains = Chains(cell);
        var pieces = Marked(CellSolids.Of(cell, fitted & Fitted.Tool | Fitted.Platform | Fitted.Rods), chains.IsEmpty ? "" : chains[0].Id);
        var platform = pieces.Where(p => p.Pointers.Contains("/robot/platform")).ToArray();
        if (platform.Length == 0 || chains.IsEmpty) return null;
        var window = Window.Of(platform, Axonometry.FromBelow);
        return Draw(cell, pieces, Axonometry.FromBelow, window.Grown(0.6 * Math.Max(window.Width, window.Height)), [.. chains.Select((c, i) => (c.Id, c.PlatformJoint, i == 0))], false, locale.Language.Picture.FromBelow, locale);
    }

    private static Drawing Draw(
        Assessed cell, ImmutableArray<Piece> pieces, Axonometry view, Window window, ImmutableArray<(string Text, Vec3 At, bool First)> labels, bool sense, string description, Locale locale)
    {
        var words = locale.Language.Picture;
        var sheet = PicturePage.New(cell.Cell, sense ? words.Base : words.Platform, description, locale);
        var picture = new SolidPicture(view, window, new(Side, Over, PicturePage.Width - 2 * Side, PicturePage.Height - 2 * Over));
        picture.Draw(sheet, pieces);
        var centre = (X: picture.Area.X + picture.Area.Width / 2, Y: picture.Area.Y + picture.Area.Height / 2);
        var middle = labels.Aggregate(Vec3.Zero, (s, l) => s + l.At) / labels.Length;
        Axes(sheet, view);
        foreach (var (text, at, first) in labels) Outside(sheet, picture, centre, picture.At(middle), picture.At(at), text, first ? "k" : "");
        if (sense && labels.Length > 2) Sense(sheet, picture.At(middle), picture.At(labels[0].At), picture.At(labels[1].At));
        return sheet.Finish();
    }

    /// <summary>A label outside the drawing in the direction in which its chain stands.</summary>
    private static void Outside(Sheet sheet, SolidPicture picture, (double X, double Y) centre, (double X, double Y) middle, (double X, double Y) at, string text, string style)
    {
        double dx = at.X - middle.X, dy = at.Y - middle.Y, n = Math.Max(1e-9, Math.Sqrt(dx * dx + dy * dy));
        (dx, dy) = (dx / n, dy / n);
        double w = PicturePage.Room(text), reach = Math.Min((picture.Area.Width / 2 + 24) / Math.Max(Math.Abs(dx), 1e-6), (picture.Area.Height / 2 + 16) / Math.Max(Math.Abs(dy), 1e-6));
        double ex = centre.X + reach * dx, ey = centre.Y + reach * dy;
        bool aside = Math.Abs(dx) > 0.45;
        double x = Math.Clamp(aside ? dx > 0 ? ex + 6 : ex - 6 - w : ex + 10, PicturePage.Margin, PicturePage.Width - PicturePage.Margin - w);
        double y = Math.Clamp(ey + 9, PicturePage.Margin + 20, PicturePage.Height - PicturePage.Margin - 6);
        // Up the page until nothing else is written there.
        while (y > PicturePage.Margin + 40 && !sheet.Free(Sheet.BoxOf(x, y, text, PicturePage.Label, Anchor.Start, false))) y -= 8;
        bool toLeft = aside && dx < 0;
        sheet.Line(at.X, at.Y, toLeft ? x + w + 5 : x - 5, y - 9, "y");
        sheet.Circle(at.X, at.Y, 4.5, "j");
        sheet.Text(toLeft ? x + w : x, y, text, PicturePage.Label, style, toLeft ? Anchor.End : Anchor.Start);
    }

    /// <summary>An arrow round the middle from the first chain to the second.</summary>
    private static void Sense(Sheet sheet, (double X, double Y) middle, (double X, double Y) first, (double X, double Y) second)
    {
        double from = Math.Atan2(first.Y - middle.Y, first.X - middle.X), turn = Math.IEEERemainder(Math.Atan2(second.Y - middle.Y, second.X - middle.X) - from, Math.Tau);
        double radius = 0.45 * Math.Sqrt(Math.Pow(first.X - middle.X, 2) + Math.Pow(first.Y - middle.Y, 2));
        (double X, double Y) On(double part, double r) => (middle.X + r * Math.Cos(from + part * turn), middle.Y + r * Math.Sin(from + part * turn));
        sheet.Polyline(Enumerable.Range(0, 25).Select(i => On(0.12 + i / 24.0 * 0.68, radius)), "y");
        sheet.Polygon([On(0.92, radius), On(0.79, radius - 7), On(0.79, radius + 7)], "u");
    }

    /// <summary>The cell's x and y as they lie on the page, in the lower left corner.</summary>
    private static void Axes(Sheet sheet, Axonometry view)
    {
        double down = view.At(Vec3.UnitY).Y < 0 ? 1 : -1;
        var origin = (X: PicturePage.Margin + 12, Y: down < 0 ? PicturePage.Height - PicturePage.Margin - 12 : PicturePage.Height - PicturePage.Margin - Axis - 30);
        foreach (var (axis, name) in ((Vec3, string)[])[(Vec3.UnitX, "+X"), (Vec3.UnitY, "+Y")])
        {
            var (x, y) = view.At(axis);
            var tip = (X: origin.X + Axis * x, Y: origin.Y - Axis * y);
            PicturePage.Arrow(sheet, origin, tip, 3);
            sheet.Text(tip.X + (x > 0.5 ? 6 : 8), tip.Y + (Math.Abs(y) > 0.5 ? (y > 0 ? 12 : 6) : 7), name, AxisText);
        }
    }

    private static ImmutableArray<Piece> Marked(IEnumerable<Piece> pieces, string chain) =>
        [.. pieces.Select(p => p with { Marked = p.Pointers.Contains("/robot/chains/" + chain) })];

    /// <summary>Chains in their order, as they stand in the pictures.</summary>
    private static ImmutableArray<ChainPosture> Chains(Assessed cell)
    {
        var posture = Posture.Representative(cell, null) ?? Posture.At(cell, Vec3.NaN, 0, Scene.AlongAxis(cell));
        if (posture is null) return [];
        return [.. cell.Cell.Robot.Chains.InOrder().Select(c => posture.Chains.FirstOrDefault(p => p.Id == c.Key)).OfType<ChainPosture>()];
    }
}
