using System.Collections.Immutable;
using Trivet.Assessment;
using Trivet.Cells;
using Trivet.Numerics;
using Trivet.Reach;
using Trivet.Views.Motion;

namespace Trivet.Views.Drawings;

/// <summary>Draws the parts of a cell into a view of a sheet, those farther from the eye first.</summary>
internal static class CellParts
{
    // Sizes of what the description does not size, for the picture alone, metres.
    private const double RailHalf = 0.012, CarriageHalf = 0.025, ArmHalf = 0.014, ShoulderHalf = 0.03, PlateHalf = 0.008, BeltBeyond = 0.12;

    private const int ReachResolution = 40;

    /// <summary>Corners of all that will be drawn, so that a scale can be chosen.</summary>
    public static Extents ExtentsOf(Seen seen, Assessed cell, Posture? posture, IReadOnlyList<IReadOnlyList<Vec3>> reach)
    {
        var e = new Extents(seen);
        foreach (var p in reach.SelectMany(loop => loop)) e.Add(p);
        foreach (var bar in Bar.Members(cell.Cell)) foreach (var corner in bar.Corners()) e.Add(corner);
        foreach (var box in cell.Geometry.Stations) foreach (var corner in Zone(box, cell.Cell)) e.Add(corner);
        if (posture is not null)
        {
            foreach (var c in posture.Chains)
            {
                foreach (var p in (Vec3[])[c.Start, c.End, c.Joint, c.PlatformJoint])
                {
                    e.Add(p + c.Half);
                    e.Add(p - c.Half);
                }
            }

            e.Add(posture.Tcp);
        }

        if (seen == Seen.AlongY && !e.Empty) e.Add(new((e.MinX + e.MaxX) / 2, 0, 0));
        return e;
    }

    /// <summary>
    /// The outline of what the tool centre point reaches, cell frame: in a plan at the height of the lowest station, in an elevation in
    /// the upright plane through the base.
    /// </summary>
    public static IReadOnlyList<IReadOnlyList<Vec3>> Reach(Seen seen, CellGeometry g, ReachLimits limits)
    {
        if (g.Robot is not { } robot || g.Stations.IsEmpty) return [];
        double along = g.Stations[0].LinearAxisAt;
        var set = new ReachableSet(robot, limits);
        // The section's points are platform positions in the base frame; what is drawn is where the tool centre point then is.
        double z_B = g.PlatformFor(new Vec3(0, 0, g.Stations.Min(s => s.X_CS.P.Z)), 0, along).Z;
        var section = seen == Seen.FromAbove
            ? ReachableVolume.HorizontalSection(set, z_B, ReachResolution)
            : ReachableVolume.VerticalSection(set, Vec3.Zero, AzimuthAlongX(g), ReachResolution);
        return [.. section.Loops.Select(loop => (IReadOnlyList<Vec3>)[.. loop.Select(p => g.TcpFor(p, 0, along))])];
    }

    /// <summary>The azimuth of the cell's x in the base frame: the upright section that an elevation shows in true shape.</summary>
    private static double AzimuthAlongX(CellGeometry g)
    {
        var x_B = g.X_CB.R.Transpose() * Vec3.UnitX;
        return g.Robot!.Planar ? 0 : Math.Atan2(x_B.Y, x_B.X);
    }

    public static void Frame(Sheet sheet, View view, Cell cell)
    {
        foreach (var bar in Bar.Members(cell).OrderBy(b => b.Corners().Max(view.Depth)))
        {
            sheet.Open(("data-pointer", bar.Pointer));
            sheet.Tooltip(bar.Name);
            sheet.Polygon(Hull.Of(bar.Corners().Select(view.At)), "p w");
            sheet.Close();
        }
    }

    /// <summary>Members over a station, as outlines that hide nothing.</summary>
    public static void Overhead(Sheet sheet, View view, Assessed cell)
    {
        var zones = cell.Geometry.Stations.Select(s => Around(Zone(s, cell.Cell).Select(view.At))).ToList();
        foreach (var bar in Bar.Members(cell.Cell))
        {
            var outline = Hull.Of(bar.Corners().Select(view.At));
            if (zones.Exists(Around(outline).Overlaps)) sheet.Polygon(outline, "m");
        }

        static Box Around(IEnumerable<(double X, double Y)> points)
        {
            var p = points.ToList();
            double x = p.Min(q => q.X), y = p.Min(q => q.Y);
            return new(x, y, p.Max(q => q.X) - x, p.Max(q => q.Y) - y);
        }
    }

    /// <summary>A station as seen: zone, pockets, direction of the belt, walls. The group can be grasped by its data-pointer.</summary>
    public static void Station(Sheet sheet, View view, StationBox box, Cell cell)
    {
        var station = cell.Stations.GetValueOrDefault(box.Id) ?? new();
        sheet.Open(("class", "station"), ("data-pointer", "/stations/" + box.Id));
        sheet.Tooltip(station.Name ?? box.Id);
        if (view.Seen == Seen.FromAbove) FromAbove(sheet, view, box, station);
        else AlongY(sheet, view, box, station);
        sheet.Close();
    }

    private static void FromAbove(Sheet sheet, View view, StationBox box, Station station)
    {
        var outline = Ground(box, station);
        if (station.Kind == StationKind.Belt)
        {
            double x0 = box.Low.X - BeltBeyond, x1 = box.High.X + BeltBeyond, y = box.High.Y;
            sheet.Polygon(Map(outline), "l z");
            sheet.Line(On(x0, -y).X, On(x0, -y).Y, On(x1, -y).X, On(x1, -y).Y, "b");
            sheet.Line(On(x0, y).X, On(x0, y).Y, On(x1, y).X, On(x1, y).Y, "b");
            Break(x0, y);
            Break(x1, y);
            // The tracking window: where parts may be picked.
            sheet.Polygon(((Vec3[])[new(box.Low.X, -y, 0), new(box.High.X, -y, 0), new(box.High.X, y, 0), new(box.Low.X, y, 0)]).Select(OnV), "h");
            Flow(sheet, On(box.High.X + 0.2 * BeltBeyond, 0), On(box.High.X + 0.85 * BeltBeyond, 0));
        }
        else
        {
            sheet.Polygon(Map(outline), "l b");
            if (station.Kind == StationKind.Tray)
            {
                int columns = Math.Clamp(station.Columns ?? 1, 1, 60), rows = Math.Clamp(station.Rows ?? 1, 1, 60);
                double dx = station.ColumnPitch ?? 0, dy = station.RowPitch ?? 0;
                double pitch = new[] { Math.Abs(dx), Math.Abs(dy) }.Where(p => p > 0).DefaultIfEmpty(0.04).Min();
                for (int i = 0; i < columns; i++)
                    for (int j = 0; j < rows; j++)
                    {
                        var (x, y) = On(i * dx, j * dy);
                        sheet.Circle(x, y, Math.Max(0.36 * pitch * view.Scale, 1.2), i == 0 && j == 0 ? "b" : "");
                    }
            }
            else
            {
                var (x, y) = On(0, 0);
                sheet.Line(x - 6, y, x + 6, y, "");
                sheet.Line(x, y - 6, x, y + 6, "");
                sheet.Polygon(((Vec3[])[new(box.Low.X, box.Low.Y, 0), new(box.High.X, box.Low.Y, 0), new(box.High.X, box.High.Y, 0), new(box.Low.X, box.High.Y, 0)]).Select(OnV), "h");
            }
        }

        (double X, double Y) On(double x, double y) => view.At(box.X_CS * new Vec3(x, y, 0));
        (double X, double Y) OnV(Vec3 v) => view.At(box.X_CS * v);
        IEnumerable<(double, double)> Map(IEnumerable<Vec3> v) => v.Select(OnV);

        void Break(double x, double y) => sheet.Polyline(Map([new(x, -1.15 * y, 0), new(x, -0.14 * y, 0), new(x + 0.012, -0.05 * y, 0), new(x - 0.012, 0.05 * y, 0), new(x, 0.14 * y, 0), new(x, 1.15 * y, 0)]), "d");
    }

    private static void AlongY(Sheet sheet, View view, StationBox box, Station station)
    {
        var ground = Ground(box, station).Select(v => box.X_CS * v).ToList();
        var corners = ground.Concat(ground.Select(v => v - new Vec3(0, 0, 0.012)));
        sheet.Polygon(Hull.Of(corners.Select(view.At)), "l b");
        var zone = Corners(box).Select(v => box.X_CS * v);
        sheet.Polygon(Hull.Of(zone.Select(view.At)), "h");
        if (station.WallHeight is { } wall and > 0)
        {
            var walls = ground.Concat(ground.Select(v => v + new Vec3(0, 0, wall)));
            sheet.Polygon(Hull.Of(walls.Select(view.At)), "");
        }
    }

    /// <summary>The station's outline on its working height, station frame: a tray reaches half a pitch beyond its pockets, a belt beyond its window.</summary>
    private static Vec3[] Ground(StationBox box, Station station)
    {
        double dx = station.Kind == StationKind.Belt ? BeltBeyond : Math.Abs(station.ColumnPitch ?? 0) / 2;
        double dy = station.Kind == StationKind.Belt ? 0 : Math.Abs(station.RowPitch ?? 0) / 2;
        double gap = station.WallHeight > 0 ? station.WallGap ?? 0 : 0;
        if (station.Kind != StationKind.Belt) dx = Math.Max(dx, gap);
        dy = Math.Max(dy, gap);
        return [new(box.Low.X - dx, box.Low.Y - dy, 0), new(box.High.X + dx, box.Low.Y - dy, 0), new(box.High.X + dx, box.High.Y + dy, 0), new(box.Low.X - dx, box.High.Y + dy, 0)];
    }

    public static IEnumerable<Vec3> Zone(StationBox box, Cell cell) =>
        Ground(box, cell.Stations.GetValueOrDefault(box.Id) ?? new()).Concat(Corners(box)).Select(v => box.X_CS * v);

    private static IEnumerable<Vec3> Corners(StationBox box)
    {
        for (int i = 0; i < 8; i++)
            yield return new((i & 1) == 0 ? box.Low.X : box.High.X, (i & 2) == 0 ? box.Low.Y : box.High.Y, (i & 4) == 0 ? box.Low.Z : box.High.Z);
    }

    /// <summary>Rails or shoulders, then what moves. Chains farther from the eye come first.</summary>
    public static void Robot(Sheet sheet, View view, Posture posture)
    {
        var chains = posture.Chains.OrderBy(c => view.Depth(0.5 * (c.Start + c.PlatformJoint))).ToList();
        sheet.Open(("data-pointer", "/robot"));
        foreach (var c in chains)
        {
            if (c.Family == RobotFamily.RailDelta)
            {
                var along = (c.End - c.Start).Unit();
                var bar = Bar.Between("", c.Start - 0.03 * along, c.End + 0.03 * along, 2 * RailHalf, 2 * RailHalf);
                sheet.Polygon(Hull.Of(bar.Corners().Select(view.At)), "p");
            }
            else Stadium(sheet, view, c.Start - 0.7 * c.Half, c.Start + 0.7 * c.Half, ShoulderHalf, "p");
        }

        if (posture.Closed)
        {
            sheet.Open(("data-moving", "robot"));
            foreach (var c in chains)
            {
                if (c.Family == RobotFamily.RailDelta)
                {
                    var along = (c.End - c.Start).Unit();
                    var block = Bar.Between("", c.Joint - CarriageHalf * along, c.Joint + CarriageHalf * along, 1.7 * CarriageHalf, 1.7 * CarriageHalf);
                    sheet.Polygon(Hull.Of(block.Corners().Select(view.At)), "l w");
                }
                else Stadium(sheet, view, c.Start, c.Joint, ArmHalf, "l w");
                foreach (int side in (int[])[-1, 1]) Stadium(sheet, view, c.Joint + side * c.Half, c.PlatformJoint + side * c.Half, Math.Max(c.RodRadius, 0.6 / view.Scale), "p b");
            }

            var plate = posture.Chains.SelectMany(c => (Vec3[])[c.PlatformJoint + c.Half, c.PlatformJoint - c.Half]).ToList();
            var thick = plate.Concat(plate.Select(p => p - new Vec3(0, 0, 2 * PlateHalf)));
            if (view.Seen == Seen.AlongY) Stadium(sheet, view, posture.Platform, posture.Tcp + new Vec3(0, 0, posture.ToolRadius), posture.ToolRadius, "l b");
            sheet.Polygon(Hull.Of(thick.Select(view.At)), "l w");
            if (view.Seen == Seen.FromAbove)
            {
                var (x, y) = view.At(posture.Tcp);
                sheet.Circle(x, y, Math.Max(posture.ToolRadius * view.Scale, 2), "p b");
                sheet.Circle(x, y, 1.2, "f");
            }

            sheet.Close();
        }

        sheet.Close();
    }

    /// <summary>The same parts for a script that moves them. Points: joint and platform joint of each chain in turn, platform, tool centre point.</summary>
    public static ImmutableArray<MovingPart> Moving(Seen seen, Posture posture)
    {
        int n = posture.Chains.Length, platform = 2 * n, tool = platform + 1;
        var parts = ImmutableArray.CreateBuilder<MovingPart>();
        var flat = new View(seen, 0, 0, 1, 1);
        foreach (var (c, i) in posture.Chains.Select((c, i) => (c, i)).OrderBy(c => flat.Depth(0.5 * (c.c.Start + c.c.PlatformJoint))))
        {
            if (c.Family == RobotFamily.RailDelta)
            {
                var along = (c.End - c.Start).Unit();
                parts.Add(Block("l w", 2 * i, Bar.Between("", -CarriageHalf * along, CarriageHalf * along, 1.7 * CarriageHalf, 1.7 * CarriageHalf).Corners()));
            }
            else parts.Add(new("l w", [], -1, Flat(c.Start), 2 * i, [0, 0], ArmHalf));
            foreach (int side in (int[])[-1, 1]) parts.Add(new("p b", [], 2 * i, Flat(side * c.Half), 2 * i + 1, Flat(side * c.Half), c.RodRadius));
        }

        var plate = posture.Chains.SelectMany(c => (Vec3[])[c.PlatformJoint + c.Half, c.PlatformJoint - c.Half]).Select(p => p - posture.Platform).ToList();
        var block = Block("l w", platform, plate.Concat(plate.Select(p => p - new Vec3(0, 0, 2 * PlateHalf))));
        if (seen == Seen.AlongY)
        {
            parts.Add(new("l b", [], platform, [0, 0], tool, Flat(new(0, 0, posture.ToolRadius)), posture.ToolRadius));
            parts.Add(block);
        }
        else
        {
            parts.Add(block);
            parts.Add(new("p b", [], tool, [0, 0], tool, [0, 0], posture.ToolRadius));
        }

        return parts.DrainToImmutable();

        MovingPart Block(string style, int at, IEnumerable<Vec3> corners) =>
            new(style, [.. Hull.Of(corners.Select(v => (v.X, flat.Up(v)))).SelectMany(q => new[] { Math.Round(q.X, 5), Math.Round(q.Y, 5) })], at, [0, 0], at, [0, 0], 0);

        ImmutableArray<double> Flat(Vec3 v) => [Math.Round(v.X, 5), Math.Round(flat.Up(v), 5)];
    }

    /// <summary>The way of the tool through a cycle: loaded in the accent, empty broken.</summary>
    public static void Way(Sheet sheet, View view, CycleWay way)
    {
        sheet.Polyline(way.Empty.Select(view.At), "x h");
        sheet.Polyline(way.Loaded.Select(view.At), "x");
    }

    /// <summary>A capsule seen from any side: two parallel lines with round ends.</summary>
    private static void Stadium(Sheet sheet, View view, Vec3 from, Vec3 to, double radius, string style)
    {
        var (x0, y0) = view.At(from);
        var (x1, y1) = view.At(to);
        double r = radius * view.Scale, length = Math.Sqrt((x1 - x0) * (x1 - x0) + (y1 - y0) * (y1 - y0));
        if (length < 0.01)
        {
            sheet.Circle(x0, y0, r, style);
            return;
        }

        double nx = -(y1 - y0) / length * r, ny = (x1 - x0) / length * r;
        string n(double v) => Sheet.N(v);
        sheet.Path($"M{n(x0 + nx)} {n(y0 + ny)}L{n(x1 + nx)} {n(y1 + ny)}A{n(r)} {n(r)} 0 0 0 {n(x1 - nx)} {n(y1 - ny)}L{n(x0 - nx)} {n(y0 - ny)}A{n(r)} {n(r)} 0 0 0 {n(x0 + nx)} {n(y0 + ny)}Z", style);
    }

    /// <summary>An open arrow along the belt's travel.</summary>
    private static void Flow(Sheet sheet, (double X, double Y) from, (double X, double Y) to)
    {
        double dx = to.X - from.X, dy = to.Y - from.Y, length = Math.Sqrt(dx * dx + dy * dy);
        if (length < 4) return;
        (dx, dy) = (dx / length, dy / length);
        double head = Math.Min(9, length / 2);
        sheet.Line(from.X, from.Y, to.X - head * dx, to.Y - head * dy, "w");
        sheet.Polygon([(to.X, to.Y), (to.X - head * dx - 0.45 * head * dy, to.Y - head * dy + 0.45 * head * dx), (to.X - head * dx + 0.45 * head * dy, to.Y - head * dy - 0.45 * head * dx)], "f");
    }
}
