using System.Collections.Immutable;
using Trivet.Cells;
using Trivet.Kinematics;
using Trivet.Numerics;

namespace Trivet.Reach;

/// <summary>An upright box, base frame, metres. Empty when a low corner is above its high one.</summary>
public readonly record struct Bounds(Vec3 Low, Vec3 High)
{
    public bool IsEmpty => !(Low.X <= High.X && Low.Y <= High.Y && Low.Z <= High.Z);
    public Vec3 Size => High - Low;
    public Vec3 Centre => 0.5 * (Low + High);

    public Bounds Intersect(Bounds other) => new(
        new(Math.Max(Low.X, other.Low.X), Math.Max(Low.Y, other.Low.Y), Math.Max(Low.Z, other.Low.Z)),
        new(Math.Min(High.X, other.High.X), Math.Min(High.Y, other.High.Y), Math.Min(High.Z, other.High.Z)));

    public Bounds With(Vec3 p) => new(
        new(Math.Min(Low.X, p.X), Math.Min(Low.Y, p.Y), Math.Min(Low.Z, p.Z)),
        new(Math.Max(High.X, p.X), Math.Max(High.Y, p.Y), Math.Max(High.Z, p.Z)));

    public Bounds Grown(double by) => new(Low - new Vec3(by, by, by), High + new Vec3(by, by, by));

    /// <summary>The box that holds nothing yet: growing it by <see cref="With"/> gives the box of the points.</summary>
    public static Bounds Nothing => new(
        new(double.PositiveInfinity, double.PositiveInfinity, double.PositiveInfinity),
        new(double.NegativeInfinity, double.NegativeInfinity, double.NegativeInfinity));
}

/// <summary>
/// The positions of the platform reference point that a robot can take, in the base frame: every chain closes in its working mode
/// with its reading within the travel, the platform is in the working assembly mode, and the limits that were given hold.
/// <para>
/// The working assembly mode is told by the sign of det[r₁ r₂ r₃], the rods' vectors: it changes only where the platform becomes
/// singular, so that a set of one sign never asks the robot to pass a singularity. The sign meant is that of a platform
/// hanging below the plane through its joints' sphere centres. Two chains: the same with the rods' cross product in the x–z plane.
/// </para>
/// Two-chain robots: positions with y ≠ 0 are outside.
/// </summary>
public sealed class ReachableSet
{
    private readonly ImmutableArray<Chain> _chains;

    /// <param name="limits">Further limits; none where not given.</param>
    public ReachableSet(DeltaRobot robot, ReachLimits? limits = null)
    {
        if (robot.Chains.Length is not (2 or 3))
            throw new ArgumentException($"A delta robot has two or three chains, not {robot.Chains.Length}.", nameof(robot));
        (Robot, Limits) = (robot, limits ?? ReachLimits.None);
        _chains = robot.Chains;
        WorkingSign = SignBelow(robot);
        Box = BoundsOf(robot);
    }

    public DeltaRobot Robot { get; }
    public ReachLimits Limits { get; }

    /// <summary>1 or −1: the sign of det[r₁ r₂ r₃], or of the y component of r₁ × r₂, in the working assembly mode.</summary>
    internal double WorkingSign { get; }

    /// <summary>A box that certainly holds the whole set; not the tightest one.</summary>
    public Bounds Box { get; }

    /// <summary>True when the platform reference point can be at p; false for a position that is not a number.</summary>
    public bool Contains(Vec3 p)
    {
        if (_chains.Length == 2) return ContainsPlanar(p);
        Vec3 r0, r1, r2;
        if (!Rod(0, p, out r0) || !Rod(1, p, out r1) || !Rod(2, p, out r2)) return false;
        return r0.Dot(r1.Cross(r2)) * WorkingSign > 0 && Limits.Hold(Robot, p);
    }

    private bool ContainsPlanar(Vec3 p) =>
        Robot.InPlane(p)
        && Rod(0, p with { Y = 0 }, out var r0) && Rod(1, p with { Y = 0 }, out var r1)
        && r0.Cross(r1).Y * WorkingSign > 0 && Limits.Hold(Robot, p with { Y = 0 });

    private bool Rod(int i, Vec3 p, out Vec3 rod)
    {
        var chain = _chains[i];
        double q = chain.Inverse(p);
        rod = chain.RodVector(p, q);
        return q >= chain.TravelFrom && q <= chain.TravelTo;
    }

    /// <summary>
    /// The sign of det[r₁ r₂ r₃] with the platform far below: the rods then point down and differ by the sphere centres, whose order
    /// seen from above decides.
    /// </summary>
    private static double SignBelow(DeltaRobot robot)
    {
        var c = robot.Chains;
        Vec3 far = new(0, 0, -1);
        if (robot.Planar) return Math.Sign((far - Centre(c[0])).Cross(far - Centre(c[1])).Y);
        return Math.Sign((far - Centre(c[0])).Dot((far - Centre(c[1])).Cross(far - Centre(c[2]))));

        // Level with each other, so that only their order seen from above counts; scaled down beside the depth of 1.
        static Vec3 Centre(Chain chain) => 1e-3 * ((chain.Foot - chain.B) with { Z = 0 });
    }

    /// <summary>p is within one rod of a sphere centre Joint(q) − B for every chain, so it lies in the box of those centres grown by L.</summary>
    private static Bounds BoundsOf(DeltaRobot robot)
    {
        Bounds? all = null;
        foreach (var chain in robot.Chains)
        {
            var box = Bounds.Nothing.With(chain.Joint(chain.TravelFrom) - chain.B).With(chain.Joint(chain.TravelTo) - chain.B);
            if (robot.Family == RobotFamily.CrankDelta)
            {
                // Along each coordinate the arm is farthest where its rate along it is zero: at atan2(F, E) and half a turn on.
                for (int axis = 0; axis < 3; axis++)
                {
                    double peak = Math.Atan2(chain.F[axis], chain.E[axis]) - chain.HomeOffset;
                    for (int half = -4; half <= 4; half++)
                    {
                        double q = peak + half * Math.PI;
                        if (q > chain.TravelFrom && q < chain.TravelTo) box = box.With(chain.Joint(q) - chain.B);
                    }
                }
            }

            box = box.Grown(chain.Rod);
            all = all is { } a ? a.Intersect(box) : box;
        }

        var found = all!.Value;
        return robot.Planar ? new(found.Low with { Y = 0 }, found.High with { Y = 0 }) : found;
    }
}
