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
    private static Capsule Rod(in Chain chain, in RodPair rods, int side, Vec3 p, double q)
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
}
