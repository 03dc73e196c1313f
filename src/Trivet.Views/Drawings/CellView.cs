using Trivet.Assessment;
using Trivet.Cells;
using Trivet.Findings;
using Trivet.Numerics;
using Trivet.Reach;
using Trivet.Views.Motion;
using Trivet.Views.Words;

namespace Trivet.Views.Drawings;

/// <summary>One view of a cell on its sheet: parts, dimensions, level marks, names, the worst point.</summary>
internal sealed class CellView(
    Sheet sheet, View view, Box area, Extents extents, Assessed cell, Posture? posture, IReadOnlyList<IReadOnlyList<Vec3>> reach, bool limited,
    CycleWay? way, Locale locale)
{
    private const double NameSize = 12, SmallSize = 10.5;

    private DrawingWords Words => locale.Language.Drawing;
    private double Left => view.AtX(extents.MinX);
    private double Right => view.AtX(extents.MaxX);
    private double Top => view.AtUp(extents.MaxUp);
    private double Bottom => view.AtUp(extents.MinUp);
    private bool Plan => view.Seen == Seen.FromAbove;

    public void Draw(Finding? marked)
    {
        view.Open(sheet);
        if (!Plan) Floor();
        if (Plan) Axes();
        // What is over the stations would hide them from above: it is drawn under them, and again as a thin outline over them.
        if (Plan) CellParts.Frame(sheet, view, cell.Cell);
        foreach (var box in cell.Geometry.Stations.OrderBy(b => view.Depth(b.X_CS.P))) CellParts.Station(sheet, view, box, cell.Cell);
        if (Plan)
        {
            CellParts.Overhead(sheet, view, cell);
            Reach();
            if (posture is not null) CellParts.Robot(sheet, view, posture);
        }
        else
        {
            Reach();
            CellParts.Frame(sheet, view, cell.Cell);
            if (posture is not null) CellParts.Robot(sheet, view, posture);
        }

        if (way is not null) CellParts.Way(sheet, view, way);
        sheet.Close();

        ReserveParts();
        if (Plan) PlanDimensions();
        else Levels();
        if (marked?.Worst is { } worst && worst.P_C.IsFinite) Worst(worst.P_C);
        ChainNames();
        if (Plan) StationNames();
        else StationCallouts();
        ReachName();
        ScaleBar();
    }

    /// <summary>Keeps labels off what is drawn densely: rods, arms, platform, stations.</summary>
    private void ReserveParts()
    {
        if (posture is not null)
        {
            foreach (var c in posture.Chains)
            {
                Along(c.Start, c.Family == RobotFamily.CrankDelta ? c.Joint : c.End, 6);
                foreach (int side in (int[])[-1, 1]) Along(c.Joint + side * c.Half, c.PlatformJoint + side * c.Half, 3);
                Around([c.PlatformJoint + c.Half, c.PlatformJoint - c.Half, posture.Platform]);
            }

            Along(posture.Platform, posture.Tcp, 6);
        }

        foreach (var box in cell.Geometry.Stations)
            if (!Plan || cell.Cell.Stations.GetValueOrDefault(box.Id)?.Kind != StationKind.Belt) Around(CellParts.Zone(box, cell.Cell));

        void Along(Vec3 from, Vec3 to, double half)
        {
            if (!from.IsFinite || !to.IsFinite) return;
            var ((x0, y0), (x1, y1)) = (view.At(from), view.At(to));
            int steps = 1 + (int)(Math.Sqrt((x1 - x0) * (x1 - x0) + (y1 - y0) * (y1 - y0)) / 6);
            for (int i = 0; i <= steps; i++)
                sheet.Reserve(new(x0 + (x1 - x0) * i / steps - half, y0 + (y1 - y0) * i / steps - half, 2 * half, 2 * half));
        }

        void Around(IEnumerable<Vec3> points)
        {
            var p = points.Where(v => v.IsFinite).Select(view.At).ToList();
            if (p.Count == 0) return;
            double x = p.Min(q => q.X), y = p.Min(q => q.Y);
            sheet.Reserve(new(x, y, p.Max(q => q.X) - x, p.Max(q => q.Y) - y));
        }
    }

    private void Floor()
    {
        double y = view.AtUp(0), x0 = Left - 14, x1 = Right + 14;
        sheet.Line(x0, y, x1, y, "w");
        for (double x = x0 + 8; x < x1; x += 11) sheet.Line(x, y, x - 7, y + 7, "d");
    }

    /// <summary>Centre lines through the robot's base, and its joint circle.</summary>
    private void Axes()
    {
        if (cell.Geometry.Robot is null || posture is null) return;
        var (x, y) = view.At(Base());
        sheet.Line(x, Top - 12, x, Bottom + 8, "c");
        sheet.Line(Left - 8, y, Right + 12, y, "c");
        if (posture.Chains.Length < 3) return;
        double radius = posture.Chains.Average(c => (c.Start - Base() with { Z = c.Start.Z }).Norm) * view.Scale;
        sheet.Circle(x, y, radius, "c");
    }

    private Vec3 Base() => cell.Geometry.X_CB.P;

    private void Reach()
    {
        foreach (var loop in ReachLoops()) sheet.Polygon(loop, "m");
    }

    private IEnumerable<IEnumerable<(double X, double Y)>> ReachLoops() => reach.Select(loop => loop.Select(view.At));

    /// <summary>Says what the outline of the reach is, from the point of it that has the most room.</summary>
    private void ReachName()
    {
        if (ReachLoops().FirstOrDefault()?.ToList() is not { Count: > 0 } loop) return;
        string text = Plan
            ? Locale.Fill(limited ? Words.ReachOutlineLimited : Words.ReachOutline, ("z", Numbers.Quantity(cell.Geometry.Stations.Min(s => s.X_CS.P.Z), "m", locale)))
            : limited ? Words.ReachThroughBaseLimited : Words.ReachThroughBase;
        foreach (var (x, y) in ((double X, double Y)[])[loop.MaxBy(p => p.X - p.Y), loop.MaxBy(p => p.X + p.Y), loop.MinBy(p => p.X), loop.MaxBy(p => p.Y)])
            if (Labels.Callout(sheet, area, x, y, [text], SmallSize, "s o", "d", 90)) return;
    }

    private void PlanDimensions()
    {
        var across = new List<Dimension>();
        var up = new List<Dimension>();
        var overall = new List<Dimension>();
        var overallUp = new List<Dimension>();
        var bars = Bar.Members(cell.Cell);
        double bottom = Bottom, left = Left;
        if (bars.Length > 0)
        {
            double x0 = bars.Min(b => b.Corners().Min(c => c.X)), x1 = bars.Max(b => b.Corners().Max(c => c.X));
            double y0 = bars.Min(b => b.Corners().Min(c => c.Y)), y1 = bars.Max(b => b.Corners().Max(c => c.Y));
            overall.Add(Span(view.AtX(x0), view.AtX(x1), x1 - x0, bottom, bottom));
            overallUp.Add(Span(view.AtUp(y0), view.AtUp(y1), y1 - y0, left, left));
            if (cell.Geometry.Robot is not null)
            {
                across.Add(Span(view.AtX(x0), view.AtX(Base().X), Math.Abs(Base().X - x0), bottom, bottom));
                up.Add(Span(view.AtUp(y0), view.AtUp(Base().Y), Math.Abs(Base().Y - y0), left, left));
            }
        }

        if (cell.Geometry.Robot is not null)
        {
            foreach (var box in cell.Geometry.Stations)
            {
                var (x, y) = view.At(box.X_CS.P);
                Station(box.X_CS.P, x, y);
            }
        }

        int below = Dimensions.Below(sheet, bottom + 24, Distinct(across), 3), beside = Dimensions.Left(sheet, left - 20, Distinct(up), 3);
        Dimensions.Below(sheet, bottom + 24 + below * Dimensions.TierPitch, overall, 1);
        Dimensions.Left(sheet, left - 20 - beside * Dimensions.TierPitch, overallUp, 1);

        // The extension line of a station begins at its origin, faint while it crosses the view.
        void Station(Vec3 p, double x, double y)
        {
            sheet.Line(x, y + 3, x, bottom, "g");
            sheet.Line(x - 3, y, left, y, "g");
            across.Add(Span(view.AtX(Base().X), x, Math.Abs(p.X - Base().X), bottom, bottom));
            up.Add(Span(view.AtUp(Base().Y), y, Math.Abs(p.Y - Base().Y), left, left));
        }

        static IEnumerable<Dimension> Distinct(IEnumerable<Dimension> all) => all.DistinctBy(d => (Math.Round(d.A), Math.Round(d.B)));

        Dimension Span(double a, double b, double metres, double atA, double atB) => new(a, b, Text(metres), atA, atB);
    }

    private string Text(double metres) => Numbers.Plain(1000 * metres, 1, locale);

    /// <summary>Heights over the floor as level marks at the right, each on its own line; the overall height and the base at the left.</summary>
    private void Levels()
    {
        var levels = new List<(double Z, string Name, double From)> { (0, Words.Floor, Right + 14) };
        foreach (var group in cell.Geometry.Stations.GroupBy(s => Math.Round(s.X_CS.P.Z, 5)))
            levels.Add((group.Key, Fields.List(group.Select(s => Name(s.Id)), locale), group.Max(s => CellParts.Zone(s, cell.Cell).Max(p => view.At(p).X)) + 4));
        if (posture is { Closed: true }) levels.Add((posture.Tcp.Z, Words.ToolPoint, view.At(posture.Tcp).X + 8));
        double right = Right;
        if (cell.Geometry.Robot is not null) levels.Add((Base().Z, Words.Mount, right));
        var bars = Bar.Members(cell.Cell);
        if (bars.Length > 0) levels.Add((bars.Max(b => b.Corners().Max(c => c.Z)), Words.FrameTop, right));
        LevelMarks.Draw(sheet, view, area, Right + 26, [.. levels.DistinctBy(l => Math.Round(l.Z, 4))], Text);

        var up = new List<Dimension>();
        double floor = view.AtUp(0), left = Left - 14;
        if (cell.Geometry.Robot is not null) up.Add(new(floor, view.AtUp(Base().Z), Text(Base().Z), left, left));
        if (bars.Length > 0) up.Add(new(floor, view.AtUp(bars.Max(b => b.Corners().Max(c => c.Z))), Text(bars.Max(b => b.Corners().Max(c => c.Z))), left, left));
        Dimensions.Left(sheet, left - 14, up.DistinctBy(d => Math.Round(d.B)), 2);
        if (bars.Length == 0) return;
        double x0 = bars.Min(b => b.Corners().Min(c => c.X)), x1 = bars.Max(b => b.Corners().Max(c => c.X));
        Dimensions.Below(sheet, floor + 34, [new(view.AtX(x0), view.AtX(x1), Text(x1 - x0), floor + 8, floor + 8)], 1);
    }

    private string Name(string id) => cell.Cell.Stations.GetValueOrDefault(id)?.Name ?? id;

    private void Worst(Vec3 p_C)
    {
        var (x, y) = view.At(p_C);
        sheet.Open(("class", "worst"));
        sheet.Circle(x, y, 6.5, "x");
        sheet.Line(x - 11, y, x + 11, y, "x");
        sheet.Line(x, y - 11, x, y + 11, "x");
        sheet.Reserve(new(x - 11, y - 11, 22, 22));
        Labels.Callout(sheet, area, x, y, [Words.Worst, $"x {Text(p_C.X)}  y {Text(p_C.Y)}  z {Text(p_C.Z)}"], SmallSize, "a o", "x");
        sheet.Close();
    }

    /// <summary>The chains' ids outside their rails, away from the base's axis.</summary>
    private void ChainNames()
    {
        if (posture is null) return;
        var (bx, by) = view.At(Base());
        foreach (var c in posture.Chains)
        {
            bool arm = c.Family == RobotFamily.CrankDelta && c.Joint.IsFinite;
            // In an elevation a rail is named over its upper end, an arm beside its elbow.
            var (x, y) = view.At(arm ? c.Joint : c.Start);
            if (!Plan && !arm) (bx, by) = (x, y + 100);
            double dx = x - bx, dy = y - by, length = Math.Max(Math.Sqrt(dx * dx + dy * dy), 1);
            var places = Enumerable.Range(0, 7).SelectMany(i => new[] { 0, 0.5, -0.5 }.Select(turn =>
            {
                var (s, co) = Math.SinCos(turn);
                double far = 22 + 6 * i, ux = dx / length, uy = dy / length;
                return (x + far * (ux * co - uy * s), y + far * (ux * s + uy * co));
            }));
            Labels.Centred(sheet, area, places, c.Id, NameSize, "k o");
        }
    }

    private void StationNames()
    {
        foreach (var box in cell.Geometry.Stations)
        {
            var spots = CellParts.Zone(box, cell.Cell).Select(view.At).ToList();
            double x0 = spots.Min(p => p.X), x1 = spots.Max(p => p.X), y0 = spots.Min(p => p.Y), y1 = spots.Max(p => p.Y), x = (x0 + x1) / 2;
            string name = Name(box.Id);
            double w = TextMetrics.Width(name, NameSize) / 2, y = (y0 + y1) / 2;
            // Beside the station first, where the lines are few, then within it.
            var places = Enumerable.Range(0, 3).SelectMany(i => (IEnumerable<(double, double)>)
                [(x, y1 + 11 + 7 * i), (x, y0 - 11 - 7 * i), (x0 + w, y1 + 11 + 7 * i), (x1 - w, y1 + 11 + 7 * i), (x0 + w, y0 - 11 - 7 * i), (x1 - w, y0 - 11 - 7 * i), (x1 + w + 8 + 7 * i, y), (x0 - w - 8 - 7 * i, y)])
                .Append((x, y));
            if (!Labels.Centred(sheet, area, places, name, NameSize, "o"))
                Labels.Callout(sheet, area, x, y, [name], NameSize, "o", "d");
        }
    }

    /// <summary>In an elevation stations lie over each other: each name hangs on a leader below.</summary>
    private void StationCallouts()
    {
        foreach (var box in cell.Geometry.Stations)
        {
            var spots = CellParts.Zone(box, cell.Cell).Select(view.At).ToList();
            Labels.Callout(sheet, area, (spots.Min(p => p.X) + spots.Max(p => p.X)) / 2, spots.Max(p => p.Y), [Name(box.Id)], SmallSize, "s o", "d", 120);
        }
    }

    /// <summary>A scale that stays true on a screen.</summary>
    private void ScaleBar()
    {
        double metres = ((double[])[0.05, 0.1, 0.2, 0.5, 1, 2, 5]).FirstOrDefault(m => m * view.Scale > 55, 10);
        double x = area.X + 12, y = area.Bottom - 10, w = metres * view.Scale;
        string text = Numbers.Quantity(metres, "m", locale);
        var box = Sheet.BoxOf(x + w + 6, y + 1, text, SmallSize, Anchor.Start, false);
        if (!sheet.Free(new(x, y - 8, box.Right - x + 2, 10))) return;
        for (int i = 0; i < 4; i++) sheet.Rectangle(new(x + i * w / 4, y - 5, w / 4, 5), i % 2 == 0 ? "f" : "");
        sheet.Rectangle(new(x, y - 5, w, 5), "");
        sheet.Text(x + w + 6, y + 1, text, SmallSize, "s");
    }
}
