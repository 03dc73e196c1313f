using PdfSharp.Drawing;
using PdfSharp.Fonts;
using PdfSharp.Pdf;
using Trivet.Views.Papers;

namespace Trivet.Papers;

/// <summary>Papers as PDF, a page each in true size. The typeface is embedded.</summary>
public static class PaperPdf
{
    // Wide and narrow lines, millimetres [ISO-128].
    private const double Wide = 0.5, Narrow = 0.25, Fine = 0.13;
    private const double PointsPerMillimetre = 72 / 25.4;

    static PaperPdf() => GlobalFontSettings.FontResolver ??= new Typeface();

    /// <param name="made">What the file says of its making.</param>
    public static byte[] Of(string title, DateTime made, params IReadOnlyList<Paper> papers)
    {
        using var document = new PdfDocument();
        document.Info.Title = title;
        document.Info.Creator = "Trivet";
        document.Info.CreationDate = made;
        foreach (var paper in papers)
        {
            var page = document.AddPage();
            page.Width = XUnit.FromMillimeter(paper.Width);
            page.Height = XUnit.FromMillimeter(paper.Height);
            using var graphics = XGraphics.FromPdfPage(page);
            foreach (var mark in paper.Marks) Draw(graphics, mark, paper.Height);
        }
        using var file = new MemoryStream();
        document.Save(file, false);
        return file.ToArray();
    }

    private static void Draw(XGraphics graphics, Mark mark, double height)
    {
        switch (mark)
        {
            case Stroke s:
                XPoint[] points = [.. s.Points.Select(p => At(p.X, p.Y))];
                if (s.Closed) graphics.DrawPolygon(PenOf(s.Pen), points);
                else graphics.DrawLines(PenOf(s.Pen), points);
                break;
            case ArcMark a:
                var corner = At(a.Centre.X - a.Radius, a.Centre.Y + a.Radius);
                double size = 2 * a.Radius * PointsPerMillimetre;
                if (a.Sweep >= 2 * Math.PI - 1e-9) graphics.DrawEllipse(PenOf(a.Pen), corner.X, corner.Y, size, size);
                // The paper's y runs up, the page's down: angles turn about.
                else graphics.DrawArc(PenOf(a.Pen), corner.X, corner.Y, size, size, -Degrees(a.Start), -Degrees(a.Sweep));
                break;
            case FillMark f:
                graphics.DrawPolygon(f.White ? XBrushes.White : XBrushes.Black, [.. f.Points.Select(p => At(p.X, p.Y))], XFillMode.Winding);
                break;
            case Label l:
                var font = new XFont(Typeface.Family, l.Size * PointsPerMillimetre, l.Strong ? XFontStyleEx.Bold : XFontStyleEx.Regular);
                var format = new XStringFormat
                {
                    LineAlignment = XLineAlignment.BaseLine,
                    Alignment = l.Anchor switch { TextAnchor.Middle => XStringAlignment.Center, TextAnchor.End => XStringAlignment.Far, _ => XStringAlignment.Near },
                };
                var at = At(l.At.X, l.At.Y);
                var state = graphics.Save();
                if (l.Upright) graphics.RotateAtTransform(-90, at);
                graphics.DrawString(Typeface.Spelled(l.Text), font, XBrushes.Black, at, format);
                graphics.Restore(state);
                break;
        }

        XPoint At(double x, double y) => new(x * PointsPerMillimetre, (height - y) * PointsPerMillimetre);
        static double Degrees(double radians) => radians * 180 / Math.PI;
    }

    private static XPen PenOf(Pen pen)
    {
        var line = new XPen(XColors.Black, (pen switch { Pen.Outline => Wide, Pen.Fine => Fine, _ => Narrow }) * PointsPerMillimetre) { LineJoin = XLineJoin.Round };
        // In widths of the line.
        if (pen == Pen.Hidden) line.DashPattern = [6, 3];
        if (pen == Pen.Centre) line.DashPattern = [14, 3, 2, 3];
        return line;
    }
}
