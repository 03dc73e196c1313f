using System.Collections.Immutable;
using Trivet.Cells;

namespace Trivet.Testing;

/// <summary>Small invented cells, complete as far as reach needs them.</summary>
public static class ReachCells
{
    /// <summary>
    /// A rail delta with upright rails at radius 350 mm, rods of 500 mm, hung 1.6 m above the floor, over a belt, a tray and a nest.
    /// The nominal geometry is the one of published example K18 (tests/reference).
    /// </summary>
    public static Cell Rail { get; } = new()
    {
        Name = "invented: rail delta over belt, tray and nest",
        Depth = Depth.Build,
        Robot = new()
        {
            Family = RobotFamily.RailDelta,
            Common = new()
            {
                BaseRadius = 0.350, BaseHeight = 0, Rod = 0.500, PlatformRadius = 0.050, TravelFrom = 0, TravelTo = 0.600,
                RodSpacing = 0.060, RodDiameter = 0.010, Joint = JointKind.CrossBar, SwingLimit = Degrees(40), DriveStep = 1e-5,
            },
            Chains = Chains(("a", 0), ("b", 120), ("c", 240)),
            Dexterity = Limits,
            Rotary = new() { Fitted = true, TravelFrom = Degrees(-180), TravelTo = Degrees(180), DriveStep = Degrees(0.01) },
        },
        Mount = new() { X = 0, Y = 0, Z = 1.6 },
        Tool = new() { TcpX = 0.020, TcpY = 0, TcpZ = -0.150, Radius = 0.015 },
        Frame = new() { Members = Posts(0.55) },
        Stations = Keyed.Empty<Station>()
            .Add("belt", new() { Order = 1, Kind = StationKind.Belt, X = -0.12, Y = -0.10, Z = 0.86, Window = 0.20, Depth = 0.06, Approach = 0.05, RotaryFrom = 0, RotaryTo = Degrees(90), WallHeight = 0.02, WallGap = 0.05 })
            .Add("tray", new() { Order = 2, Kind = StationKind.Tray, X = -0.06, Y = 0.04, Z = 0.86, Yaw = Degrees(10), Columns = 4, Rows = 3, ColumnPitch = 0.04, RowPitch = 0.04, Approach = 0.05, RotaryFrom = Degrees(-45), RotaryTo = Degrees(45), WallHeight = 0.01, WallGap = 0.04 })
            .Add("nest", new() { Order = 3, Kind = StationKind.Nest, X = 0.10, Y = 0, Z = 0.88, Width = 0.01, Depth = 0.01, Approach = 0.03, RotaryFrom = 0, RotaryTo = 0 }),
    };

    /// <summary>A crank delta (shoulder radius 200 mm, arms 300 mm, rods 700 mm: geometry Q of the published examples) over one nest.</summary>
    public static Cell Crank { get; } = Rail with
    {
        Name = "invented: crank delta over a nest",
        Robot = Rail.Robot with
        {
            Family = RobotFamily.CrankDelta,
            Common = new()
            {
                BaseRadius = 0.200, BaseHeight = 0, UpperArm = 0.300, Rod = 0.700, PlatformRadius = 0.050, TravelFrom = Degrees(-40), TravelTo = Degrees(90),
                RodSpacing = 0.060, RodDiameter = 0.010, Joint = JointKind.Seat, SeatAngle = Degrees(60), SwingLimit = Degrees(45), DriveStep = Degrees(0.01),
            },
            Dexterity = Limits with { TravelReserve = Degrees(3) },
        },
        Frame = new() { Members = Posts(0.70) },
        Stations = Keyed.Empty<Station>()
            .Add("nest", new() { Kind = StationKind.Nest, X = 0.02, Y = -0.03, Z = 0.80, Yaw = Degrees(20), Width = 0.30, Depth = 0.20, Approach = 0.06, RotaryFrom = Degrees(-30), RotaryTo = Degrees(30) }),
    };

    /// <summary>A two-chain rail delta in the plane y = 0 over a nest without depth.</summary>
    public static Cell Planar { get; } = Rail with
    {
        Name = "invented: two chains over a nest",
        Robot = Rail.Robot with { Chains = Chains(("a", 0), ("b", 180)), Rotary = new() },
        Tool = Rail.Tool with { TcpX = 0 },
        Stations = Keyed.Empty<Station>()
            .Add("nest", new() { Kind = StationKind.Nest, X = 0, Y = 0, Z = 0.86, Width = 0.20, Depth = 0, Approach = 0.05 }),
    };

    public static double Degrees(double angle) => angle * Math.PI / 180;

    private static Dexterity Limits => new()
    {
        LargestCondition = 5, RodClearance = 0.005, ToolClearance = 0.005, TravelReserve = 0.010, LargestStep = 5e-5, PlatformRadius = 0.080,
    };

    private static ImmutableSortedDictionary<string, ChainDescription> Chains(params ReadOnlySpan<(string Id, double Azimuth)> chains)
    {
        var all = Keyed.Empty<ChainDescription>();
        foreach (var (id, azimuth) in chains) all = all.Add(id, new() { Order = all.Count + 1, Azimuth = Degrees(azimuth) });
        return all;
    }

    private static ImmutableSortedDictionary<string, FrameMember> Posts(double reach)
    {
        var members = Keyed.Empty<FrameMember>();
        foreach (var (id, x, y) in new[] { ("p1", -reach, -reach), ("p2", reach, -reach), ("p3", reach, reach), ("p4", -reach, reach) })
            members = members.Add(id, new() { FromX = x, FromY = y, FromZ = 0, ToX = x, ToY = y, ToZ = 1.6, SectionWidth = 0.040, SectionHeight = 0.040 });
        return members;
    }
}
