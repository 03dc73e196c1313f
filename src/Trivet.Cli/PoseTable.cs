using System.Collections.Immutable;
using Trivet.Cells;
using Trivet.Files;
using Trivet.Kinematics;
using Trivet.Numerics;

namespace Trivet.Cli;

/// <summary>
/// Computes a table of poses row by row, in memory that does not grow with it. What it writes it also reads, so that a table can be
/// sent there and back; columns that are computed are passed over.
/// </summary>
/// <param name="balls">In the order of the chains; empty where they are not stated.</param>
/// <param name="controller">Given when places and readings stand in the table as the controller shows them.</param>
internal sealed class PoseTable(DeltaRobot robot, BallJoint[] balls, ControllerReadings? controller)
{
    private static readonly ImmutableArray<CsvColumn> Place =
        [new("x", Dimension.Length, Unit: "mm"), new("y", Dimension.Length, Unit: "mm"), new("z", Dimension.Length, Unit: "mm")];

    private readonly ImmutableArray<CsvColumn> _readings = [.. robot.ChainIds.Select(id =>
        controller is null ? Drive(robot, $"q_{id}") : new CsvColumn($"shown_{id}", Dimension.One))];

    /// <summary>Condition number of ∂q/∂p; largest swing of a ball joint; smallest distance of a reading to an end of its travel,
    /// negative beyond it, empty where a rod does not reach.</summary>
    private readonly ImmutableArray<CsvColumn> _judged = [new("condition", Dimension.One), new("swing", Dimension.Angle, Unit: "deg"), Drive(robot, "reserve")];

    /// <summary>Exit code: 0 when every row is reached within travel, 1 when one is not, 2 when the table was refused.</summary>
    /// <param name="forward">True: from drive readings to places.</param>
    /// <param name="done">Fraction of the table read so far.</param>
    public int Run(
        TextReader text, string file, bool forward, TextWriter output, TextWriter error, Func<double> done, IProgress<double> progress, CancellationToken stop)
    {
        ImmutableArray<CsvColumn> given = forward ? _readings : Place, computed = [.. forward ? Place : _readings, .. _judged];
        var reader = new CsvReader(text, file, [.. given, .. computed.Select(c => c with { Answer = true })]);
        if (Refused(reader, error)) return ExitCode.Refused;
        var writer = new CsvWriter(output, [.. Place, .. _readings, .. _judged]);
        double[] read = new double[given.Length + computed.Length], row = new double[read.Length];
        bool allReached = true;
        for (int i = 0; reader.Next(read); i++)
        {
            if (i % 4096 == 0)
            {
                stop.ThrowIfCancellationRequested();
                progress.Report(done());
            }

            var v = Typed(new(read[0], read[1], given.Length == 3 ? read[2] : 0), forward);
            var pose = forward ? Forward(v) : PoseResult.At(robot, v);
            allReached &= pose.Reached && robot.WithinTravel(pose.Q);
            Fill(row, pose);
            writer.Row(row);
        }

        if (Refused(reader, error, "the rows named were passed over")) return ExitCode.Refused;
        return allReached ? ExitCode.AllHold : ExitCode.NotAllHold;
    }

    private static CsvColumn Drive(DeltaRobot robot, string name) => robot.Family == RobotFamily.RailDelta
        ? new(name, Dimension.Length, Unit: "mm")
        : new(name, Dimension.Angle, Unit: "deg");

    /// <summary>A place or a set of readings as it stands in the table, in Trivet's own numbers.</summary>
    private Vec3 Typed(Vec3 v, bool forward)
    {
        if (controller is null) return v;
        if (!forward) return controller.Place(v);
        var axes = controller.Axes;
        return new(axes[0].Reading(v.X), axes[1].Reading(v.Y), axes.Length == 3 ? axes[2].Reading(v.Z) : 0);
    }

    private PoseResult Forward(Vec3 q)
    {
        var closed = ForwardPose.Of(robot, q);
        return closed.Closure == Closure.Closes ? PoseResult.At(robot, closed.Working, q) : PoseResult.At(robot, Vec3.NaN, q);
    }

    private void Fill(double[] row, in PoseResult pose)
    {
        var place = controller?.Shown(pose.P) ?? pose.P;
        for (int i = 0; i < 3; i++) row[i] = place[i];
        for (int i = 0; i < _readings.Length; i++) row[3 + i] = controller?.Axes[i].Shown(pose.Q[i]) ?? pose.Q[i];
        row[^3] = pose.Condition;
        row[^2] = balls.Length == 0 ? double.NaN : 0;
        for (int i = 0; i < balls.Length; i++) row[^2] = Math.Max(row[^2], Swing.Of(robot.Chains[i], balls[i], pose.P, pose.Q[i]));
        row[^1] = double.PositiveInfinity;
        for (int i = 0; i < _readings.Length; i++)
            row[^1] = Math.Min(row[^1], Math.Min(pose.Q[i] - robot.Chains[i].TravelFrom, robot.Chains[i].TravelTo - pose.Q[i]));
    }

    private static bool Refused(CsvReader reader, TextWriter error, string consequence = "the table was not used")
    {
        if (reader.Errors.IsEmpty) return false;
        Refusals.Write(reader.Errors, error, consequence);
        return true;
    }
}
