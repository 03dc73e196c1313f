using System.Collections.Immutable;
using Trivet.Cells;
using Trivet.Kinematics;
using Trivet.Numerics;

namespace Trivet.Reach;

/// <summary>
/// The box of tool-centre-point positions that a station asks for, in its own frame S (x along rows or belt, z up), metres,
/// together with the rotary angles taken there. The box reaches from the working height up to the approach height.
/// </summary>
/// <param name="Id">Station id.</param>
/// <param name="X_CS">Station frame in the cell frame.</param>
/// <param name="Low">Smallest corner, frame S.</param>
/// <param name="High">Largest corner, frame S.</param>
/// <param name="RotaryFrom">Smallest rotary angle, radians; zero where there is no rotary axis.</param>
/// <param name="RotaryTo">Largest rotary angle, radians.</param>
/// <param name="LinearAxisAt">Position of the axis that carries the robot, metres.</param>
/// <param name="Inputs">The fields the box was read from.</param>
public sealed record StationBox(
    string Id, Pose X_CS, Vec3 Low, Vec3 High, double RotaryFrom, double RotaryTo, double LinearAxisAt, ImmutableArray<string> Inputs);

/// <summary>Something fixed in the cell frame, metres: all points within a radius of a line (a frame post) or of an upright plate (a belt
/// guide, a tray rim).</summary>
/// <param name="Owner">Pointer of the part it stands for.</param>
/// <param name="From_C">One end of the line, or of the plate's lower edge.</param>
/// <param name="To_C">The other end.</param>
/// <param name="Radius">Radius about it, not negative.</param>
public sealed record Obstacle(string Owner, Vec3 From_C, Vec3 To_C, double Radius)
{
    /// <summary>From the plate's lower to its upper edge; zero for a line.</summary>
    public Vec3 Rise_C { get; init; }
}

/// <summary>
/// Everything about a cell that reach needs, as numbers: robot, where its base stands, the tool, the station boxes, obstacles.
/// Views draw from it. Parts that could not be read are absent (null, left out, or not a number); the ledger says why.
/// </summary>
/// <param name="Robot">Null when the robot is incomplete.</param>
/// <param name="X_CB">Base frame in the cell frame at linear axis position zero.</param>
/// <param name="LinearDirection_C">Unit direction of the axis that carries the robot; zero where there is none.</param>
/// <param name="Tcp_P">Tool centre point from the platform reference point at rotary angle zero, in the platform's axes (parallel to the base frame).</param>
public sealed record CellGeometry(
    DeltaRobot? Robot, Pose X_CB, Vec3 LinearDirection_C, Vec3 Tcp_P, ImmutableArray<StationBox> Stations, ImmutableArray<Obstacle> Obstacles)
{
    /// <summary>Reads what the description holds so far. Why a part is absent, the findings say.</summary>
    public static CellGeometry Of(Cell cell)
    {
        var obstacles = ObstacleInputs.Frame(cell, new()).AddRange(ObstacleInputs.Walls(cell, new()));
        var stations = cell.Stations.InOrder().Select(s => StationInputs.Read(cell, s.Key, new()).Box).OfType<StationBox>();
        return new(
            RobotInputs.Geometry(cell.Robot, new()).Robot, PlacingInputs.Mount(cell.Mount, new()),
            PlacingInputs.LinearDirection(cell.Robot.LinearAxis, new()), PlacingInputs.Tcp(cell.Tool, new()), [.. stations], obstacles);
    }

    /// <summary>Platform reference point in the base frame that puts the tool centre point at p_C with the rotary axis at an angle.</summary>
    public Vec3 PlatformFor(Vec3 p_C, double rotary, double linearAxis) =>
        X_CB.R.Transpose() * (p_C - X_CB.P - linearAxis * LinearDirection_C) - Mat3.RotationZ(rotary) * Tcp_P;

    /// <summary>Tool centre point in the cell frame for a platform position in the base frame.</summary>
    public Vec3 TcpFor(Vec3 p_B, double rotary, double linearAxis) =>
        X_CB * (p_B + Mat3.RotationZ(rotary) * Tcp_P) + linearAxis * LinearDirection_C;
}
