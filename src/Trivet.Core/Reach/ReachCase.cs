using System.Collections.Immutable;
using Trivet.Cells;
using Trivet.Findings;
using Trivet.Kinematics;
using Trivet.Numerics;

namespace Trivet.Reach;

/// <summary>Everything that the checks of a station's volume or of a path rest on, read and complete.</summary>
/// <param name="At">Pointer of the station or of the cycle.</param>
internal sealed record ReachCase(Cell Cell, CellGeometry Geometry, DeltaRobot Robot, IPlatformMotion Motion, string At)
{
    public ImmutableArray<BoundedChain> Chains { get; } = ImmutableArray.CreateRange(Robot.Chains, c => new BoundedChain(c));

    /// <summary>What the tool carries, in addition to itself; read where clearance asks for it.</summary>
    public Func<Reading, ImmutableArray<MovingBody>> Carried { get; init; } = _ => [];

    /// <summary>Put before the case of every subject: "loaded" or "empty" for a path; empty for a station.</summary>
    public string Way { get; init; } = "";

    public Subject SubjectOf(string @case) => new(At, Way.Length == 0 ? @case : @case.Length == 0 ? Way : $"{Way} {@case}");

    /// <summary>An obstacle of the cell frame, seen from the robot's base where it stands meanwhile.</summary>
    public FixedBody InBase(Obstacle o)
    {
        var r_BC = Geometry.X_CB.R.Transpose();
        var from = r_BC * (o.From_C - Geometry.X_CB.P - Motion.LinearAxisAt * Geometry.LinearDirection_C);
        return new(from, from + r_BC * (o.To_C - o.From_C), r_BC * o.Rise_C, o.Radius);
    }

    /// <summary>Robot, mount and tool, without stations and obstacles. What is missing the reading lists; the robot may also contradict itself: null.</summary>
    public static CellGeometry Shared(Cell cell, Reading reading) => new(
        RobotInputs.Geometry(cell.Robot, reading).Robot, PlacingInputs.Mount(cell.Mount, reading),
        PlacingInputs.LinearDirection(cell.Robot.LinearAxis, reading), PlacingInputs.Tcp(cell.Tool, reading), [], []);
}

/// <summary>A station as a case of its own.</summary>
internal sealed record StationCase(ReachCase Reach, StationMotion Motion)
{
    /// <summary>Reads robot, mount, tool and one station. Null while something is missing (see the reading) or contradicts itself.</summary>
    public static StationCase? Read(Cell cell, string id, Reading reading)
    {
        var geometry = ReachCase.Shared(cell, reading);
        var box = StationInputs.Read(cell, id, reading).Box;
        if (!reading.Complete || geometry.Robot is not { } robot || box is null) return null;
        var motion = new StationMotion(geometry, box, cell.Robot.Rotary.Fitted == true, robot.Planar);
        return new(new(cell, geometry, robot, motion, StationInputs.Pointer(id)), motion);
    }
}
