using Trivet.Assessment;
using Trivet.Cells;
using Trivet.Findings;
using Trivet.Views.Ledgers;
using Trivet.Views.Words;

namespace Trivet.Views.Drawings;

/// <summary>What is the same on every sheet: border, title strip, the panel at the right with tables and the marked finding.</summary>
internal sealed class SheetFrame
{
    public const double Width = 880, Height = 620;
    private const double Margin = 10, StripHeight = 46, PanelWidth = 232;
    private const double Small = 9.5, Normal = 11.5, Pitch = 15.5;

    private readonly Locale _locale;
    private double _panelY;

    public SheetFrame(Sheet sheet, Locale locale)
    {
        (Sheet, _locale) = (sheet, locale);
        _panelY = Margin + 8;
        Area = new(Margin, Margin, Width - 2 * Margin - PanelWidth, Height - 2 * Margin - StripHeight);
    }

    public Sheet Sheet { get; }

    /// <summary>Where the view may be.</summary>
    public Box Area { get; }

    private DrawingWords Words => _locale.Language.Drawing;
    private double PanelX => Area.Right + 12;
    private static double PanelRight => Width - Margin - 12;

    /// <summary>Border, and the strip with name, scale, units, direction and state.</summary>
    public void Title(string cell, string drawing, string scale, string seen, string state)
    {
        Sheet.Rectangle(new(Margin, Margin, Width - 2 * Margin, Height - 2 * Margin), "w");
        double top = Area.Bottom, right = Width - Margin;
        Sheet.Line(Margin, top, right, top, "b");
        Sheet.Line(Area.Right, Margin, Area.Right, top, "");
        // What is seen takes the room it needs, from the cell's name, which may be cut.
        double view = Math.Max(134, TextMetrics.Width(seen, 12.5) + 20);
        double x = Area.Right - 76 - 82 - view;
        Sheet.Text(Margin + 12, top + 20, TextMetrics.Cut(cell, 15, x - Margin - 22), 15, "k");
        Sheet.Text(Margin + 12, top + 37, drawing, Normal, "s");
        foreach (var (head, text, width) in ((string, string, double)[])[(Words.Scale, scale, 76), (Words.Dimensions, Words.Millimetres, 82), (Words.View, seen, view), (Words.State, state, 0)])
        {
            Sheet.Line(x, top, x, Height - Margin, "");
            Sheet.Text(x + 10, top + 17, head, Small, "s");
            Sheet.Text(x + 10, top + 35, TextMetrics.Cut(text, 12.5, (width > 0 ? width : right - x) - 14), 12.5);
            x += width;
        }
    }

    public void Heading(string text, params ReadOnlySpan<string> columns)
    {
        _panelY += 12;
        Sheet.Text(PanelX, _panelY, text, 12.5, "k");
        for (int i = 0; i < columns.Length; i++) Sheet.Text(Column(i, columns.Length), _panelY, columns[i], Small, "s", Anchor.End);
        _panelY += 5.5;
        Sheet.Line(PanelX, _panelY, PanelRight, _panelY, "");
        _panelY += 1;
    }

    /// <summary>A row with numbers in columns, right-aligned.</summary>
    public void Row(string name, params ReadOnlySpan<string> columns)
    {
        _panelY += Pitch;
        double room = columns.Length == 0 ? PanelRight - PanelX : Column(0, columns.Length) - TextMetrics.Width(columns[0], Normal) - PanelX - 5;
        Sheet.Text(PanelX, _panelY, TextMetrics.Cut(name, Normal, room), Normal);
        for (int i = 0; i < columns.Length; i++) Sheet.Text(Column(i, columns.Length), _panelY, columns[i], Normal, "", Anchor.End);
    }

    /// <summary>A soft line under a row.</summary>
    public void Under(string text)
    {
        _panelY += 12.5;
        Sheet.Text(PanelX, _panelY, TextMetrics.Cut(text, Small + 0.5, PanelRight - PanelX), Small + 0.5, "s");
        _panelY += 2.5;
    }

    /// <summary>A row of a legend: a swatch, hatched at a pitch or crossed by a line of a style.</summary>
    public void Sample(string text, double hatch, string line = "")
    {
        _panelY += Pitch + 3;
        var swatch = new Box(PanelX, _panelY - 11, 30, 14);
        if (hatch > 0)
        {
            Sheet.Rectangle(swatch, "");
            for (double s = hatch; s < swatch.Width + swatch.Height; s += hatch)
            {
                double from = Math.Max(0, s - swatch.Height), to = Math.Min(swatch.Width, s);
                Sheet.Line(swatch.X + from, swatch.Y + s - from, swatch.X + to, swatch.Y + s - to, "hatch");
            }
        }
        else Sheet.Line(swatch.X, _panelY - 4, swatch.Right, _panelY - 4, line);
        Sheet.Text(PanelX + 38, _panelY, text, Normal);
    }

    public void Space(double y) => _panelY += y;

    /// <summary>Rows that still fit above the marked finding.</summary>
    public bool Room(double height) => _panelY + height < Area.Bottom - 8 - _reserved;

    private double _reserved;

    /// <summary>The finding that is marked in the view, at the foot of the panel, in the accent.</summary>
    public void Marked(Finding? finding, Cell cell)
    {
        if (finding is null) return;
        var lines = TextMetrics.Wrap(Sentences.Of(finding, cell, _locale), Normal, PanelRight - PanelX, 7);
        double height = 14 + 12 + lines.Count * (Normal + 3) + 10;
        _reserved = height + 6;
        double y = Area.Bottom - height;
        Sheet.Line(PanelX, y, PanelRight, y, "x");
        Sheet.Text(PanelX, y + 16, $"{VerdictMark.Shape(finding.Verdict)} {Sentences.VerdictWord(finding.Verdict, _locale)}", 12.5, "k a");
        for (int i = 0; i < lines.Count; i++) Sheet.Text(PanelX, y + 33 + i * (Normal + 3), lines[i], Normal);
    }

    /// <summary>The stations with the coordinates of their own frame's origin.</summary>
    public void Stations(Assessed assessed)
    {
        Heading(Words.Stations, "x", "y", "z");
        var placed = assessed.Geometry.Stations.Select(s => s.Id).ToHashSet(StringComparer.Ordinal);
        var all = assessed.Cell.Stations.InOrder().ToList();
        for (int i = 0; i < all.Count; i++)
        {
            var (id, station) = all[i];
            if (!Room(all.Count - i > 1 ? 3 * Pitch : 2 * Pitch))
            {
                Row(Locale.Fill(Words.More, ("count", (all.Count - i).ToString(_locale.Culture))));
                return;
            }

            Row(station.Name ?? id, Millimetres(station.X), Millimetres(station.Y), Millimetres(station.Z));
            Under(placed.Contains(id) ? Kind(station) : Words.NotPlaced);
        }
    }

    public string Millimetres(double? metres) => metres is { } m ? Numbers.Plain(1000 * m, 1, _locale) : "–";

    private string Kind(Station s) => s.Kind switch
    {
        StationKind.Tray => Locale.Fill(Words.TrayLine, ("columns", Count(s.Columns)), ("rows", Count(s.Rows)), ("dx", Millimetres(s.ColumnPitch)), ("dy", Millimetres(s.RowPitch))),
        StationKind.Belt => Locale.Fill(Words.BeltLine, ("depth", Millimetres(s.Depth)), ("window", Millimetres(s.Window))),
        _ => Locale.Fill(Words.NestLine, ("width", Millimetres(s.Width)), ("depth", Millimetres(s.Depth))),
    };

    private string Count(int? n) => (n ?? 1).ToString(_locale.Culture);

    private static double Column(int i, int count) => PanelRight - (count - 1 - i) * 39;
}
