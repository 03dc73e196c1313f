using System.Collections.Immutable;
using Trivet.Findings;
using Trivet.Kinematics;
using Trivet.Numerics;
using Trivet.Reach;

namespace Trivet.Motion;

/// <summary>The platform somewhere along a path, base frame, and the rotary axis, with derivatives by s.</summary>
public readonly record struct PlatformPoint(PathPoint Platform, double Angle, double Angle1, double Angle2, double Angle3);

/// <summary>Reading of one axis, metres or radians, with its derivatives by what the path is given in: s, or time.</summary>
public readonly record struct AxisPoint(double Q, double D1, double D2, double D3);

/// <summary>
/// What the platform's reference point does while the tool centre point follows its path and the rotary axis turns: the path seen from
/// the base, less the tool turned by the rotary angle, <c>p(s) = R_BC·(p_C(s) − p_CB − a·d_C) − Rz(φ(s))·t</c>. A planar robot's platform is taken to
/// its plane.
/// </summary>
public sealed class PlatformPath : IPlatformMotion
{
    /// <summary>Rounding of the placing matrices, metres: added to every platform position that a bound starts from.</summary>
    private const double PlacingError = 1e-12;

    private readonly double[] _low = [0], _high;
    private readonly Mat3 _r_BC;
    private readonly Vec3 _origin_C;
    private readonly bool _planar, _rotaryFitted;

    public PlatformPath(CellGeometry geometry, DeltaRobot robot, ToolPath path, TurnLaw turn, bool rotaryFitted, double linearAxisAt)
    {
        (Path, Turn, Robot, Tcp, LinearAxisAt) = (path, turn, robot, geometry.Tcp_P, linearAxisAt);
        (_planar, _rotaryFitted, _high) = (robot.Planar, rotaryFitted, [path.Length]);
        _r_BC = geometry.X_CB.R.Transpose();
        _origin_C = geometry.X_CB.P + linearAxisAt * geometry.LinearDirection_C;
    }

    public ToolPath Path { get; }
    public TurnLaw Turn { get; }
    public DeltaRobot Robot { get; }
    public Vec3 Tcp { get; }
    public double LinearAxisAt { get; }
    public double Length => Path.Length;

    int IPlatformMotion.Variables => 1;
    ReadOnlySpan<double> IPlatformMotion.Low => _low;
    ReadOnlySpan<double> IPlatformMotion.High => _high;

    public PlatformPoint At(double s)
    {
        var tool = Path.At(s);
        var (angle, a1, a2, a3) = Turn.At(s);
        // Rz(φ)·t and its derivatives; across is k × t, inward its derivative by φ.
        var offset = Mat3.RotationZ(angle) * Tcp;
        Vec3 across = new(-offset.Y, offset.X, 0), inward = new(-offset.X, -offset.Y, 0);
        var point = new PathPoint(
            _r_BC * (tool.P - _origin_C) - offset,
            _r_BC * tool.D1 - a1 * across,
            _r_BC * tool.D2 - a2 * across - a1 * a1 * inward,
            _r_BC * tool.D3 - (a3 - a1 * a1 * a1) * across - 3 * a1 * a2 * inward);
        return new(_planar ? Flat(point) : point, angle, a1, a2, a3);
    }

    /// <summary>Readings of the chains along the path; not numbers where a rod does not reach.</summary>
    public AxisPoint Axis(int chain, in PathPoint p) => ChainAlong.Of(Robot.Chains[chain], p);

    /// <summary>Platform reference point, base frame, that puts the tool centre point at a place of the cell frame.</summary>
    public Vec3 PlatformFor(Vec3 tool_C, double angle)
    {
        var p = _r_BC * (tool_C - _origin_C) - Mat3.RotationZ(angle) * Tcp;
        return _planar ? p with { Y = 0 } : p;
    }

    /// <summary>Tool centre point, cell frame, of a state of the robot.</summary>
    public Vec3 ToolOf(Vec3 platform, double angle) => _r_BC.Transpose() * (platform + Mat3.RotationZ(angle) * Tcp) + _origin_C;

    public Vec3 PlatformAt(ReadOnlySpan<double> x) => At(x[0]).Platform.P;

    public Vec3 ToolAt(ReadOnlySpan<double> x) => Mat3.RotationZ(Turn.At(x[0]).Angle) * Tcp;

    Place IPlatformMotion.PlaceAt(ReadOnlySpan<double> x) => PlaceAt(x[0]);

    public Place PlaceAt(double s)
    {
        var at = At(s);
        return new(Path.At(s).P, _rotaryFitted ? at.Angle : double.NaN, at.Platform.P, LinearAxisAt);
    }

    MotionBox IPlatformMotion.Over(ReadOnlySpan<double> low, ReadOnlySpan<double> high)
    {
        double middle = low[0] + 0.5 * (high[0] - low[0]);
        var (p, d1) = Path.Over(low[0], high[0]);
        var (pMiddle, _) = Path.Over(middle, middle);
        var (angle, a1) = Turn.Over(low[0], high[0]);
        var box = new MotionBox { Variables = 1, Tool = Turned(angle), ToolMid = Turned(Turn.Over(middle, middle).Angle) };
        var error = IntervalVec3.Around(Vec3.Zero, PlacingError);
        box.Platform = _r_BC * (p - _origin_C) - box.Tool + error;
        box.PlatformMid = _r_BC * (pMiddle - _origin_C) - box.ToolMid + error;
        box.TcpRate[0] = _r_BC * d1;
        box.Rate[0] = box.TcpRate[0] - new IntervalVec3(-(a1 * box.Tool.Y), a1 * box.Tool.X, 0);
        box.Half[0] = Math.BitIncrement(Math.Max(high[0] - middle, middle - low[0]));
        if (low[0] == high[0]) box.Half[0] = 0;
        return _planar ? box.Flattened(a1) : box;
    }

    private static PathPoint Flat(in PathPoint p) => new(p.P with { Y = 0 }, p.D1 with { Y = 0 }, p.D2 with { Y = 0 }, p.D3 with { Y = 0 });

    private IntervalVec3 Turned(Interval angle)
    {
        if (Tcp.X == 0 && Tcp.Y == 0) return Tcp;
        Interval s = Interval.Sin(angle), c = Interval.Cos(angle);
        return new(Tcp.X * c - Tcp.Y * s, Tcp.X * s + Tcp.Y * c, Tcp.Z);
    }
}
