using System.Collections.Immutable;
using Trivet.Cells;
using Trivet.Findings;
using Trivet.Kinematics;
using Trivet.Numerics;

namespace Trivet.Reach;

/// <summary>Limits beyond closure, mode and travel that a place must keep to count as reached.</summary>
/// <param name="Joints">Ball joints in the order of the chains, each with its largest swing; empty where swing does not count.</param>
/// <param name="LargestCondition">Largest condition number of ∂q/∂p; infinite where it does not count.</param>
public sealed record ReachLimits(ImmutableArray<BallJoint> Joints, double LargestCondition)
{
    public static ReachLimits None { get; } = new([], double.PositiveInfinity);

    public bool Swing => !Joints.IsEmpty;
    public bool Condition => double.IsFinite(LargestCondition);
    public bool Any => Swing || Condition;

    /// <summary>The limits of a cell that are asked for; what is not stated is missing in the reading, and then does not count.</summary>
    public static ReachLimits Read(Cell cell, bool swing, bool condition, Reading reading)
    {
        var joints = new Reading();
        var balls = swing ? RobotInputs.Joints(cell.Robot, joints) : [];
        reading.Used(joints);
        foreach (string missing in joints.MissingFields) reading.Missing(missing);
        double most = condition ? reading.Need(cell.Robot.Dexterity.LargestCondition, "/robot/dexterity/largestCondition") : double.PositiveInfinity;
        return new(joints.Complete ? balls : [], double.IsNaN(most) ? double.PositiveInfinity : most);
    }

    /// <summary>Whether a place that closes within travel keeps them. What is not a number keeps none.</summary>
    internal bool Hold(DeltaRobot robot, Vec3 p)
    {
        if (!Any) return true;
        var q = robot.Inverse(p);
        for (int i = 0; i < Joints.Length; i++)
            if (!(Kinematics.Swing.Of(robot.Chains[i], Joints[i], p, q[i]) <= Joints[i].Limit)) return false;
        return !Condition || PoseResult.At(robot, p, q).Condition <= LargestCondition;
    }
}
