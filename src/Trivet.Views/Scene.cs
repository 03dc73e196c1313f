using System.Collections.Immutable;
using Trivet.Assessment;
using Trivet.Cells;
using Trivet.Findings;
using Trivet.Numerics;
using Trivet.Reach;

namespace Trivet.Views;

/// <summary>What the 3-D view draws: plain primitives in the cell frame, metres. A script draws them and computes nothing.</summary>
/// <param name="Kind">"box", "capsule", "mesh" or "point".</param>
/// <param name="Role">"frame", "robot", "rod", "platform", "tool", "station", "volume", "worst", "beyond": the style sheet's business.</param>
/// <param name="Pointer">The part of the description it stands for, or empty.</param>
/// <param name="Numbers">box: centre, half extents, yaw; capsule: from, to, radius; point: position; mesh: vertices as triples.</param>
/// <param name="Triangles">mesh: vertex indices, three a triangle.</param>
public sealed record SceneItem(string Kind, string Role, string Pointer, ImmutableArray<double> Numbers, ImmutableArray<int> Triangles);

/// <summary>The whole scene, or the part of it that moves with the tool.</summary>
public sealed record Scene(ImmutableArray<SceneItem> Items)
{
    // Sizes of what the description does not size, for the picture alone, metres.
    private const double RailSection = 0.02, CarriageHalf = 0.022, ArmRadius = 0.014, ShoulderRadius = 0.032, PlateHalf = 0.006, BedThickness = 0.012;

    /// <summary>What stands still.</summary>
    /// <param name="volume">The reachable volume of the same cell; without it the rest is drawn.</param>
    public static Scene Fixed(Assessed cell, SceneVolume? volume = null, Finding? marked = null)
    {
        var items = ImmutableArray.CreateBuilder<SceneItem>();
        foreach (var bar in Bar.Members(cell.Cell)) items.Add(Solid(bar, "frame"));
        foreach (var box in cell.Geometry.Stations) items.AddRange(Station(box, cell.Cell));
        double along = AlongAxis(cell);
        if (Posture.At(cell, Vec3.Zero, 0, along) is { } robot) items.AddRange(robot.Chains.Select(c => Base(c)));
        if (volume is not null) items.AddRange(volume.Items);
        if (marked?.Worst is { } worst && worst.P_C.IsFinite) items.Add(new("point", "worst", marked.Subject.Pointer, Numbers(worst.P_C), []));
        return new(items.DrainToImmutable());
    }

    /// <summary>Where the axis that carries the robot stands in the picture: at the first station.</summary>
    internal static double AlongAxis(Assessed cell) => cell.Geometry.Stations.IsEmpty ? 0 : cell.Geometry.Stations[0].LinearAxisAt;

    /// <summary>Role of a carriage or arm that stands past an end of its travel: there the machine cannot go, and the picture shows which chain is why.</summary>
    public const string Beyond = "beyond";

    /// <summary>Carriages or arms, rods, platform and tool with the tool centre point at p_C; empty items where a rod does not reach.</summary>
    public static Scene Moving(Assessed cell, double x_C, double y_C, double z_C, double rotary, double linearAxis)
    {
        if (Posture.At(cell, new(x_C, y_C, z_C), rotary, linearAxis) is not { Closed: true } posture) return new([]);
        var items = ImmutableArray.CreateBuilder<SceneItem>();
        foreach (var chain in posture.Chains)
        {
            string pointer = "/robot/chains/" + chain.Id, role = chain.Beyond ? Beyond : "robot";
            items.Add(chain.Family == RobotFamily.RailDelta
                ? Solid(Bar.Between(pointer, chain.Joint - CarriageHalf * Unit(chain), chain.Joint + CarriageHalf * Unit(chain), 2 * CarriageHalf, 2 * CarriageHalf), role)
                : Capsule(role, pointer, chain.Start, chain.Joint, ArmRadius));
            foreach (int side in (int[])[-1, 1])
                items.Add(Capsule("rod", pointer, chain.Joint + side * chain.Half, chain.PlatformJoint + side * chain.Half, chain.RodRadius));
            items.Add(Capsule("robot", pointer, chain.Joint - chain.Half, chain.Joint + chain.Half, chain.RodRadius));
        }

        items.Add(Plate(posture, cell.Geometry.X_CB.R));
        items.Add(Capsule("tool", "/tool", posture.Platform, posture.Tcp + ToolTip(posture), posture.ToolRadius));
        return new(items.DrainToImmutable());
    }

    private static Vec3 Unit(ChainPosture chain) => (chain.End - chain.Start).Unit();

    /// <summary>The capsule's round end stops at the tool centre point.</summary>
    private static Vec3 ToolTip(Posture p)
    {
        var down = p.Tcp - p.Platform;
        return down.Norm > p.ToolRadius ? -p.ToolRadius * down.Unit() : -1 * down;
    }

    private static SceneItem Base(ChainPosture chain)
    {
        string pointer = "/robot/chains/" + chain.Id;
        if (chain.Family == RobotFamily.CrankDelta)
            return Capsule("robot", pointer, chain.Start - 0.7 * chain.Half, chain.Start + 0.7 * chain.Half, ShoulderRadius);
        // The rail stands behind its carriages.
        var back = chain.Half.Norm > 0 ? CarriageHalf * chain.Half.Unit().Cross(Unit(chain)) : Vec3.Zero;
        return Solid(Bar.Between(pointer, chain.Start - 0.03 * Unit(chain) - back, chain.End + 0.03 * Unit(chain) - back, RailSection, RailSection), "robot");
    }

    private static IEnumerable<SceneItem> Station(StationBox box, Cell cell)
    {
        string pointer = "/stations/" + box.Id;
        double yaw = Math.Atan2(box.X_CS.R.Column(0).Y, box.X_CS.R.Column(0).X);
        yield return Block("station", pointer, box.X_CS * (0.5 * (box.Low + box.High)), 0.5 * (box.High - box.Low), yaw);
        var station = cell.Stations.GetValueOrDefault(box.Id);
        // What carries the parts: a bed under the zone, wider by half a pitch round a tray's pockets.
        double dx = Math.Abs(station?.ColumnPitch ?? 0) / 2, dy = Math.Abs(station?.RowPitch ?? 0) / 2;
        Vec3 low = new(box.Low.X - dx, box.Low.Y - dy, box.Low.Z - BedThickness), high = new(box.High.X + dx, box.High.Y + dy, box.Low.Z);
        yield return Block("station", pointer, box.X_CS * (0.5 * (low + high)), 0.5 * (high - low), yaw);
    }

    private static SceneItem Plate(Posture posture, Mat3 r_CB)
    {
        var normal = r_CB.Column(2);
        var rim = Hull.Of(posture.Chains.SelectMany(c => (Vec3[])[c.PlatformJoint + c.Half, c.PlatformJoint - c.Half])
            .Select(p => (r_CB.Column(0).Dot(p - posture.Platform), r_CB.Column(1).Dot(p - posture.Platform))));
        double height = posture.Chains.Average(c => (c.PlatformJoint - posture.Platform).Dot(normal));
        var vertices = new List<Vec3>();
        foreach (double h in (double[])[height - PlateHalf, height + PlateHalf])
            vertices.AddRange(rim.Select(q => posture.Platform + q.X * r_CB.Column(0) + q.Y * r_CB.Column(1) + h * normal));
        int n = rim.Length;
        var triangles = ImmutableArray.CreateBuilder<int>();
        for (int i = 0; i < n; i++)
        {
            int j = (i + 1) % n;
            triangles.AddRange(i, j, n + j, i, n + j, n + i);
            if (i > 1) triangles.AddRange(0, i, i - 1, n, n + i - 1, n + i);
        }

        return new("mesh", "platform", "/robot", [.. vertices.SelectMany(v => Numbers(v))], triangles.DrainToImmutable());
    }

    /// <summary>A bar as a box where it stands level or upright, else as a mesh: a box of the scene turns about z only.</summary>
    private static SceneItem Solid(Bar bar, string role)
    {
        if (Math.Abs(bar.Along.Z) < 1e-9)
            return Block(role, bar.Pointer, bar.Centre, new(bar.HalfLength, bar.HalfWidth, bar.HalfHeight), Math.Atan2(bar.Along.Y, bar.Along.X));
        if (Math.Abs(bar.Along.Z) > 1 - 1e-9)
            return Block(role, bar.Pointer, bar.Centre, new(bar.HalfWidth, bar.HalfHeight, bar.HalfLength), Math.Atan2(bar.Across.Y, bar.Across.X));
        // Corner bits: 1 along, 2 across, 4 up; each face turns counter-clockwise seen from outside.
        return new("mesh", role, bar.Pointer, [.. bar.Corners().SelectMany(v => Numbers(v))],
            [0, 2, 3, 0, 3, 1, 4, 5, 7, 4, 7, 6, 0, 1, 5, 0, 5, 4, 2, 6, 7, 2, 7, 3, 0, 4, 6, 0, 6, 2, 1, 3, 7, 1, 7, 5]);
    }

    private static SceneItem Block(string role, string pointer, Vec3 centre, Vec3 half, double yaw) =>
        new("box", role, pointer, [.. Numbers(centre), .. Numbers(half), Math.Round(yaw, 6)], []);

    private static SceneItem Capsule(string role, string pointer, Vec3 from, Vec3 to, double radius) =>
        new("capsule", role, pointer, [.. Numbers(from), .. Numbers(to), Math.Round(radius, 5)], []);

    /// <summary>A hundredth of a millimetre is finer than any screen and half the bytes.</summary>
    internal static ImmutableArray<double> Numbers(Vec3 v) => [Math.Round(v.X, 5), Math.Round(v.Y, 5), Math.Round(v.Z, 5)];
}
