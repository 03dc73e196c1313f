using System.Collections.Immutable;
using Trivet.Cells;
using Trivet.Views.Drawings;
using Trivet.Views.Words;

namespace Trivet.Views.Cabling;

/// <summary>
/// The wiring diagram. Modules stand at the left in their order along the rail, what their cables lead to at the right, each an outline with a row for every cable. A
/// cable leaves its row, turns into a track of its own and turns into its other row: two bends, and lines cross but never run on each other. Its label
/// stands over its line beside both outlines, where no track passes, so that no text can meet another.
/// </summary>
public static class WiringDiagram
{
    // What parts two outlines is two rows high, and the right column stands half a row lower: so no two lines that leave to either side lie on one level.
    private const double Margin = 14, Row = 17, Head = 22, Gap = 8, Box = 210, Track = 7, Type = 11, LabelRoom = 74;

    /// <param name="axis">Only cables of this axis; all where null.</param>
    public static Drawing Of(Cell cell, string? axis = null, Locale? locale = null)
    {
        var language = (locale ?? Locale.English).Language;
        var words = language.Cabling;
        var lines = cell.Cables.InOrder().Where(c => (axis is null || c.Value.Axis == axis) && c.Value.From is not null && c.Value.To is not null)
            .Select(c => new Link(c.Key, c.Value.From!, c.Value.To!)).ToArray();
        var modules = cell.Cabinet.Modules.InOrder().Select(m => m.Key).Where(m => Array.Exists(lines, l => l.From == m || l.To == m)).ToArray();
        var inside = modules.ToHashSet(StringComparer.Ordinal);
        var devices = cell.Cabling.Devices.InOrder().Select(d => d.Key).Where(d => Array.Exists(lines, l => l.From == d || l.To == d))
            .Concat(lines.SelectMany(l => new[] { l.From, l.To })).Where(d => !inside.Contains(d)).Distinct().ToArray();

        double span = Math.Max(lines.Length * Track, 40) + 2 * Track, left = Margin + Box, first = left + LabelRoom + Track, right = left + 2 * LabelRoom + span;
        var rows = new Dictionary<(string Cable, bool AtFrom), double>();
        double bottom = Math.Max(Column(modules, 0), Column(devices, Row / 2));
        var page = new Sheet($"{words.Diagram}: {cell.Name ?? language.UnnamedCell}", Locale.Fill(words.DiagramDescription, ("cell", cell.Name ?? language.UnnamedCell)), right + Box + Margin, bottom + Margin);
        page.Text(Margin, Margin + 10, words.Cabinet, 12, "s");
        page.Text(right, Margin + 10, words.Outside, 12, "s");
        Outlines(modules, Margin, true);
        Outlines(devices, right, false);
        // Tracks in the order of the rows they leave, so that neighbours cross little.
        var order = lines.OrderBy(l => Math.Max(rows[(l.Id, true)], rows[(l.Id, false)])).ThenBy(l => l.Id, StringComparer.Ordinal).ToArray();
        for (int i = 0; i < order.Length; i++)
        {
            var l = order[i];
            double x = first + i * Track, y1 = rows[(l.Id, true)], y2 = rows[(l.Id, false)];
            page.Open(("class", "cable"), ("data-pointer", $"/cables/{l.Id}"));
            page.Tooltip($"{CableSections.LabelOf(cell, l.Id)} {cell.Cables[l.Id].Name}");
            (double X, double Y)[] points = [(EdgeOf(l.From), y1), (x, y1), (x, y2), (EdgeOf(l.To), y2)];
            page.Polyline(y1 == y2 ? [points[0], points[3]] : points, Pen(cell.Cables[l.Id].Kind));
            page.Close();
        }
        foreach (var l in lines)
            foreach (bool at in (ReadOnlySpan<bool>)[true, false])
            {
                string label = TextMetrics.Cut(CableSections.LabelOf(cell, l.Id), Type, LabelRoom - 10), place = at ? l.From : l.To;
                if (inside.Contains(place)) page.Text(left + 5, rows[(l.Id, at)] - 3, label, Type);
                else page.Text(right - 5, rows[(l.Id, at)] - 3, label, Type, "", Anchor.End);
            }
        return page.Finish();

        double Column(string[] places, double lower)
        {
            double y = Margin + 20 + lower;
            foreach (string place in places)
            {
                y += Head;
                foreach (var l in lines)
                    foreach (bool at in (ReadOnlySpan<bool>)[true, false])
                        if ((at ? l.From : l.To) == place) rows[(l.Id, at)] = (y += Row) - 4;
                y += 4 + Gap;
            }
            return y;
        }

        void Outlines(string[] places, double x, bool module)
        {
            foreach (string place in places)
            {
                double[] own = [.. lines.SelectMany(l => new[] { (l, true), (l, false) }).Where(e => (e.Item2 ? e.l.From : e.l.To) == place).Select(e => rows[(e.l.Id, e.Item2)])];
                double top = own.Min() + 4 - Row - Head;
                page.Rectangle(new(x, top, Box, own.Max() + 8 - top), module ? "w p" : "b p");
                page.Text(x + 8, top + 15, TextMetrics.Cut(CableSections.PlaceOf(cell, place), 13, Box - 30), 13, "k");
                foreach (var l in lines)
                    foreach (bool at in (ReadOnlySpan<bool>)[true, false])
                    {
                        if ((at ? l.From : l.To) != place) continue;
                        var end = at ? cell.Cables[l.Id].FromEnd : cell.Cables[l.Id].ToEnd;
                        string socket = string.Join(' ', new[] { end.Socket, end.Connector, end.Coding }.OfType<string>());
                        if (socket.Length > 0) page.Text(module ? x + Box - 6 : x + 6, rows[(l.Id, at)] + 3, TextMetrics.Cut(socket, Type, Box - 14), Type, "s", module ? Anchor.End : Anchor.Start);
                    }
            }
        }

        double EdgeOf(string place) => inside.Contains(place) ? left : right;
    }

    /// <summary>Power wide, network dashed, earth in long dashes, all else narrow.</summary>
    private static string Pen(CableKind? kind) => kind switch
    {
        CableKind.Motor or CableKind.Brake or CableKind.Supply => "w",
        CableKind.Network => "h",
        CableKind.Earth => "c",
        _ => "",
    };

    private readonly record struct Link(string Id, string From, string To);
}
