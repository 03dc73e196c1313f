using System.Collections.Immutable;
using Trivet.Assessment;
using Trivet.Cells;
using Trivet.Numerics;
using Trivet.Reach;

namespace Trivet.Views.Pictures;

/// <summary>What of a machine is there already.</summary>
[Flags]
public enum Fitted
{
    Frame = 1,
    /// <summary>Base, rails with their carriages or shoulders with their arms, motors, travel switches.</summary>
    Robot = 2,
    Rods = 4,
    Platform = 8,
    Tool = 16,
    Stations = 32,
    Cabinet = 64,
    Ways = 128,
    Guards = 256,
    All = 511,
}

/// <summary>The solids that stand for a cell in a picture, cell frame, metres. What the description does not size is drawn at a plain size and states nothing.</summary>
internal static class CellSolids
{
    private const double FootRadius = 0.045, FootHeight = 0.014, BedThickness = 0.012, BeltBeyond = 0.12, BeltThickness = 0.06, PocketHeight = 0.003;
    private const double PostWidth = 0.04, FenceHeight = 2, CurtainHeight = 1.8;

    public static ImmutableArray<Piece> Of(Assessed assessed, Fitted fitted)
    {
        var (cell, pieces) = (assessed.Cell, ImmutableArray.CreateBuilder<Piece>());
        if (fitted.HasFlag(Fitted.Frame)) Frame(cell, pieces);
        new RobotSolids(assessed, fitted, pieces).Add();
        if (fitted.HasFlag(Fitted.Stations))
            foreach (var box in assessed.Geometry.Stations) Station(box, cell, pieces);
        if (fitted.HasFlag(Fitted.Cabinet)) Cabinet(cell, pieces);
        if (fitted.HasFlag(Fitted.Ways)) Ways(cell, pieces);
        if (fitted.HasFlag(Fitted.Guards)) Guards(cell, pieces);
        return pieces.DrainToImmutable();
    }

    /// <summary>The foot of a post in the descriptions' words: there is one list of feet, so the post's name stands behind it.</summary>
    public static string Foot(string post) => "/frame/feet/" + post;

    private static void Frame(Cell cell, ImmutableArray<Piece>.Builder pieces)
    {
        var members = Bar.Members(cell);
        double floor = members.IsEmpty ? 0 : members.Min(b => b.Corners().Min(c => c.Z));
        foreach (var bar in members)
        {
            pieces.Add(new(ConvexSolid.Of(bar), [bar.Pointer, bar.Pointer + "#" + bar.Name]));
            var low = bar.Centre - bar.HalfLength * Math.Sign(bar.Along.Z) * bar.Along;
            if (bar.Along.Z is < 0.99 and > -0.99 || low.Z > floor + 1e-6) continue;
            double radius = Math.Max(FootRadius, 0.75 * (bar.HalfWidth + bar.HalfHeight));
            pieces.Add(new(ConvexSolid.Cylinder(low, low + new Vec3(0, 0, FootHeight), radius, 20), ["/frame/feet", Foot(bar.Name)]));
        }
    }

    private static void Station(StationBox box, Cell cell, ImmutableArray<Piece>.Builder pieces)
    {
        var station = cell.Stations.GetValueOrDefault(box.Id);
        ImmutableArray<string> at = ["/stations/" + box.Id];
        if (station?.Kind == StationKind.Belt)
        {
            // Upper and lower run round two rollers.
            double r = BeltThickness / 2, x0 = box.Low.X - BeltBeyond + r, x1 = box.High.X + BeltBeyond - r, y0 = box.Low.Y, y1 = box.High.Y, z = box.Low.Z - r;
            if (y1 - y0 < 0.04) (y0, y1) = ((y0 + y1) / 2 - 0.05, (y0 + y1) / 2 + 0.05);
            const int Half = 9;
            Vec3[] outline = [.. Enumerable.Range(0, 2 * Half).Select(i => i < Half ? (i - (Half - 1) / 2.0, x1, 1) : (i - Half - (Half - 1) / 2.0, x0, -1))
                .Select(e => (Angle: Math.PI * e.Item1 / (Half - 1), X: e.Item2, Way: e.Item3))
                .Select(e => box.X_CS * new Vec3(e.X + e.Way * r * Math.Cos(e.Angle), y1, z + e.Way * r * Math.Sin(e.Angle)))];
            pieces.Add(new(ConvexSolid.Prism(outline, box.X_CS.R * new Vec3(0, y0 - y1, 0), _ => true), at));
            return;
        }

        double dx = Math.Abs(station?.ColumnPitch ?? 0) / 2, dy = Math.Abs(station?.RowPitch ?? 0) / 2;
        // A place without size still has something under it.
        if (box.High.X - box.Low.X + dx < 0.02) dx = 0.03;
        if (box.High.Y - box.Low.Y + dy < 0.02) dy = 0.03;
        Vec3 low = new(box.Low.X - dx, box.Low.Y - dy, box.Low.Z - BedThickness), high = new(box.High.X + dx, box.High.Y + dy, box.Low.Z), half = 0.5 * (high - low);
        var r_CS = box.X_CS.R;
        pieces.Add(new(ConvexSolid.Box(box.X_CS * (0.5 * (low + high)), half.X * r_CS.Column(0), half.Y * r_CS.Column(1), half.Z * r_CS.Column(2)), at));
        if (station is not { Kind: StationKind.Tray, Columns: { } columns, Rows: { } rows, ColumnPitch: { } across, RowPitch: { } down } || columns * rows is < 1 or > 60) return;
        // Pockets stand for nothing by themselves, so that a marked tray is not all outline.
        double radius = 0.36 * Math.Min(Math.Abs(across), rows > 1 ? Math.Abs(down) : Math.Abs(across));
        if (radius < 0.004) return;
        for (int i = 0; i < columns; i++)
            for (int j = 0; j < rows; j++)
            {
                var pocket = box.X_CS * new Vec3(i * across, j * down, box.Low.Z);
                pieces.Add(new(ConvexSolid.Cylinder(pocket, pocket + PocketHeight * r_CS.Column(2), radius, 16), []));
            }
    }

    /// <summary>
    /// The cabinet as a box whose cables leave in the middle of its top or, where it would reach below the floor, of its foot; it stands outside the
    /// frame.
    /// </summary>
    private static void Cabinet(Cell cell, ImmutableArray<Piece>.Builder pieces)
    {
        var (plan, box) = (cell.Cabling, cell.Cabinet.Enclosure);
        if (plan is not { CabinetX: { } x, CabinetY: { } y, CabinetZ: { } z } || box is not { Width: > 0, Height: > 0, Depth: > 0 }) return;
        var members = Bar.Members(cell).SelectMany(b => b.Corners()).DefaultIfEmpty(new(cell.Mount.X ?? 0, cell.Mount.Y ?? 0, 0)).ToArray();
        double cx = (members.Min(p => p.X) + members.Max(p => p.X)) / 2, cy = (members.Min(p => p.Y) + members.Max(p => p.Y)) / 2;
        bool alongY = Math.Abs(y - cy) >= Math.Abs(x - cx);
        var outward = alongY ? new Vec3(0, y >= cy ? 1 : -1, 0) : new Vec3(x >= cx ? 1 : -1, 0, 0);
        var across = alongY ? Vec3.UnitX : Vec3.UnitY;
        double top = z >= box.Height.Value ? z : z + box.Height.Value;
        var middle = new Vec3(x, y, top - box.Height.Value / 2) + box.Depth.Value / 2 * outward;
        ImmutableArray<string> at = ["/cabinet", "/cabinet/enclosure"];
        pieces.Add(new(ConvexSolid.Box(middle, box.Width.Value / 2 * across, box.Depth.Value / 2 * outward, box.Height.Value / 2 * Vec3.UnitZ), at));
        // Its door, drawn a little inside the edge.
        var front = middle + box.Depth.Value / 2 * outward;
        pieces.Add(new(ConvexSolid.Box(front, (box.Width.Value / 2 - 0.02) * across, 0.008 * outward, (box.Height.Value / 2 - 0.02) * Vec3.UnitZ), at));
    }

    private static void Ways(Cell cell, ImmutableArray<Piece>.Builder pieces)
    {
        foreach (var (id, way) in cell.Cabling.Ways.InOrder())
        {
            Vec3[] points = [.. way.Points.InOrder().Select(p => new Vec3(p.Value.X ?? double.NaN, p.Value.Y ?? double.NaN, p.Value.Z ?? double.NaN)).Where(p => p.IsFinite)];
            double width = way.Width ?? 0.03, height = way.Height ?? 0.03;
            ImmutableArray<string> at = ["/cabling/ways/" + id];
            if (way.Kind == CableWayKind.Loop) continue;
            for (int i = 1; i < points.Length; i++)
                if ((points[i] - points[i - 1]).Norm > 1e-3) pieces.Add(new(ConvexSolid.Of(Bar.Between(at[0], points[i - 1], points[i], width, height)), at));
            if (way is { Kind: CableWayKind.EnergyChain, BendRadius: > 0 } && points.Length >= 2) Bend(points[^1], (points[^1] - points[^2]).Unit(), way.BendRadius.Value, width, height, at, pieces);
        }
    }

    /// <summary>The half turn of an energy chain over the end of its fixed run, and as much of the moving run above as the bend is high.</summary>
    private static void Bend(Vec3 end, Vec3 along, double radius, double width, double height, ImmutableArray<string> at, ImmutableArray<Piece>.Builder pieces)
    {
        if (!along.IsFinite || Math.Abs(along.Z) > 0.9) return;
        const int Links = 8;
        Vec3 Place(int i) => end + radius * Math.Sin(Math.PI * i / Links) * along + radius * (1 - Math.Cos(Math.PI * i / Links)) * Vec3.UnitZ;
        for (int i = 1; i <= Links; i++) pieces.Add(new(ConvexSolid.Of(Bar.Between(at[0], Place(i - 1), Place(i), width, height)), at));
        pieces.Add(new(ConvexSolid.Of(Bar.Between(at[0], Place(Links), Place(Links) - 2 * radius * along, width, height)), at));
    }

    /// <summary>Fences as posts and rails, light curtains as two posts: what is behind them stays in sight.</summary>
    private static void Guards(Cell cell, ImmutableArray<Piece>.Builder pieces)
    {
        foreach (var (id, fence) in cell.Guarding.Fences.InOrder())
        {
            if (fence is not { FromX: { } x0, FromY: { } y0, ToX: { } x1, ToY: { } y1 }) continue;
            double low = fence.FloorGap ?? 0.1, high = fence.Height ?? FenceHeight;
            ImmutableArray<string> at = ["/guarding/fences/" + id];
            foreach (var (from, to) in (ReadOnlySpan<(Vec3, Vec3)>)[(new(x0, y0, 0), new(x0, y0, high)), (new(x1, y1, 0), new(x1, y1, high)), (new(x0, y0, low), new(x1, y1, low)), (new(x0, y0, high), new(x1, y1, high))])
                if ((to - from).Norm > 0.01) pieces.Add(new(ConvexSolid.Of(Bar.Between(at[0], from, to, PostWidth, PostWidth)), at));
        }

        foreach (var (id, device) in cell.Guarding.Devices.InOrder())
        {
            if (device is not { FromX: { } x0, FromY: { } y0, ToX: { } x1, ToY: { } y1 }) continue;
            double high = device.FieldHeight ?? CurtainHeight;
            ImmutableArray<string> at = ["/guarding/devices/" + id];
            foreach (var foot in (ReadOnlySpan<Vec3>)[new(x0, y0, 0), new(x1, y1, 0)])
                pieces.Add(new(ConvexSolid.Of(Bar.Between(at[0], foot, foot + high * Vec3.UnitZ, PostWidth, PostWidth)), at));
        }
    }
}
