using System.Collections.Immutable;
using Trivet.Assessment;
using Trivet.Cells;
using Trivet.Files;
using Trivet.Findings;
using Trivet.Kinematics;
using Trivet.Numerics;
using Trivet.Reach;

namespace Trivet.Views.Tests;

/// <summary>Whole cells written down by hand, invented: their geometry is typed beside their description, so that drawings are
/// tested apart from what reads one out of the other.</summary>
internal static class HandMadeCells
{
    public static Assessed RailDelta { get; } = Lids(3);
    public static Assessed CrankDelta { get; } = Crank();
    public static Assessed Planar { get; } = Lids(2);

    public static IEnumerable<(string Name, Assessed Cell)> All =>
        [("rail", RailDelta), ("crank", CrankDelta), ("planar", Planar), ("empty", Nothing), ("crowded", Crowded), .. Samples];

    /// <summary>The sample cells that can be read, as the fast assessment sees them.</summary>
    public static ImmutableArray<(string Name, Assessed Cell)> Samples { get; } =
    [
        .. Directory.GetFiles(Repository.PathOf("samples"), "*.json").Order(StringComparer.Ordinal)
            .Select(f => (Path.GetFileNameWithoutExtension(f), CellFile.Read(File.ReadAllBytes(f), f).Cell)).Where(f => f.Cell is not null)
            .Select(f => (f.Item1, Assess.Preview(f.Cell!))),
    ];

    /// <summary>Nothing stated at all.</summary>
    public static Assessed Nothing { get; } = new(Cell.Empty, new(null, Pose.Identity, Vec3.Zero, Vec3.Zero, [], []), Ledger.Empty, false);

    /// <summary>Many stations near each other, with long names.</summary>
    public static Assessed Crowded { get; } = Crowd();

    /// <summary>A finding of the rail delta whose worst point is at the corner of a tray.</summary>
    public static Judged Marked { get; } = HandMade.Judge(HandMade.Clearance, 0.0084, 0.010, double.PositiveInfinity, "/stations/tray-right", "a / b") with
    {
        Worst = new(new(0.86, 0.78, 0.80), double.NaN, Vec3.NaN),
    };

    private static Assessed Lids(int chains)
    {
        double[] azimuths = chains == 2 ? [0, Math.PI] : [Math.PI / 2, Math.PI / 2 + Math.Tau / 3, Math.PI / 2 - Math.Tau / 3];
        string[] ids = ["a", "b", "c"];
        var robot = new DeltaRobot(RobotFamily.RailDelta, [.. azimuths.Select(Rail)], [.. ids.Take(chains)]);
        var mount = new Vec3(0.6, 0.5, 1.75);
        var stations = Keyed.Empty<Station>()
            .Add("belt", new() { Order = 1, Name = "infeed belt", Kind = StationKind.Belt, X = 0.44, Y = chains == 2 ? 0.5 : 0.36, Z = 0.82, Approach = 0.04, Window = 0.28, Depth = chains == 2 ? 0 : 0.16, Speed = 0.2, WallHeight = 0.02, WallGap = 0.02 })
            .Add("tray-left", new() { Order = 2, Name = "tray left", Kind = StationKind.Tray, X = 0.42, Y = chains == 2 ? 0.5 : 0.58, Z = 0.80, Approach = 0.05, Columns = 4, Rows = chains == 2 ? 1 : 4, ColumnPitch = 0.045, RowPitch = 0.045 })
            .Add("tray-right", new() { Order = 3, Name = "tray right", Kind = StationKind.Tray, X = 0.64, Y = chains == 2 ? 0.5 : 0.58, Z = 0.80, Approach = 0.05, Columns = 4, Rows = chains == 2 ? 1 : 4, ColumnPitch = 0.045, RowPitch = 0.045 });
        var cell = Cell.Empty with
        {
            Name = chains == 2 ? "Two-chain sorter (invented)" : "Jar lids into trays (invented)",
            Robot = new()
            {
                Family = RobotFamily.RailDelta,
                Common = new() { RodSpacing = 0.07, RodDiameter = 0.010, Rod = 0.45 },
                Chains = ids.Take(chains).Aggregate(Keyed.Empty<ChainDescription>(), (all, id) => all.Add(id, new())),
            },
            Mount = new() { X = mount.X, Y = mount.Y, Z = mount.Z },
            Tool = new() { TcpZ = -0.12, Radius = 0.018 },
            Frame = new() { Members = Members(1.2, 1.0, 1.8) },
            Stations = stations,
        };
        var x_CB = new Pose(Mat3.Identity, mount);
        return new(cell, new(robot, x_CB, Vec3.Zero, new(0, 0, -0.12), Boxes(cell), []), HandMade.Ledger, true);
    }

    private static Assessed Crank()
    {
        double[] azimuths = [0, Math.Tau / 3, 2 * Math.Tau / 3];
        var robot = new DeltaRobot(RobotFamily.CrankDelta, [.. azimuths.Select(Arm)], ["1", "2", "3"]);
        var mount = new Vec3(0.5, 0.45, 1.5);
        var cell = Cell.Empty with
        {
            Name = "Sachets into cartons (invented)",
            Robot = new()
            {
                Family = RobotFamily.CrankDelta, Common = new() { RodSpacing = 0.06, RodDiameter = 0.012 },
                Chains = Keyed.Empty<ChainDescription>().Add("1", new()).Add("2", new()).Add("3", new()),
            },
            Mount = new() { X = mount.X, Y = mount.Y, Z = mount.Z, Yaw = Math.PI / 6 },
            Tool = new() { TcpZ = -0.08 },
            Frame = new() { Members = Members(1.0, 0.9, 1.6) },
            Stations = Keyed.Empty<Station>()
                .Add("infeed", new() { Order = 1, Name = "sachet belt", Kind = StationKind.Belt, X = 0.35, Y = 0.30, Z = 0.70, Yaw = 0.2, Approach = 0.06, Window = 0.25, Depth = 0.2, Speed = 0.3 })
                .Add("carton", new() { Order = 2, Name = "carton", Kind = StationKind.Nest, X = 0.55, Y = 0.66, Z = 0.68, Yaw = -0.1, Approach = 0.10, Width = 0.22, Depth = 0.14, WallHeight = 0.05, WallGap = 0.01 }),
        };
        return new(cell, new(robot, new(Mat3.RotationZ(Math.PI / 6), mount), Vec3.Zero, new(0, 0, -0.08), Boxes(cell), []), Ledger.Empty, false);
    }

    private static Assessed Crowd()
    {
        var stations = RailDelta.Cell.Stations;
        for (int i = 0; i < 14; i++)
            stations = stations.Add($"nest-{i:00}", new() { Order = 10 + i, Name = $"inspection nest number {i + 1} with a long name", Kind = StationKind.Nest, X = 0.35 + 0.04 * i, Y = 0.45 + 0.01 * i, Z = 0.7 + 0.003 * i, Width = 0.03, Depth = 0.03, Approach = 0.02 });
        var cell = RailDelta.Cell with { Name = "A cell with a very long name that no title strip has the room for, whatever its size", Stations = stations };
        return RailDelta with { Cell = cell, Geometry = RailDelta.Geometry with { Stations = Boxes(cell) } };
    }

    private static Chain Rail(double azimuth)
    {
        var (s, c) = Math.SinCos(azimuth);
        Vec3 r = new(c, s, 0), t = new(-s, c, 0);
        return new(RobotFamily.RailDelta, 0.30 * r - 0.05 * Vec3.UnitZ, -1 * Vec3.UnitZ, Vec3.Zero, 1, 0.06 * r, 0.45, 0, 0, 0.62, t);
    }

    private static Chain Arm(double azimuth)
    {
        var (s, c) = Math.SinCos(azimuth);
        Vec3 r = new(c, s, 0), t = new(-s, c, 0);
        return new(RobotFamily.CrankDelta, 0.15 * r, r, -1 * Vec3.UnitZ, 0.26, 0.05 * r, 0.60, 0, -0.6, 1.5, t);
    }

    private static ImmutableSortedDictionary<string, FrameMember> Members(double width, double depth, double height)
    {
        var all = Keyed.Empty<FrameMember>();
        const double Half = 0.02;
        double[] xs = [Half, width - Half], ys = [Half, depth - Half];
        foreach (double x in xs) foreach (double y in ys) Add(x, y, 0, x, y, height - 2 * Half);
        foreach (double z in (double[])[0.60, height - Half])
        {
            foreach (double y in ys) Add(0, y, z, width, y, z);
            foreach (double x in xs) Add(x, 2 * Half, z, x, depth - 2 * Half, z);
        }

        return all;

        void Add(double x0, double y0, double z0, double x1, double y1, double z1) => all = all.Add($"m{all.Count + 1:00}", new()
        {
            FromX = x0, FromY = y0, FromZ = z0, ToX = x1, ToY = y1, ToZ = z1, SectionWidth = 2 * Half, SectionHeight = 2 * Half,
        });
    }

    private static ImmutableArray<StationBox> Boxes(Cell cell) => [.. cell.Stations.InOrder().Select(e =>
    {
        var s = e.Value;
        var (low, high) = s.Kind switch
        {
            StationKind.Tray => (Vec3.Zero, new Vec3((s.Columns!.Value - 1) * s.ColumnPitch!.Value, (s.Rows!.Value - 1) * s.RowPitch!.Value, 0)),
            StationKind.Belt => (new Vec3(0, -s.Depth!.Value / 2, 0), new Vec3(s.Window!.Value, s.Depth!.Value / 2, 0)),
            _ => (new Vec3(-s.Width!.Value / 2, -s.Depth!.Value / 2, 0), new Vec3(s.Width!.Value / 2, s.Depth!.Value / 2, 0)),
        };
        return new StationBox(e.Key, new(Mat3.RotationZ(s.Yaw ?? 0), new(s.X!.Value, s.Y!.Value, s.Z!.Value)), low, high with { Z = s.Approach ?? 0 }, 0, 0, 0, []);
    })];
}
