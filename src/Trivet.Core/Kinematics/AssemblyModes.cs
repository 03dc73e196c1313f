using System.Collections.Immutable;
using Trivet.Cells;
using Trivet.Numerics;

namespace Trivet.Kinematics;

/// <summary>Which of its two solutions a chain takes, in the words of its family.</summary>
public enum ChainMode
{
    /// <summary>Rail: the carriage is on the upper side of its platform joint along the rail. The working mode.</summary>
    CarriageAbove,
    /// <summary>Rail: the carriage is further down its rail than the platform joint, the rod reaching back up.</summary>
    CarriageBelow,
    /// <summary>Crank: the elbow points outward. The working mode.</summary>
    ElbowOut,
    /// <summary>Crank: the arm is folded inward.</summary>
    ElbowIn,
}

/// <summary>On which side of the plane through the rods' upper centres the platform hangs.</summary>
public enum PlatformMode
{
    /// <summary>Below: the working mode.</summary>
    Below,
    /// <summary>Above: the platform turned through to the side of the mounting plane.</summary>
    Above,
}

/// <summary>Why a mode is, or is not, the one that Trivet computes with.</summary>
public enum ModeReason
{
    /// <summary>Chosen: every chain in its working mode. A robot is assembled so, and stays so as long as it passes no singularity.</summary>
    Working,
    /// <summary>Not chosen: some chain would have to have passed a serial singularity, where rod and path stand at right angles.</summary>
    PastSerialSingularity,
    /// <summary>Not chosen: the platform would have to have passed a parallel singularity, where the rods lie in one plane.</summary>
    PastParallelSingularity,
    /// <summary>Does not exist: a rod does not reach.</summary>
    DoesNotClose,
}

/// <summary>One way for the drives to stand at a given platform position.</summary>
/// <param name="Chains">The mode of each chain, in the order of the chains.</param>
/// <param name="Q">Drive readings, metres or radians; not a number for a chain that does not reach.</param>
/// <param name="WithinTravel">Every drive reading lies within its chain's travel.</param>
public sealed record InverseMode(ImmutableArray<ChainMode> Chains, Vec3 Q, bool WithinTravel, ModeReason Reason)
{
    public bool Chosen => Reason == ModeReason.Working;
}

/// <summary>One way for the platform to stand at given drive readings.</summary>
/// <param name="P">Platform reference point, base frame, metres; not a number where it does not close.</param>
/// <param name="Chains">The mode each chain is then in: it need not be the working one.</param>
public sealed record ForwardMode(PlatformMode Platform, Vec3 P, ImmutableArray<ChainMode> Chains, ModeReason Reason)
{
    public bool Chosen => Reason == ModeReason.Working;
}

/// <summary>Every assembly mode, with the one chosen and why.</summary>
public static class AssemblyModes
{
    /// <summary>All 2ⁿ combinations of the chains' solutions at platform position p, the working mode first.</summary>
    public static ImmutableArray<InverseMode> Inverse(DeltaRobot robot, Vec3 p)
    {
        int n = robot.Chains.Length;
        bool inPlane = robot.InPlane(p);
        var modes = ImmutableArray.CreateBuilder<InverseMode>(1 << n);
        for (int far = 0; far < 1 << n; far++)
        {
            Span<double> q = [0, 0, 0];
            for (int i = 0; i < n; i++) q[i] = inPlane ? robot.Chains[i].Inverse(p, FarSide(far, i)) : double.NaN;
            Vec3 all = new(q[0], q[1], q[2]);
            int which = far;
            modes.Add(new(
                [.. Enumerable.Range(0, n).Select(i => Mode(robot.Family, FarSide(which, i)))], all, robot.WithinTravel(all),
                !all.IsFinite ? ModeReason.DoesNotClose : far == 0 ? ModeReason.Working : ModeReason.PastSerialSingularity));
        }
        return modes.MoveToImmutable();

        static bool FarSide(int far, int chain) => (far >> chain & 1) != 0;
    }

    /// <summary>
    /// Both platform positions at drive readings q, the one below first. It is the working mode only if every chain is in its own
    /// working mode there too.
    /// </summary>
    public static ImmutableArray<ForwardMode> Forward(DeltaRobot robot, Vec3 q)
    {
        var pose = ForwardPose.Of(robot, q);
        return [Of(PlatformMode.Below, pose.Working), Of(PlatformMode.Above, pose.Mirror)];

        ForwardMode Of(PlatformMode platform, Vec3 p)
        {
            if (!p.IsFinite) return new(platform, p, [], ModeReason.DoesNotClose);
            ImmutableArray<ChainMode> chains =
                [.. robot.Chains.Select((c, i) => Mode(robot.Family, c.RodVector(p, q[i]).Dot(c.JointRate(q[i])) < 0))];
            return new(platform, p, chains, platform == PlatformMode.Above ? ModeReason.PastParallelSingularity
                : chains.Contains(Mode(robot.Family, true)) ? ModeReason.PastSerialSingularity
                : ModeReason.Working);
        }
    }

    private static ChainMode Mode(RobotFamily family, bool farSide) => family == RobotFamily.RailDelta
        ? farSide ? ChainMode.CarriageBelow : ChainMode.CarriageAbove
        : farSide ? ChainMode.ElbowIn : ChainMode.ElbowOut;
}
