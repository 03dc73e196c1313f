using System.Collections.Immutable;
using Trivet.Numerics;
using Trivet.Views.Drawings;

namespace Trivet.Views.Pictures;

/// <summary>A rectangle of the projection's plane, metres, y up.</summary>
internal readonly record struct Window(double Left, double Low, double Right, double High)
{
    public double Width => Right - Left;
    public double Height => High - Low;
    public (double X, double Y) Middle => ((Left + Right) / 2, (Low + High) / 2);

    public static Window Of(IEnumerable<Piece> pieces, Axonometry view)
    {
        var w = new Window(double.PositiveInfinity, double.PositiveInfinity, double.NegativeInfinity, double.NegativeInfinity);
        foreach (var p in pieces.SelectMany(p => p.Solid.Vertices).Select(view.At))
            w = new(Math.Min(w.Left, p.X), Math.Min(w.Low, p.Y), Math.Max(w.Right, p.X), Math.Max(w.High, p.Y));
        return w;
    }

    public Window Grown(double by) => new(Left - by, Low - by, Right + by, High + by);
}

/// <summary>Solids put on a sheet: the part of the projection's plane in a window, as large as it fits a box of the sheet.</summary>
internal sealed class SolidPicture
{
    private const double HatchPitch = 8;
    private readonly Window _window;
    private readonly double _scale;

    public SolidPicture(Axonometry view, Window window, Box box)
    {
        (View, _window) = (view, window);
        _scale = Math.Min(box.Width / Math.Max(window.Width, 1e-3), box.Height / Math.Max(window.Height, 1e-3));
        double width = window.Width * _scale, height = window.Height * _scale;
        Area = new(box.X + (box.Width - width) / 2, box.Y + (box.Height - height) / 2, width, height);
    }

    public Axonometry View { get; }

    /// <summary>What of the sheet the window takes.</summary>
    public Box Area { get; }

    public (double X, double Y) At(Vec3 p)
    {
        var (x, y) = View.At(p);
        return (Area.X + (x - _window.Left) * _scale, Area.Bottom - (y - _window.Low) * _scale);
    }

    /// <summary>Draws the lines and says where the marked part is seen best; not a number where nothing of it is.</summary>
    /// <param name="behind">Hidden edges of the marked part too, dashed.</param>
    public (double X, double Y) Draw(Sheet sheet, IReadOnlyList<Piece> pieces, bool behind = false)
    {
        var lines = LineWork.Once(LineWork.Cut(
            HiddenLines.Of(pieces, View, HatchPitch / _scale, behind).Select(OnSheet), Area.X, Area.Y, Area.Right, Area.Bottom));
        foreach (var pen in Enum.GetValues<Pen>())
        {
            string path = LineWork.Path(lines.Where(l => l.Pen == pen));
            if (path.Length > 0) sheet.Path(path, pen switch { Pen.Behind => "v", Pen.Hatch => "n", Pen.Inner => "e", Pen.Outline => "o", Pen.MarkedInner => "i", _ => "r" });
        }

        // The middle of the longest hatch line is well within a face that is seen.
        var marked = lines.Where(l => l.Pen == Pen.Hatch).DefaultIfEmpty(new(Pen.Hatch, double.NaN, double.NaN, double.NaN, double.NaN))
            .OrderByDescending(l => Math.Round(l.Length, 1)).ThenBy(l => Math.Round(l.X1, 1)).First();
        return ((marked.X1 + marked.X2) / 2, (marked.Y1 + marked.Y2) / 2);
    }

    /// <summary>Outlines alone: enough to see where in a machine something is, where there is no room for more.</summary>
    public void DrawOutlines(Sheet sheet, IReadOnlyList<Piece> pieces)
    {
        var lines = LineWork.Once(HiddenLines.Of(pieces, View).Where(l => l.Pen is Pen.Outline or Pen.MarkedOutline).Select(OnSheet));
        sheet.Path(LineWork.Path(lines.Where(l => l.Pen == Pen.Outline)), "e");
        sheet.Path(LineWork.Path(lines.Where(l => l.Pen == Pen.MarkedOutline)), "w");
    }

    private PageLine OnSheet(PageLine l) => l with
    {
        X1 = Area.X + (l.X1 - _window.Left) * _scale,
        Y1 = Area.Bottom - (l.Y1 - _window.Low) * _scale,
        X2 = Area.X + (l.X2 - _window.Left) * _scale,
        Y2 = Area.Bottom - (l.Y2 - _window.Low) * _scale,
    };

    /// <summary>
    /// From where to look: of some directions round the cell, the operator's first, the first one from which nearly as much of the marked part is seen as from
    /// the best.
    /// </summary>
    public static Axonometry Best(ImmutableArray<Piece> pieces, double elevation)
    {
        Axonometry[] views = [.. Directions.Select(d => Axonometry.From(d * Math.PI / 180, elevation))];
        if (!pieces.Any(p => p.Marked)) return views[0];
        double[] seen = [.. views.Select(v => Seen(pieces, v))];
        return views[Array.FindIndex(seen, s => s >= 0.85 * seen.Max())];
    }

    private static readonly double[] Directions = [-62, -118, -30, -150, 62, 118];

    /// <summary>How much of the marked part's edges is seen, metres on the page.</summary>
    private static double Seen(ImmutableArray<Piece> pieces, Axonometry view) =>
        HiddenLines.Of(pieces, view, markedOnly: true).Sum(l => l.Length);
}
