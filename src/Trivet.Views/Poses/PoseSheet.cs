using System.Collections.Immutable;
using Trivet.Cells;
using Trivet.Kinematics;
using Trivet.Numerics;
using Trivet.Views.Words;

namespace Trivet.Views.Poses;

/// <summary>One line about a pose.</summary>
public sealed record PoseRow(string What, string Shown);

/// <summary>One way to assemble the robot at the place, or with the readings, asked for.</summary>
/// <param name="Stands">What each chain does with its reading, or where the platform stands and what each chain then does.</param>
public sealed record ModeRow(bool Chosen, string Stands, string Why);

/// <summary>What a pose sheet says beside the geometry.</summary>
/// <param name="Balls">In the order of the chains; empty where not stated.</param>
/// <param name="Rods">In the order of the chains; empty where not stated.</param>
/// <param name="Steps">Drive steps in the order of the chains; empty where not stated.</param>
public sealed record PoseParts(ControllerReadings Controller, ImmutableArray<BallJoint> Balls, ImmutableArray<RodPair> Rods, ImmutableArray<double> Steps);

/// <summary>Everything about one pose in finished texts: what the working mode gives, and every other mode with why it is not taken.</summary>
/// <param name="Reached">The working mode closes, with every reading within its travel.</param>
public sealed record PoseSheet(bool Reached, ImmutableArray<PoseRow> Rows, ImmutableArray<ModeRow> Modes)
{
    /// <summary>From a place: what the drives read there, in all combinations of the chains' two solutions.</summary>
    public static PoseSheet At(DeltaRobot robot, PoseParts parts, Vec3 p)
    {
        var pose = PoseResult.At(robot, p);
        bool inPlane = robot.InPlane(p);
        string notReached = inPlane ? Texts.RodDoesNotReach : Texts.OffPlane;
        return new(pose.Reached && robot.WithinTravel(pose.Q), RowsOf(robot, parts, pose, notReached), [.. AssemblyModes.Inverse(robot, p).Select(m => new ModeRow(
            m.Chosen, string.Join(", ", Each(robot, i => $"{Words(m.Chains[i])} {Drive(robot, m.Q[i])}")), inPlane ? Why(m) : Texts.WhyOffPlane))]);
    }

    /// <summary>From drive readings: where the platform stands, in both ways to assemble the robot with them.</summary>
    public static PoseSheet Reading(DeltaRobot robot, PoseParts parts, Vec3 q)
    {
        var modes = AssemblyModes.Forward(robot, q);
        // What is told in full is the platform below; above, it would hang from rods that were never turned through.
        var pose = PoseResult.At(robot, modes[0].P, q);
        string notReached = ForwardPose.Of(robot, q).Closure switch
        {
            Closure.InLine => Texts.NotDetermined,
            _ => Texts.RodsDoNotMeet,
        };
        bool within = robot.WithinTravel(q);
        return new(modes[0].Chosen && within, RowsOf(robot, parts, pose, notReached), [.. modes.Select(m => new ModeRow(
            m.Chosen,
            Stands(m),
            Why(m, within)))]);
    }

    private static PoseWords Texts => Locale.English.Language.Pose;

    private static string Stands(ForwardMode m)
    {
        string platform = m.Platform == PlatformMode.Below ? Texts.PlatformBelow : Texts.PlatformAbove;
        return m.P.IsFinite ? Locale.Fill(Texts.PlatformStands, ("platform", platform), ("place", Place(m.P)), ("chains", string.Join(", ", m.Chains.Select(Words)))) : platform;
    }

    private static ImmutableArray<PoseRow> RowsOf(DeltaRobot robot, PoseParts parts, in PoseResult at, string notReached)
    {
        var pose = at;
        var controller = parts.Controller;
        var rows = ImmutableArray.CreateBuilder<PoseRow>();
        rows.Add(new(Texts.Place, Place(pose.P)));
        rows.Add(new(Texts.AsShown, Place(controller.Shown(pose.P))));
        for (int i = 0; i < robot.Chains.Length; i++)
        {
            string own = Drive(robot, pose.Q[i]), shown = double.IsFinite(pose.Q[i]) ? Numbers.Plain(controller.Axes[i].Shown(pose.Q[i]), 3) : "–";
            rows.Add(new(Chain(robot, i), Locale.Fill(Texts.ReadingShown, ("own", own), ("shown", shown), ("axis", controller.Axes[i].Name))));
        }

        bool reached = pose.Reached && pose.P.IsFinite;
        rows.Add(new(Texts.WithinTravel, !reached ? notReached : robot.WithinTravel(pose.Q) ? Texts.Yes : Texts.BeyondStop));
        if (reached)
        {
            rows.Add(new(Texts.Condition, Numbers.Plain(pose.Condition, 3)));
            rows.Add(new(Texts.Serial, string.Join(", ", Each(robot, i => Numbers.Plain(pose.Serial[i], 3)))));
            rows.Add(new(Texts.Parallel, Numbers.Plain(pose.Parallel, 3)));
            for (int i = 0; i < parts.Balls.Length; i++)
                rows.Add(new(Locale.Fill(Texts.SwingOf, ("chain", Chain(robot, i))), Numbers.Quantity(Swing.Of(robot.Chains[i], parts.Balls[i], pose.P, pose.Q[i]), "rad")));
            if (parts.Rods.Length > 0) rows.Add(new(Texts.BetweenRods, Numbers.Quantity(Clearances.RodToRod(robot, parts.Rods, pose), "m")));
            if (parts.Steps.Length > 0) rows.Add(new(Texts.PerStep, Numbers.Quantity(pose.StepMovement(parts.Steps.AsSpan()), "m")));
        }

        return rows.ToImmutable();
    }

    private static IEnumerable<string> Each(DeltaRobot robot, Func<int, string> text) => Enumerable.Range(0, robot.Chains.Length).Select(text);

    private static string Place(Vec3 p) => !p.IsFinite ? "–" :
        Locale.Fill(Texts.Coordinates, ("x", Numbers.Quantity(p.X, "m")), ("y", Numbers.Quantity(p.Y, "m")), ("z", Numbers.Quantity(p.Z, "m")));

    private static string Chain(DeltaRobot robot, int i) => Locale.Fill(Locale.English.Language.ChainCase, ("case", robot.ChainIds[i]));

    private static string Drive(DeltaRobot robot, double q) =>
        double.IsFinite(q) ? Numbers.Quantity(q, robot.Family == RobotFamily.RailDelta ? "m" : "rad") : "–";

    private static string Words(ChainMode mode) => Texts.ChainModes[(int)mode];

    private static string Why(InverseMode mode) => mode.Reason switch
    {
        ModeReason.Working when mode.WithinTravel => Texts.Chosen,
        ModeReason.Working => Texts.ChosenBeyond,
        ModeReason.DoesNotClose => Texts.WhyNoReach,
        _ => Texts.WhySerial,
    };

    private static string Why(ForwardMode mode, bool within) => mode.Reason switch
    {
        ModeReason.Working when within => Texts.ChosenHanging,
        ModeReason.Working => Texts.ChosenBeyond,
        ModeReason.DoesNotClose => Texts.WhyNotMeeting,
        ModeReason.PastParallelSingularity => Texts.WhyParallel,
        _ => Texts.WhySerial,
    };
}
