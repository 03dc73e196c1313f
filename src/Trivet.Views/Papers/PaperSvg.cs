using System.Globalization;
using Trivet.Views.Drawings;

namespace Trivet.Views.Papers;

/// <summary>A paper as SVG, in true size at 96 pixels per inch.</summary>
public static class PaperSvg
{
    private const double PixelsPerMillimetre = 96 / 25.4;

    public static Drawing Of(Paper paper)
    {
        var sheet = new Sheet(paper.Title, paper.Description, paper.Width * PixelsPerMillimetre, paper.Height * PixelsPerMillimetre);
        foreach (var mark in paper.Marks)
        {
            switch (mark)
            {
                case Stroke { Points: [var a, var b], Closed: false } s:
                    sheet.Line(X(a.X), Y(a.Y), X(b.X), Y(b.Y), Class(s.Pen));
                    break;
                case Stroke { Closed: false } s:
                    sheet.Polyline(s.Points.Select(p => (X(p.X), Y(p.Y))), Class(s.Pen));
                    break;
                case Stroke s:
                    sheet.Polygon(s.Points.Select(p => (X(p.X), Y(p.Y))), Class(s.Pen));
                    break;
                case ArcMark a when a.Sweep >= 2 * Math.PI - 1e-9:
                    sheet.Circle(X(a.Centre.X), Y(a.Centre.Y), a.Radius * PixelsPerMillimetre, Class(a.Pen));
                    break;
                case ArcMark a:
                    double end = a.Start + a.Sweep;
                    sheet.Path(string.Create(CultureInfo.InvariantCulture,
                        $"M{Sheet.N(X(a.Centre.X + a.Radius * Math.Cos(a.Start)))} {Sheet.N(Y(a.Centre.Y + a.Radius * Math.Sin(a.Start)))}A{Sheet.N(a.Radius * PixelsPerMillimetre)} {Sheet.N(a.Radius * PixelsPerMillimetre)} 0 {(a.Sweep > Math.PI ? 1 : 0)} 0 {Sheet.N(X(a.Centre.X + a.Radius * Math.Cos(end)))} {Sheet.N(Y(a.Centre.Y + a.Radius * Math.Sin(end)))}"),
                        Class(a.Pen));
                    break;
                case FillMark f:
                    sheet.Polygon(f.Points.Select(p => (X(p.X), Y(p.Y))), f.White ? "p z" : "f");
                    break;
                case Label l:
                    sheet.Text(X(l.At.X), Y(l.At.Y), l.Text, l.Size * PixelsPerMillimetre, l.Strong ? "k" : "", (Anchor)(int)l.Anchor, l.Upright);
                    break;
            }
        }
        return sheet.Finish();

        double X(double x) => x * PixelsPerMillimetre;
        double Y(double y) => (paper.Height - y) * PixelsPerMillimetre;
    }

    private static string Class(Pen pen) => pen switch
    {
        Pen.Outline => "w",
        Pen.Hidden => "h",
        Pen.Centre => "c",
        Pen.Fine => "g",
        _ => "",
    };
}
