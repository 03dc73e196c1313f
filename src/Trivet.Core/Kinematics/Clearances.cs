using System.Collections.Immutable;
using Trivet.Numerics;

namespace Trivet.Kinematics;

/// <summary>
/// Free distances at one pose, metres, base frame; negative where bodies overlap. A rod is a capsule along its centre line with its
/// diameter; what its joints stick out is not in it. Not a number where the pose is not reached.
/// </summary>
public static class Clearances
{
    /// <summary>One rod of a chain, from carriage joint or elbow to platform joint. <paramref name="side"/> +1 is the rod shifted
    /// towards <see cref="Chain.Side"/>, −1 the other.</summary>
    public static Capsule Rod(in Chain chain, in RodPair rods, int side, Vec3 p, double q)
    {
        var shift = side * rods.Spacing / 2 * chain.Side;
        return new(chain.Joint(q) + shift, p + chain.B + shift, rods.Diameter / 2);
    }

    /// <summary>Smallest distance between rods of different chains. The two rods of one chain are parallel and always their spacing apart.</summary>
    public static double RodToRod(DeltaRobot robot, ImmutableArray<RodPair> rods, in PoseResult pose)
    {
        double least = double.PositiveInfinity;
        for (int i = 1; i < robot.Chains.Length; i++)
            for (int j = 0; j < i; j++)
                for (int sides = 0; sides < 4; sides++)
                    least = Math.Min(least, Rod(robot.Chains[i], rods[i], (sides & 1) == 0 ? 1 : -1, pose.P, pose.Q[i])
                        .ClearanceTo(Rod(robot.Chains[j], rods[j], (sides & 2) == 0 ? 1 : -1, pose.P, pose.Q[j])));
        return least;
    }

    /// <summary>Smallest distance of any rod from a body that stands still.</summary>
    public static double RodsTo(DeltaRobot robot, ImmutableArray<RodPair> rods, in PoseResult pose, in Capsule body_B)
    {
        double least = double.PositiveInfinity;
        for (int i = 0; i < robot.Chains.Length; i++)
            for (int side = -1; side <= 1; side += 2)
                least = Math.Min(least, Rod(robot.Chains[i], rods[i], side, pose.P, pose.Q[i]).ClearanceTo(body_B));
        return least;
    }

    /// <summary>Distance of the tool, a capsule from the platform reference point to the tool centre point, from a body that stands still.</summary>
    /// <param name="tcp_P">Tool centre point from the platform reference point with the rotary axis where it is, axes of the base frame.</param>
    public static double ToolTo(Vec3 p, Vec3 tcp_P, double radius, in Capsule body_B) => new Capsule(p, p + tcp_P, radius).ClearanceTo(body_B);
}
