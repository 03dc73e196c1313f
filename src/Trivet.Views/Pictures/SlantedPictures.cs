using System.Collections.Immutable;
using Trivet.Assessment;
using Trivet.Numerics;
using Trivet.Views.Drawings;
using Trivet.Views.Words;

namespace Trivet.Views.Pictures;

/// <summary>The whole cell and a detail of it, seen at a slant.</summary>
internal static class SlantedPictures
{
    public const double Elevation = 22 * Math.PI / 180;

    private const double DetailElevation = 28 * Math.PI / 180;

    /// <summary>How far a detail shows what is round the part, metres, and how small it may get.</summary>
    private const double Round = 0.05, Smallest = 0.42;

    private const double KeyWidth = 150;

    public static Drawing? Whole(Assessed cell, string pointer, Fitted fitted, bool hidden, Locale locale)
    {
        var pieces = Of(cell, pointer, fitted);
        if (pieces.IsEmpty) return null;
        if (pointer.Length > 0 && !pieces.Any(p => p.Marked)) return null;
        return Draw(cell, pointer, pieces, SolidPicture.Best(pieces, Elevation), hidden, locale, locale.Language.Picture.Whole);
    }

    /// <param name="more">What is drawn over the solids.</param>
    /// <param name="name">What the marked part is called; that of the pointer where not given.</param>
    public static Drawing Draw(
        Assessed cell, string pointer, ImmutableArray<Piece> pieces, Axonometry view, bool hidden, Locale locale, string description, Action<Sheet, SolidPicture>? more = null, string? name = null)
    {
        bool any = pieces.Any(p => p.Marked), nothing = any && Nothing(pieces, view);
        name ??= any ? PicturePage.Name(cell.Cell, pointer, locale) : "";
        var sheet = PicturePage.New(cell.Cell, name, nothing ? locale.Language.Picture.Hidden : description, locale);
        var window = Window.Of(pieces, view);
        bool above = !any || Window.Of(pieces.Where(p => p.Marked), view).Middle.Y > window.Middle.Y;
        double band = any ? PicturePage.Band : 0;
        var picture = new SolidPicture(view, window, new(PicturePage.Margin, PicturePage.Margin + (above ? band : 0), PicturePage.Width - 2 * PicturePage.Margin, PicturePage.Height - 2 * PicturePage.Margin - band));
        var at = picture.Draw(sheet, pieces, hidden || nothing);
        more?.Invoke(sheet, picture);
        if (any) PicturePage.Leader(sheet, name, double.IsFinite(at.X) ? at : Middle(pieces, picture), above);
        return sheet.Finish();
    }

    /// <summary>A part from near by in a border, and beside it the whole machine small, with the part marked.</summary>
    public static Drawing? Detail(
        Assessed cell, string pointer, Fitted fitted, bool hidden, Locale locale, string? description = null, Action<Sheet, SolidPicture>? more = null)
    {
        var pieces = Of(cell, pointer, fitted);
        if (!pieces.Any(p => p.Marked)) return Whole(cell, pointer, fitted, hidden, locale);
        return Near(cell, pieces, PicturePage.Name(cell.Cell, pointer, locale), hidden, locale, description, more);
    }

    /// <summary>The same of solids that are marked already.</summary>
    public static Drawing Near(
        Assessed cell, ImmutableArray<Piece> pieces, string name, bool hidden, Locale locale, string? description = null, Action<Sheet, SolidPicture>? more = null)
    {
        var view = SolidPicture.Best(pieces, DetailElevation);
        bool behind = hidden || Nothing(pieces, view);
        var sheet = PicturePage.New(cell.Cell, name, description ?? locale.Language.Picture.Detail, locale);
        var box = new Box(PicturePage.Margin, PicturePage.Margin + PicturePage.Band, PicturePage.Width - 3 * PicturePage.Margin - KeyWidth, PicturePage.Height - 2 * PicturePage.Margin - PicturePage.Band);
        var picture = new SolidPicture(view, Around(pieces, view, box), box);
        var at = picture.Draw(sheet, Opened(pieces, view), behind);
        sheet.Rectangle(picture.Area, "b");
        more?.Invoke(sheet, picture);
        Key(sheet, pieces, view, new(PicturePage.Width - PicturePage.Margin - KeyWidth, box.Y, KeyWidth, box.Height));
        PicturePage.Leader(sheet, name, double.IsFinite(at.X) ? at : Middle(pieces, picture), true);
        return sheet.Finish();
    }

    /// <summary>The solids of a cell with a part marked. Guards are far out, so that with them all else is small: they are drawn where one is meant.</summary>
    private static ImmutableArray<Piece> Of(Assessed cell, string pointer, Fitted fitted) =>
        Marked(CellSolids.Of(cell, pointer.StartsWith("/guarding", StringComparison.Ordinal) ? fitted : fitted & ~Fitted.Guards), pointer);

    /// <summary>Without the members and ducts that stand before the marked part: the small picture beside the detail shows them.</summary>
    private static ImmutableArray<Piece> Opened(ImmutableArray<Piece> pieces, Axonometry view)
    {
        var marked = pieces.Where(p => p.Marked).ToArray();
        return [.. pieces.Where(p => p.Marked || !p.Pointers.Any(o => o.StartsWith("/frame/members", StringComparison.Ordinal) || o.StartsWith("/frame/box", StringComparison.Ordinal) || o.StartsWith("/cabling/ways", StringComparison.Ordinal)) || !Covers(p))];

        bool Covers(Piece piece)
        {
            var shadow = new Shadow(piece.Solid, view);
            return Array.Exists(marked, m => m.Solid.Edges.Any(e =>
            {
                Vec3 a = m.Solid.Vertices[e.From], b = m.Solid.Vertices[e.To];
                return shadow.Near(view.At(a), view.At(b)) && shadow.Hides(a, b) is var (from, to) && from < to;
            }));
        }
    }

    /// <summary>The window of a detail: the marked part and some way round it, in the shape of its box.</summary>
    public static Window Around(ImmutableArray<Piece> pieces, Axonometry view, Box box)
    {
        var own = Window.Of(pieces.Where(p => p.Marked), view);
        own = own.Grown(Math.Max(Round, 0.2 * Math.Max(own.Width, own.Height)));
        double scale = Math.Max(Math.Max(own.Width, Smallest) / box.Width, Math.Max(own.Height, Smallest) / box.Height);
        var (x, y) = own.Middle;
        return new(x - scale * box.Width / 2, y - scale * box.Height / 2, x + scale * box.Width / 2, y + scale * box.Height / 2);
    }

    /// <summary>The outlines of the whole machine, small, with the marked part.</summary>
    private static void Key(Sheet sheet, ImmutableArray<Piece> pieces, Axonometry view, Box box)
    {
        var key = new SolidPicture(view, Window.Of(pieces, view), box);
        key.DrawOutlines(sheet, pieces);
    }

    /// <summary>Pieces with those marked that stand for a part, or for the nearest one above it that is drawn.</summary>
    public static ImmutableArray<Piece> Marked(ImmutableArray<Piece> pieces, string pointer)
    {
        for (string at = pointer; at.Length > 0; at = at[..at.LastIndexOf('/')])
            if (pieces.Any(p => p.Pointers.Any(o => Belongs(o, at)))) return [.. pieces.Select(p => p with { Marked = p.Pointers.Any(o => Belongs(o, at)) })];
        return pieces;
    }

    private static bool Belongs(string own, string pointer) =>
        own.StartsWith(pointer, StringComparison.Ordinal) && (own.Length == pointer.Length || own[pointer.Length] is '/' or '#');

    private static bool Nothing(ImmutableArray<Piece> pieces, Axonometry view) => !HiddenLines.Of(pieces, view, markedOnly: true).Any(l => l.Length > 0.004);

    private static (double X, double Y) Middle(ImmutableArray<Piece> pieces, SolidPicture picture)
    {
        var marked = pieces.Where(p => p.Marked).ToArray();
        var (x, y) = picture.At(marked.Aggregate(Vec3.Zero, (s, p) => s + p.Solid.Middle) / marked.Length);
        return (Math.Clamp(x, picture.Area.X, picture.Area.Right), Math.Clamp(y, picture.Area.Y, picture.Area.Bottom));
    }
}
