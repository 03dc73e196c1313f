using Trivet.Cells;
using Trivet.Views.Drawings;
using Trivet.Views.Words;

namespace Trivet.Views.Tooling;

/// <summary>
/// The pneumatic diagram: supply, lockable shut-off, filter with regulator, and for each user its valve and itself. Valves are drawn at rest: 3/2 for what is
/// only switched on, 5/2 for a cylinder that is driven both ways. Symbols after ISO 1219-1 (from memory), drawn here.
/// </summary>
public static class PneumaticDiagram
{
    private const double Left = 200, Column = 190, Height = 400, MainLine = 330, Box = 34, ValveY = 210;

    /// <summary>Null while nothing uses air.</summary>
    public static Drawing? Of(Cell cell, Locale? locale = null)
    {
        var air = cell.Pneumatics;
        if (air.Users.IsEmpty) return null;
        var words = (locale ?? Locale.English).Language.Tool;
        string name = cell.Name ?? (locale ?? Locale.English).Language.UnnamedCell;
        var sheet = new Sheet($"{words.AirDrawing}: {name}", Locale.Fill(words.AirDescription, ("cell", name)), Left + Column * air.Users.Count + 20, Height);
        Supply(sheet, air, words, locale);
        double end = Left + Column * (air.Users.Count - 1) + Column / 2 - 20;
        sheet.Line(176, MainLine, end, MainLine, "w");
        int i = 0;
        foreach (var (id, user) in air.Users.InOrder())
        {
            double x = Left + Column * i++ + Column / 2 - 20;
            sheet.Line(x, MainLine, x, ValveY + Box, "w");
            if (x < end) sheet.Circle(x, MainLine, 3, "f");
            bool both = user.Kind == AirUserKind.Cylinder && user.SpringReturn != true;
            Valve(sheet, x, both);
            User(sheet, x, cell, id, user, both, words);
            sheet.Text(x + Box + 24, ValveY - 6, user.Valve ?? "", 12, "k");
            sheet.Text(x - 60, MainLine + 24, TextMetrics.Cut(user.Name ?? id, 12, Column - 12), 12, "k");
            string[] says = [.. Says(user, locale)];
            for (int k = 0; k < says.Length; k++) sheet.Text(x - 60, MainLine + 39 + 14 * k, says[k], 11, "s");
        }
        return sheet.Finish();
    }

    private static IEnumerable<string> Says(AirUser user, Locale? locale)
    {
        string[] all =
        [
            user.Pressure is { } p ? Numbers.Quantity(p, "Pa", locale) : "", user.Flow is { } q ? Numbers.Quantity(q, "m³/s", locale) : "",
            user.Bore is { } d ? $"⌀ {Numbers.Quantity(d, "m", locale)} × {(user.Stroke is { } s ? Numbers.Quantity(s, "m", locale) : "?")}" : "",
        ];
        string line = string.Join(", ", all.Where(t => t.Length > 0));
        if (line.Length > 0) yield return line;
    }

    private static void Supply(Sheet sheet, Pneumatics air, ToolWords words, Locale? locale)
    {
        // Source: a triangle that points along the flow, open for air.
        sheet.Circle(24, MainLine, 10, "w");
        sheet.Polygon([(18, MainLine - 6), (18, MainLine + 6), (31, MainLine)], "");
        sheet.Line(34, MainLine, 52, MainLine, "w");
        // Shut-off valve: two triangles point to point.
        sheet.Polygon([(52, MainLine - 8), (52, MainLine + 8), (82, MainLine - 8), (82, MainLine + 8)], "w");
        sheet.Line(67, MainLine, 67, MainLine - 16, "");
        sheet.Line(60, MainLine - 16, 74, MainLine - 16, "");
        sheet.Line(82, MainLine, 100, MainLine, "w");
        // Filter: a diamond with a broken line across; regulator: a square with an arrow, spring above.
        sheet.Polygon([(100, MainLine), (116, MainLine - 16), (132, MainLine), (116, MainLine + 16)], "w");
        sheet.Line(116, MainLine - 16, 116, MainLine + 16, "h");
        sheet.Rectangle(new(144, MainLine - 16, 32, 32), "w");
        sheet.Line(132, MainLine, 144, MainLine, "w");
        Arrow(sheet, 148, MainLine + 6, 172, MainLine + 6);
        Spring(sheet, 160, MainLine - 16, upright: true);
        sheet.Text(12, MainLine + 24, words.Supply, 11);
        if (air.SupplyPressure is { } p) sheet.Text(12, MainLine + 38, Numbers.Quantity(p, "Pa", locale), 11, "s");
        if (air.SupplyFlow is { } q) sheet.Text(12, MainLine + 52, Numbers.Quantity(q, "m³/s", locale), 11, "s");
        sheet.Text(40, MainLine - 44, words.ShutOff, 11);
        sheet.Text(100, MainLine + 34, words.FilterRegulator, 11);
    }

    /// <summary>Two positions side by side, the right one at rest above the line; magnet left, spring right.</summary>
    private static void Valve(Sheet sheet, double x, bool both)
    {
        double rest = x - Box / 2, driven = rest - Box, bottom = ValveY + Box;
        sheet.Rectangle(new(driven, ValveY, Box, Box), "w");
        sheet.Rectangle(new(rest, ValveY, Box, Box), "w");
        if (both)
        {
            // Rest: 1 to 2, 4 to 5, 3 shut. Driven: 1 to 4, 2 to 3, 5 shut.
            Arrow(sheet, x, bottom, x + 10, ValveY);
            Arrow(sheet, x - 10, ValveY, x - 10, bottom);
            Arrow(sheet, x - Box, bottom, x - Box - 10, ValveY);
            Arrow(sheet, x - Box + 10, ValveY, x - Box + 10, bottom);
            Shut(sheet, x + 10, bottom);
            Shut(sheet, x - Box - 10, bottom);
            Exhaust(sheet, x - 10, bottom);
            Exhaust(sheet, x + 10, bottom);
        }
        else
        {
            // Rest: 2 to 3, 1 shut. Driven: 1 to 2.
            Arrow(sheet, x, ValveY, x + 10, bottom);
            Shut(sheet, x, bottom);
            Arrow(sheet, x - Box, bottom, x - Box, ValveY);
            Exhaust(sheet, x + 10, bottom);
        }
        sheet.Rectangle(new(driven - 20, ValveY + 9, 20, 16), "");
        sheet.Line(driven - 20, ValveY + 25, driven, ValveY + 9, "");
        Spring(sheet, rest + Box, ValveY + Box / 2, upright: false);
    }

    private static void User(Sheet sheet, double x, Cell cell, string id, AirUser user, bool both, ToolWords words)
    {
        const double Top = 60;
        var hoses = cell.Pneumatics.Hoses.InOrder().Where(h => h.Value.User == id).Select(h => h.Value).ToArray();
        for (int k = 0; k < Math.Min(2, hoses.Length); k++)
        {
            if (hoses[k] is { InnerDiameter: { } d, Length: { } l })
                sheet.Text(x + (both ? 16 : 6), ValveY - 30 - 14 * k, $"⌀ {Numbers.Plain(1000 * d, 1)} × {Numbers.Plain(1000 * l, 0)} mm", 10.5, "s");
        }
        switch (user.Kind)
        {
            case AirUserKind.Cylinder:
                sheet.Rectangle(new(x - 50, Top, 90, 30), "w");
                sheet.Rectangle(new(x - 12, Top, 8, 30), "");
                sheet.Rectangle(new(x - 4, Top + 12, 66, 6), "p");
                if (both)
                {
                    sheet.Polyline([(x - 10, ValveY), (x - 10, 150), (x - 42, 150), (x - 42, Top + 30)], "w");
                    sheet.Polyline([(x + 10, ValveY), (x + 10, 150), (x + 32, 150), (x + 32, Top + 30)], "w");
                }
                else
                {
                    sheet.Polyline([(x, ValveY), (x, 150), (x - 42, 150), (x - 42, Top + 30)], "w");
                    Spring(sheet, x - 2, Top + 6, upright: false);
                }
                break;
            case AirUserKind.Ejector:
                sheet.Rectangle(new(x - 26, Top + 40, 52, 36), "w");
                sheet.Polygon([(x - 18, Top + 48), (x - 18, Top + 68), (x - 2, Top + 58)], "");
                sheet.Polygon([(x + 18, Top + 48), (x + 18, Top + 68), (x + 2, Top + 58)], "");
                sheet.Polyline([(x, ValveY), (x, 166), (x - 38, 166), (x - 38, Top + 58), (x - 26, Top + 58)], "w");
                sheet.Line(x + 26, Top + 58, x + 36, Top + 58, "w");
                Exhaust(sheet, x + 36, Top + 58);
                sheet.Line(x, Top + 40, x, Top + 22, "h");
                Cup(sheet, x, Top + 22);
                sheet.Text(x + 16, Top + 16, words.Cups, 11, "s");
                var hose = cell.Tool.Vacuum.Hose is { } named ? cell.Pneumatics.Hoses.GetValueOrDefault(named) : null;
                if ((hose?.InnerDiameter ?? cell.Tool.Vacuum.HoseDiameter) is { } vd && (hose?.Length ?? cell.Tool.Vacuum.HoseLength) is { } vl)
                    sheet.Text(x + 16, Top + 30, $"⌀ {Numbers.Plain(1000 * vd, 1)} × {Numbers.Plain(1000 * vl, 0)} mm", 10.5, "s");
                break;
            default:
                sheet.Line(x, ValveY, x, Top + 22, "w");
                Cup(sheet, x, Top + 22);
                sheet.Text(x + 16, Top + 16, words.Cups, 11, "s");
                break;
        }
    }

    /// <summary>A cup, open upward on the diagram.</summary>
    private static void Cup(Sheet sheet, double x, double y) =>
        sheet.Polyline([(x - 14, y - 16), (x - 7, y - 2), (x + 7, y - 2), (x + 14, y - 16)], "w");

    /// <summary>A port that is shut in this position.</summary>
    private static void Shut(Sheet sheet, double x, double bottom)
    {
        sheet.Line(x, bottom, x, bottom - 7, "");
        sheet.Line(x - 4, bottom - 7, x + 4, bottom - 7, "");
    }

    private static void Exhaust(Sheet sheet, double x, double y) => sheet.Polygon([(x - 5, y), (x + 5, y), (x, y + 9)], "");

    private static void Spring(Sheet sheet, double x, double y, bool upright)
    {
        var points = new List<(double, double)>();
        for (int i = 0; i <= 6; i++)
        {
            double along = 3.5 * i, aside = i is 0 or 6 ? 0 : i % 2 == 0 ? -5 : 5;
            points.Add(upright ? (x + aside, y - along) : (x + along, y + aside));
        }
        sheet.Polyline(points, "");
    }

    private static void Arrow(Sheet sheet, double x1, double y1, double x2, double y2)
    {
        sheet.Line(x1, y1, x2, y2, "");
        double dx = x2 - x1, dy = y2 - y1, l = Math.Sqrt(dx * dx + dy * dy);
        (dx, dy) = (dx / l, dy / l);
        sheet.Polygon([(x2, y2), (x2 - 7 * dx - 3 * dy, y2 - 7 * dy + 3 * dx), (x2 - 7 * dx + 3 * dy, y2 - 7 * dy - 3 * dx)], "f");
    }
}
