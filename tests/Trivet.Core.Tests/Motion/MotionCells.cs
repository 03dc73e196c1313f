using Trivet.Cells;
using Trivet.Findings;
using Trivet.Motion;
using Trivet.Testing;

namespace Trivet.Core.Tests.Motion;

/// <summary>The small cells of reach with what motion needs: masses, motors, limits, settings and cycles. All invented.</summary>
internal static class MotionCells
{
    /// <summary>From the moving belt to the tray, and from the tray to the nest.</summary>
    public static Cell Rail { get; } = Moving(ReachCells.Rail) with
    {
        Stations = ReachCells.Rail.Stations.SetItem("belt", ReachCells.Rail.Stations["belt"] with { Speed = 0.1 }),
        Motion = Plan(("belt-to-tray", "belt", "tray"), ("tray-to-nest", "tray", "nest")),
    };

    /// <summary>Between two nests in the plane of a two-chain robot.</summary>
    public static Cell Planar { get; } = Moving(ReachCells.Planar) with
    {
        Stations = Keyed.Empty<Station>()
            .Add("left", new() { Kind = StationKind.Nest, X = -0.1, Y = 0, Z = 0.86, Width = 0.02, Depth = 0, Approach = 0.05 })
            .Add("right", new() { Kind = StationKind.Nest, X = 0.1, Y = 0, Z = 0.86, Width = 0.02, Depth = 0, Approach = 0.05 }),
        Motion = Plan(("across", "left", "right")),
    };

    /// <summary>Between two ends of a crank delta's nest.</summary>
    public static Cell Crank { get; } = Moving(ReachCells.Crank) with
    {
        Stations = Keyed.Empty<Station>()
            .Add("left", new() { Kind = StationKind.Nest, X = -0.1, Y = 0, Z = 0.80, Width = 0.02, Depth = 0.02, Approach = 0.06, RotaryFrom = 0, RotaryTo = 0 })
            .Add("right", new() { Kind = StationKind.Nest, X = 0.1, Y = 0.03, Z = 0.81, Width = 0.02, Depth = 0.02, Approach = 0.06, RotaryFrom = 1, RotaryTo = 1 }),
        Motion = Plan(("across", "left", "right")),
    };

    public static CycleInput Input(Cell cell, string cycle)
    {
        var reading = new Reading();
        var outcome = CycleInput.Read(cell, cycle, reading);
        return outcome.Input ?? throw new InvalidOperationException(
            $"Missing: {string.Join(", ", reading.MissingFields)}. Wrong: {string.Join(", ", outcome.Contradictions)}. {outcome.NotJudged}");
    }

    public static Cell With(this Cell cell, Func<MotionSettings, MotionSettings> settings) =>
        cell with { Motion = cell.Motion with { Settings = settings(cell.Motion.Settings) } };

    public static Cell WithCycle(this Cell cell, string id, Func<Cycle, Cycle> change) =>
        cell with { Motion = cell.Motion with { Cycles = cell.Motion.Cycles.SetItem(id, change(cell.Motion.Cycles[id])) } };

    private static MotionPlan Plan(params ReadOnlySpan<(string Id, string Pick, string Place)> cycles)
    {
        var all = Keyed.Empty<Cycle>();
        foreach (var (id, pick, place) in cycles)
        {
            all = all.Add(id, new()
            {
                Order = all.Count + 1, Part = "part", Pick = pick, PickAt = PlaceWithin.Middle, Place = place, PlaceAt = PlaceWithin.Middle,
                PickDwell = 0.08, PlaceDwell = 0.05, Settle = 0.02,
            });
        }
        return new()
        {
            Settings = new()
            {
                Profile = ProfileKind.SevenPhase, Along = ProfileAlong.Path, PathSpeed = 0.6, PathAcceleration = 6, PathJerk = 150, Blend = 0.03, Comfort = 0.1,
            },
            Cycles = all,
        };
    }

    private static Cell Moving(Cell cell)
    {
        bool turns = cell.Robot.Family == RobotFamily.CrankDelta;
        return cell with
        {
            Brief = new()
            {
                MeanRate = 0.4, PeakRate = 0.5,
                Parts = Keyed.Empty<Part>().Add("part", new() { Mass = 0.02, Size = new() { Width = 0.04, Depth = 0.03, Height = 0.01 } }),
            },
            Robot = cell.Robot with
            {
                PlatformMass = 0.3,
                Common = cell.Robot.Common with
                {
                    CarriageMass = turns ? null : 0.8,
                    ArmMass = turns ? 1.5 : null,
                    ArmCentre = turns ? 0.05 : null,
                    ArmInertia = turns ? 0.05 : null,
                    RodMass = 0.05,
                    ViscousFriction = turns ? 0.05 : 4,
                    CoulombFriction = turns ? 0.5 : 5,
                    RodForceLimit = 300,
                },
                Rotary = cell.Robot.Rotary with { Inertia = 5e-5, Friction = 0.01 },
            },
            Tool = cell.Tool with { Parts = Keyed.Empty<ToolPart>().Add("cup", new() { Mass = 0.2, Height = 0.1 }) },
            Drives = new()
            {
                LargestSpeed = turns ? 8 : 2, LargestAcceleration = turns ? 120 : 40, LargestJerk = turns ? 12_000 : 4000,
                Motors = Keyed.Empty<Motor>().Add("motor", new()
                {
                    Kind = MotorKind.Servo, CurveVoltage = 48, RotorInertia = 3e-5,
                    Curve = Keyed.Empty<TorquePoint>().Add("a", new() { Speed = 0, Torque = 2 }).Add("b", new() { Speed = 300, Torque = 1.5 }).Add("c", new() { Speed = 450, Torque = 0.3 }),
                }),
                Common = new()
                {
                    Motor = "motor", Transmission = turns ? TransmissionKind.Gear : TransmissionKind.Belt, Ratio = turns ? 20 : 1, PulleyRadius = turns ? null : 0.01,
                    Efficiency = 0.95,
                },
                Axes = cell.Robot.Rotary.Fitted == true
                    ? Keyed.Empty<AxisDrive>().Add("rotary", new() { Motor = "motor", Transmission = TransmissionKind.Gear, LargestSpeed = 50, LargestAcceleration = 2000, LargestJerk = 2e5 })
                    : Keyed.Empty<AxisDrive>(),
                Supply = new() { Voltage = 48 },
            },
        };
    }
}
