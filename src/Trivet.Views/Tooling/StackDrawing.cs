using Trivet.Cells;
using Trivet.Tooling;
using Trivet.Views.Drawings;
using Trivet.Views.Words;

namespace Trivet.Views.Tooling;

/// <summary>The tool stack from the mechanical interface down, seen along y, its parts drawn apart along their axis; the mark shows each centre of mass.</summary>
public static class StackDrawing
{
    private const double Width = 520, Side = 200, Gap = 26, Top = 34, TextAt = 300, Largest = 330;

    /// <summary>Width that a part without one is drawn with, metres.</summary>
    private const double Nominal = 0.03;

    /// <summary>Null while no part is described.</summary>
    public static Drawing? Of(Cell cell, Locale? locale = null)
    {
        var words = (locale ?? Locale.English).Language.Tool;
        var elements = ToolInputs.Read(cell, new()).Elements;
        if (elements.IsEmpty) return null;
        double tall = Math.Max(1e-3, elements.Sum(e => cell.Tool.Parts[e.Id].Beside == true ? 0 : e.Height));
        double wide = Math.Max(Nominal, elements.Max(e => WidthOf(cell.Tool.Parts[e.Id]) + 2 * Math.Abs(e.Body.Centre.X)));
        double scale = Math.Min(Largest / tall, Side / wide);
        int levels = elements.Select(e => e.Top).Distinct().Count();
        double labels = Math.Max(elements.Length * 34.0, 0);
        double height = Math.Max(Top + tall * scale + levels * Gap, Top + labels) + 50;
        string name = cell.Name ?? (locale ?? Locale.English).Language.UnnamedCell;
        var sheet = new Sheet($"{words.StackDrawing}: {name}", Locale.Fill(words.StackDescription, ("cell", name)), Width, height);
        double axis = 20 + Side / 2, labelY = Top;
        sheet.Line(axis - Side / 2, Top - 8, axis + Side / 2, Top - 8, "w");
        sheet.Line(axis, Top - 22, axis, Top + tall * scale + levels * Gap + 10, "c");
        double last = 0, level = -1, before = double.NaN;
        int number = 0;
        foreach (var e in elements)
        {
            if (e.Top != before) level++;
            before = e.Top;
            var part = cell.Tool.Parts[e.Id];
            double y = Top - e.Top * scale + level * Gap, h = Math.Max(2, e.Height * scale), w = Math.Max(4, WidthOf(part) * scale), x = axis + e.Body.Centre.X * scale;
            Outline(sheet, part, x, y, w, h);
            double cy = Top - e.Body.Centre.Z * scale + level * Gap;
            Centre(sheet, x, cy);
            last = Math.Max(last, y + h);
            // Labels keep a pitch of their own, so that thin parts do not write over each other.
            double text = Math.Max(labelY, Math.Min(cy, y + h / 2));
            labelY = text + 34;
            number++;
            sheet.Polyline([(x + w / 2, y + h / 2), (TextAt - 40, text), (TextAt - 26, text)], "d");
            sheet.Circle(TextAt - 15, text, 10, "p");
            sheet.Text(TextAt - 15, text + 4, number.ToString((locale ?? Locale.English).Culture), 11.5, "", Anchor.Middle);
            sheet.Text(TextAt + 2, text - 2, TextMetrics.Cut(part.Name ?? e.Id, 12.5, Width - TextAt - 8), 12.5, "k");
            sheet.Text(TextAt + 2, text + 13, $"{Numbers.Quantity(e.Body.Mass, "kg", locale)}{(e.Height > 0 ? ", " + Numbers.Quantity(e.Height, "m", locale) : "")}", 11, "s");
        }

        double tcp = last + 16;
        sheet.Line(axis - 8, tcp, axis + 8, tcp, "x");
        sheet.Line(axis, tcp - 8, axis, tcp + 8, "x");
        sheet.Text(axis + 12, tcp + 4, "TCP", 11, "a");
        return sheet.Finish();
    }

    private static double WidthOf(ToolPart part) => part.Shape switch
    {
        SolidKind.Box => part.Width ?? Nominal,
        SolidKind.Cylinder or SolidKind.Tube when part.Axis == SolidAxis.AlongX => part.Width ?? Nominal,
        SolidKind.Cylinder or SolidKind.Tube or SolidKind.Ring or SolidKind.Sphere => part.Diameter ?? Nominal,
        _ => part.Width ?? part.Diameter ?? Nominal,
    };

    private static void Outline(Sheet sheet, ToolPart part, double x, double y, double w, double h)
    {
        bool known = part.Shape is not (null or SolidKind.Given or SolidKind.Mesh);
        if (part.Shape == SolidKind.Sphere || part.Shape is SolidKind.Cylinder && part.Axis == SolidAxis.AlongY) sheet.Circle(x, y + h / 2, w / 2, "w l");
        else sheet.Rectangle(new(x - w / 2, y, w, h), known ? "w l" : "h l");
        if (part.Shape is SolidKind.Tube or SolidKind.Ring && part.InnerDiameter is { } inner && part.Diameter is { } outer && part.Axis is null or SolidAxis.Upright && outer > 0)
        {
            double i = w * inner / outer / 2;
            sheet.Line(x - i, y, x - i, y + h, "h");
            sheet.Line(x + i, y, x + i, y + h, "h");
        }
    }

    /// <summary>The usual mark of a centre of mass: a circle with two opposite quarters filled.</summary>
    private static void Centre(Sheet sheet, double x, double y)
    {
        const double R = 5;
        sheet.Circle(x, y, R, "p");
        string n(double v) => Sheet.N(v);
        sheet.Path($"M{n(x)} {n(y)}L{n(x)} {n(y - R)}A{R} {R} 0 0 1 {n(x + R)} {n(y)}Z", "f");
        sheet.Path($"M{n(x)} {n(y)}L{n(x)} {n(y + R)}A{R} {R} 0 0 1 {n(x - R)} {n(y)}Z", "f");
    }
}
