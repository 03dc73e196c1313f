using System.Collections.Immutable;
using Trivet.Cells;
using Trivet.Findings;
using Trivet.Kinematics;
using Trivet.Numerics;
using Trivet.Reach;

namespace Trivet.Protecting;

/// <summary>
/// A convex body that holds everything the robot can move to, wherever its drives stand (the maximum space of ISO 8373), by its support function: how far
/// it reaches in a direction. It bounds, it does not only sample: p = C(q) − B + rod for each chain, the rod of its length L and, as long as the robot stays
/// assembled the way it works, on the side of C′(q) (rod·C′ ≥ 0). The farthest of that along u, over all q, holds for each chain, and the smallest of the
/// chains' for the platform. Added are platform, tool with any turn, and the largest part; carriages and elbows reach by
/// their joints and half the pair of rods. Bodies of carriages, motors and hoses are not described and not in it.
/// </summary>
public sealed record MaximumSpace
{
    /// <summary>Readings tried over a crank's travel; what may lie between two of them is added.</summary>
    private const int Readings = 400;

    private readonly DeltaRobot _robot;
    private readonly Pose _x_CB;
    private readonly Vec3 _alongAxis_C;
    private readonly double _axisFrom, _axisTo, _platformRadius, _toolRadius, _partRadius, _partHeight, _tcpAside, _tcpZ;
    private readonly ImmutableArray<double> _beside;

    private MaximumSpace(Cell cell, DeltaRobot robot, Reading reading)
    {
        _robot = robot;
        _x_CB = PlacingInputs.Mount(cell.Mount, reading);
        _alongAxis_C = PlacingInputs.LinearDirection(cell.Robot.LinearAxis, reading);
        if (_alongAxis_C != Vec3.Zero)
        {
            _axisFrom = reading.Need(cell.Robot.LinearAxis.TravelFrom, "/robot/linearAxis/travelFrom");
            _axisTo = reading.Need(cell.Robot.LinearAxis.TravelTo, "/robot/linearAxis/travelTo");
        }
        var tcp = PlacingInputs.Tcp(cell.Tool, reading);
        (_tcpAside, _tcpZ) = (new Vec3(tcp.X, tcp.Y, 0).Norm, tcp.Z);
        _platformRadius = reading.Need(cell.Robot.Dexterity.PlatformRadius, "/robot/dexterity/platformRadius");
        _toolRadius = reading.Need(cell.Tool.Radius, "/tool/radius");
        reading.Used("/brief/parts", string.Join('\n', cell.Brief.Parts.Keys));
        foreach (var (id, part) in cell.Brief.Parts)
        {
            string at = $"/brief/parts/{id}/size";
            double width = reading.Or(part.Size.Width, at + "/width", 0), depth = reading.Or(part.Size.Depth, at + "/depth", 0);
            _partRadius = Math.Max(_partRadius, Math.Sqrt(width * width + depth * depth) / 2);
            _partHeight = Math.Max(_partHeight, reading.Or(part.Size.Height, at + "/height", 0));
        }
        _beside = [.. RobotInputs.Chains(cell.Robot, reading).Select(c => c.Fields.Or("rodSpacing", d => d.RodSpacing, 0) / 2 + c.Fields.Or("rodDiameter", d => d.RodDiameter, 0) / 2)];
    }

    /// <summary>Null while something is missing, which the reading lists, or the robot can not be as stated.</summary>
    public static MaximumSpace? Of(Cell cell, Reading reading)
    {
        if (RobotInputs.Geometry(cell.Robot, reading).Robot is not { } robot) return null;
        var space = new MaximumSpace(cell, robot, reading);
        return reading.Complete ? space : null;
    }

    /// <summary>Largest u·x over all points x that anything moving gets to, cell frame, metres.</summary>
    /// <param name="u_C">Unit direction, cell frame.</param>
    public double Support(Vec3 u_C)
    {
        var u = _x_CB.R.Transpose() * u_C;
        // Two chains stay in their plane: only what u says in it counts.
        var v = _robot.Planar ? new Vec3(u.X, 0, u.Z) : u;
        double level = Math.Sqrt(u.X * u.X + u.Y * u.Y), platform = double.PositiveInfinity, joints = double.NegativeInfinity;
        for (int i = 0; i < _robot.Chains.Length; i++)
        {
            var chain = _robot.Chains[i];
            double joint = Joint(chain, v);
            platform = Math.Min(platform, WithRod(chain, v, joint) - v.Dot(chain.B));
            joints = Math.Max(joints, joint + _beside[i]);
        }

        double tool = _tcpAside * level + _tcpZ * u.Z;
        double carried = Math.Max(_platformRadius, Math.Max(tool + _toolRadius, tool + _partRadius * level + Math.Max(0, -u.Z) * _partHeight));
        double along = u_C.Dot(_alongAxis_C);
        return Math.Max(platform + carried, joints) + u_C.Dot(_x_CB.P) + Math.Max(along * _axisFrom, along * _axisTo);
    }

    /// <summary>Lowest and highest place, metres above the floor.</summary>
    public (double Low, double High) Heights => (-Support(-Vec3.UnitZ), Support(Vec3.UnitZ));

    /// <summary>Distance of a straight upright guard, metres, never more than the true one: across the guard, on the side that gives more. Negative where the
    /// space may reach through.</summary>
    public double DistanceTo(Vec3 from_C, Vec3 to_C)
    {
        var along = (to_C - from_C).Unit();
        var across = new Vec3(-along.Y, along.X, 0);
        return Math.Max(across.Dot(from_C) - Support(across), -across.Dot(from_C) - Support(-across));
    }

    /// <summary>Largest u·(C(q) + rod) over the travel of a chain and all rods on the working side of C′(q).</summary>
    private static double WithRod(in Chain chain, Vec3 u, double joint)
    {
        if (chain.Family == RobotFamily.RailDelta) return joint + chain.Rod * Reach(u, chain.E);
        // In q it changes no faster than the arm's and the rod's length: |d(u·C)/dq| ≤ arm, and that of the rod's share ≤ L.
        double most = double.NegativeInfinity, step = (chain.TravelTo - chain.TravelFrom) / Readings;
        for (int i = 0; i <= Readings; i++)
        {
            double q = chain.TravelFrom + i * step;
            most = Math.Max(most, u.Dot(chain.Joint(q)) + chain.Rod * Reach(u, chain.JointRate(q).Unit()));
        }
        return most + (chain.Arm + chain.Rod) * step / 2;
    }

    /// <summary>Largest u·r of unit vectors r on the side of the unit vector e; |u| is at most 1.</summary>
    private static double Reach(Vec3 u, Vec3 e)
    {
        double along = u.Dot(e);
        return along >= 0 ? u.Norm : (u - along * e).Norm;
    }

    /// <summary>Largest u·C(q) over the travel of a chain.</summary>
    private static double Joint(in Chain chain, Vec3 u)
    {
        double most = Math.Max(u.Dot(chain.Joint(chain.TravelFrom)), u.Dot(chain.Joint(chain.TravelTo)));
        if (chain.Family == RobotFamily.RailDelta) return most;
        // Within the travel the arm may point straight along u.
        double best = Math.Atan2(u.Dot(chain.F), u.Dot(chain.E)) - chain.HomeOffset;
        double turned = best + Math.Tau * Math.Ceiling((chain.TravelFrom - best) / Math.Tau);
        return turned <= chain.TravelTo ? Math.Max(most, u.Dot(chain.Joint(turned))) : most;
    }
}
