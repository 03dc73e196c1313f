using System.Collections.Immutable;
using Trivet.Cells;
using Trivet.Kinematics;
using Trivet.Numerics;
using Trivet.Views.Words;

namespace Trivet.Views.Poses;

/// <summary>One line about a pose.</summary>
public sealed record PoseRow(string What, string Shown);

/// <summary>One way to assemble the robot at the place asked for.</summary>
/// <param name="Chains">What each chain does, in the order of the chains.</param>
/// <param name="Readings">Drive readings with their unit; a dash where the rod does not reach.</param>
public sealed record ModeRow(bool Chosen, ImmutableArray<string> Chains, ImmutableArray<string> Readings, string Why);

/// <summary>Everything about one pose in finished texts: what the working mode gives, and every other mode with why it is not taken.</summary>
public sealed record PoseSheet(ImmutableArray<PoseRow> Rows, ImmutableArray<ModeRow> Modes)
{
    /// <param name="balls">In the order of the chains; empty where not stated.</param>
    /// <param name="rods">In the order of the chains; empty where not stated.</param>
    /// <param name="steps">Drive steps in the order of the chains; empty where not stated.</param>
    public static PoseSheet Of(DeltaRobot robot, ControllerReadings controller, ReadOnlySpan<BallJoint> balls, ImmutableArray<RodPair> rods, ReadOnlySpan<double> steps, Vec3 p)
    {
        var pose = PoseResult.At(robot, p);
        var rows = ImmutableArray.CreateBuilder<PoseRow>();
        rows.Add(new("platform reference point, base frame", Place(p)));
        rows.Add(new("as the controller shows it", Place(controller.Shown(p))));
        for (int i = 0; i < robot.Chains.Length; i++)
        {
            string own = Drive(robot, pose.Q[i]), shown = double.IsFinite(pose.Q[i]) ? Numbers.Plain(controller.Axes[i].Shown(pose.Q[i]), 3) : "–";
            rows.Add(new($"chain {robot.ChainIds[i]}", $"{own}; the controller shows {shown} at \"{controller.Axes[i].Name}\""));
        }

        rows.Add(new("within travel", !pose.Reached ? "no, a rod does not reach" : robot.WithinTravel(pose.Q) ? "yes" : "no, beyond an end stop"));
        if (pose.Reached)
        {
            rows.Add(new("condition number of ∂q/∂p", Numbers.Plain(pose.Condition, 3)));
            rows.Add(new("rod against the path of its joint (0: serial singularity)", string.Join(", ", Each(robot, i => Numbers.Plain(pose.Serial[i], 3)))));
            rows.Add(new("space the rods span (0: parallel singularity)", Numbers.Plain(pose.Parallel, 3)));
            for (int i = 0; i < balls.Length; i++)
                rows.Add(new($"swing of the ball joints, chain {robot.ChainIds[i]}", Numbers.Quantity(Swing.Of(robot.Chains[i], balls[i], p, pose.Q[i]), "rad")));
            if (rods.Length > 0) rows.Add(new("free distance between rods of different chains", Numbers.Quantity(Clearances.RodToRod(robot, rods, pose), "m")));
            if (steps.Length > 0) rows.Add(new("platform per drive step, at most", Numbers.Quantity(pose.StepMovement(steps), "m")));
        }

        return new(rows.ToImmutable(), [.. AssemblyModes.Inverse(robot, p).Select(m => new ModeRow(
            m.Chosen, [.. m.Chains.Select(Words)], [.. Each(robot, i => Drive(robot, m.Q[i]))], Why(m)))]);
    }

    private static IEnumerable<string> Each(DeltaRobot robot, Func<int, string> text) => Enumerable.Range(0, robot.Chains.Length).Select(text);

    private static string Place(Vec3 p) =>
        $"x {Numbers.Quantity(p.X, "m")}, y {Numbers.Quantity(p.Y, "m")}, z {Numbers.Quantity(p.Z, "m")}";

    private static string Drive(DeltaRobot robot, double q) =>
        double.IsFinite(q) ? Numbers.Quantity(q, robot.Family == RobotFamily.RailDelta ? "m" : "rad") : "–";

    private static string Words(ChainMode mode) => mode switch
    {
        ChainMode.CarriageAbove => "carriage above",
        ChainMode.CarriageBelow => "carriage below",
        ChainMode.ElbowOut => "elbow out",
        _ => "elbow in",
    };

    private static string Why(InverseMode mode) => mode.Reason switch
    {
        ModeReason.Working when mode.WithinTravel => "chosen: every chain in its working mode",
        ModeReason.Working => "chosen, but a reading lies beyond its travel",
        ModeReason.DoesNotClose => "a rod does not reach",
        _ => "not taken: a rod would have to pass at right angles to the path of its joint",
    };
}
