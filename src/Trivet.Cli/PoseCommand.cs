using System.Collections.Immutable;
using System.CommandLine;
using System.Globalization;
using Trivet.Cells;
using Trivet.Files;
using Trivet.Findings;
using Trivet.Kinematics;
using Trivet.Numerics;
using Trivet.Views.Poses;
using Trivet.Views.Words;

namespace Trivet.Cli;

/// <summary><c>trivet pose</c>: positions to drive readings and back, row by row, so that another program can check every number.</summary>
internal static class PoseCommand
{
    public static Command Create()
    {
        var cell = Options.Cell();
        var cellId = Options.CellId();
        var points = new Option<string?>("--points")
        {
            Description = "Table with the columns x[mm],y[mm],z[mm]: places of the platform's reference point in the base frame. - is standard input.",
            HelpName = "FILE.csv",
        };
        var joints = new Option<string?>("--joints")
        {
            Description = "Table with a column for each chain's drive reading, such as q_a[mm],q_b[mm],q_c[mm]; degrees for cranks.",
            HelpName = "FILE.csv",
        };
        var at = new Option<string?>("--at")
        {
            Description = "One place in full, in place of a table: x, y and z of the platform's reference point in the base frame.",
            HelpName = "X,Y,Z",
        };
        var readings = new Option<string?>("--readings")
        {
            Description = "One set of drive readings in full, in the order of the chains: lengths, or angles for cranks; plain numbers with --as-shown.",
            HelpName = "A,B,C",
        };
        var shown = new Option<bool>("--as-shown")
        {
            Description = "Places and readings are as the controller shows them, by the cell's controller mapping.",
        };
        var outOption = Options.Out("Write the table to this file instead of standard output.");
        var command = new TaughtCommand(
            "pose",
            """
            Turn places into drive readings (--points), or drive readings into places (--joints). Or tell everything about one place
            (--at) or one set of readings (--readings), with every mode of assembly and which one is taken. Each row of a table also gets the condition
            number of ∂q/∂p, the largest swing of a ball joint, and the reserve: the smallest distance of a reading to an end of
            its travel, negative beyond it. What a rod does not reach stays empty. Ends with 1 when a row is not reached within travel.
            """,
            new Example("pose samples/jar-lids.json --points points.csv", "Drive readings for the places in a table; any unit of length may stand in its head."),
            new Example("pose samples/jar-lids.json --points points.csv --out readings.csv", "Into a file."),
            new Example("pose samples/jar-lids.json --joints readings.csv", "And back: a table that was written here can be read here."),
            new Example("pose samples/jar-lids.json --joints shown.csv --as-shown", "Readings typed off the controller: columns shown_a,shown_b,shown_c."),
            new Example("pose samples/jar-lids.json --at \"60 mm, 0 mm, -780 mm\"", "One place: readings, singularities, swing, every mode of assembly."),
            new Example("pose samples/jar-lids.json --readings \"120 mm, 130 mm, 140 mm\"", "One set of readings: both places the platform could stand at, and which one it does."))
        {
            cell, cellId, points, joints, at, readings, shown, outOption,
        };
        command.Validators.Add(result =>
        {
            if (new[] { points, joints, at, readings }.Count(o => result.GetValue(o) is not null) != 1)
                result.AddError("Give one of --points FILE.csv, --joints FILE.csv, --at X,Y,Z and --readings A,B,C.");
        });
        command.SetAction(async (parsed, stop) =>
        {
            var error = parsed.InvocationConfiguration.Error;
            if (await CellInput.ReadOneAsync(parsed, parsed.GetRequiredValue(cell), parsed.GetValue(cellId), stop) is not { } input) return ExitCode.Refused;
            if (Robot(input, error) is not { } robot) return ExitCode.Refused;
            var controller = ControllerReadings.Of(input.Cell.Controller, robot, new Reading());
            if ((parsed.GetValue(at) ?? parsed.GetValue(readings)) is not null)
            {
                var parts = new PoseParts(controller, Balls(input), Rods(input), Steps(input));
                var one = parsed.GetValue(at) is { } place ? At(robot, parts, place, parsed.GetValue(shown), error)
                    : OfReadings(robot, parts, parsed.GetValue(readings)!, parsed.GetValue(shown), error);
                if (one is not { } sheet) return ExitCode.Refused;
                int written = Options.Write(parsed, outOption, to => Write(sheet, to.Text));
                return written != ExitCode.AllHold ? written : sheet.Reached ? ExitCode.AllHold : ExitCode.NotAllHold;
            }

            var table = new PoseTable(robot, [.. Balls(input)], parsed.GetValue(shown) ? controller : null);

            bool forward = parsed.GetValue(joints) is not null;
            return TableFile.Run(
                parsed, outOption, parsed.GetValue(joints) ?? parsed.GetValue(points)!,
                (text, file, output, error, done, progress, stop) => table.Run(text, file, forward, output, error, done, progress, stop), stop);
        });
        return command;
    }

    private static PoseSheet? At(DeltaRobot robot, PoseParts parts, string text, bool shown, TextWriter error)
    {
        if (Three(text, "--at", 3, Dimension.Length, "three lengths, like \"60 mm, 0 mm, -780 mm\"", error) is not { } typed) return null;
        return PoseSheet.At(robot, parts, shown ? parts.Controller.Place(typed) : typed);
    }

    private static PoseSheet? OfReadings(DeltaRobot robot, PoseParts parts, string text, bool shown, TextWriter error)
    {
        var axes = parts.Controller.Axes;
        var (dimension, unit) = shown ? (Dimension.One, "") : robot.Family == RobotFamily.RailDelta ? (Dimension.Length, " mm") : (Dimension.Angle, " deg");
        string like = string.Join(", ", robot.ChainIds.Select((_, i) => string.Create(CultureInfo.InvariantCulture, $"{10 * (i + 1)}{unit}")));
        string kind = $"a reading of each chain ({string.Join(", ", robot.ChainIds)}), like \"{like}\"";
        if (Three(text, "--readings", axes.Length, dimension, kind, error) is not { } typed) return null;
        return PoseSheet.Reading(robot, parts, !shown ? typed : new(axes[0].Reading(typed.X), axes[1].Reading(typed.Y), axes.Length == 3 ? axes[2].Reading(typed.Z) : 0));
    }

    /// <summary>Quantities with commas between; null, and told, where one can not be read. A decimal comma can not stand here.</summary>
    private static Vec3? Three(string text, string option, int count, Dimension dimension, string kind, TextWriter error)
    {
        var read = text.Split(',', StringSplitOptions.TrimEntries).Select(p => Quantity.Parse(p, dimension)).ToArray();
        if (read.Length != count)
        {
            error.WriteLine($"trivet: {option} takes {kind}.");
            return null;
        }

        foreach (var one in read)
        {
            if (one.Ok) continue;
            error.WriteLine($"trivet: {option}: {one.Problem}; {one.Remedy}");
            return null;
        }

        return new(read[0].Value, read[1].Value, count == 3 ? read[2].Value : 0);
    }

    private static void Write(PoseSheet sheet, TextWriter to)
    {
        int wide = sheet.Rows.Max(r => r.What.Length);
        foreach (var row in sheet.Rows) to.WriteLine($"{row.What.PadRight(wide)}  {row.Shown}");
        to.WriteLine();
        to.WriteLine("Modes of assembly");
        foreach (var mode in sheet.Modes)
        {
            to.WriteLine($"{(mode.Chosen ? "●" : "○")} {mode.Stands}");
            to.WriteLine($"    {mode.Why}");
        }
    }

    private static DeltaRobot? Robot(CellInput input, TextWriter error)
    {
        var reading = new Reading();
        var read = RobotInputs.Geometry(input.Cell.Robot, reading);
        if (read.Robot is { } robot) return robot;
        foreach (string pointer in reading.MissingFields) error.WriteLine($"{input.Name}: {pointer}: Not stated, and a pose needs it.");
        foreach (var problem in read.Problems) error.WriteLine($"{input.Name}: {problem.Pointer}: {Sentences.Of(problem.Reason, input.Cell)}");
        return null;
    }

    /// <summary>The rods where the description states their thickness and spacing; else nothing is said of their distance.</summary>
    private static ImmutableArray<RodPair> Rods(CellInput input)
    {
        var reading = new Reading();
        var rods = RobotInputs.Rods(input.Cell.Robot, reading);
        return reading.Complete ? rods : [];
    }

    /// <summary>The ball joints where the description states them; the swing is left empty otherwise.</summary>
    private static ImmutableArray<BallJoint> Balls(CellInput input)
    {
        var reading = new Reading();
        var balls = RobotInputs.Joints(input.Cell.Robot, reading);
        return reading.Complete ? [.. balls] : [];
    }

    /// <summary>The drive steps where the description states them.</summary>
    private static ImmutableArray<double> Steps(CellInput input)
    {
        var reading = new Reading();
        var steps = RobotInputs.DriveSteps(input.Cell.Robot, reading);
        return reading.Complete ? [.. steps] : [];
    }
}
