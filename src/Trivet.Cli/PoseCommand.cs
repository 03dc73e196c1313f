using System.Collections.Immutable;
using System.CommandLine;
using System.Text;
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
        var shown = new Option<bool>("--as-shown")
        {
            Description = "Places and readings are as the controller shows them, by the cell's controller mapping.",
        };
        var outOption = Options.Out("Write the table to this file instead of standard output.");
        var command = new TaughtCommand(
            "pose",
            """
            Turn places into drive readings (--points), or drive readings into places (--joints), or tell everything about one place
            (--at), with every mode of assembly and which one is taken. Each row of a table also gets the condition
            number of ∂q/∂p, the largest swing of a ball joint, and the reserve: the smallest distance of a reading to an end of
            its travel, negative beyond it. What a rod does not reach stays empty. Ends with 1 when a row is not reached within travel.
            """,
            new Example("pose samples/jar-lids.json --points points.csv", "Drive readings for the places in a table; any unit of length may stand in its head."),
            new Example("pose samples/jar-lids.json --points points.csv --out readings.csv", "Into a file."),
            new Example("pose samples/jar-lids.json --joints readings.csv", "And back: a table that was written here can be read here."),
            new Example("pose samples/jar-lids.json --joints shown.csv --as-shown", "Readings typed off the controller: columns shown_a,shown_b,shown_c."),
            new Example("pose samples/jar-lids.json --at \"60 mm, 0 mm, -780 mm\"", "One place: readings, singularities, swing, every mode of assembly."))
        {
            cell, cellId, points, joints, at, shown, outOption,
        };
        command.Validators.Add(result =>
        {
            if (new[] { points, joints, at }.Count(o => result.GetValue(o) is not null) != 1)
                result.AddError("Give one of --points FILE.csv, --joints FILE.csv and --at X,Y,Z.");
        });
        command.SetAction(async (parsed, stop) =>
        {
            var error = parsed.InvocationConfiguration.Error;
            if (await CellInput.ReadOneAsync(parsed, parsed.GetRequiredValue(cell), parsed.GetValue(cellId), stop) is not { } input) return ExitCode.Refused;
            if (Robot(input, error) is not { } robot) return ExitCode.Refused;
            var controller = ControllerReadings.Of(input.Cell.Controller, robot, new Reading());
            if (parsed.GetValue(at) is { } place) return At(parsed, outOption, input, robot, controller, place, parsed.GetValue(shown));
            var table = new PoseTable(robot, Balls(input), parsed.GetValue(shown) ? controller : null);

            bool forward = parsed.GetValue(joints) is not null;
            string file = parsed.GetValue(joints) ?? parsed.GetValue(points)!;
            try
            {
                using var text = file == "-" ? Console.In : new StreamReader(file, Encoding.UTF8, true, 1 << 16);
                var bytes = (text as StreamReader)?.BaseStream;
                Func<double> done = () => bytes is { CanSeek: true, Length: > 0 } ? (double)bytes.Position / bytes.Length : 0;
                var end = ExitCode.AllHold;
                using var progress = ProgressLine.For(parsed, "Computing");
                int written = Options.Write(parsed, outOption, to => end = table.Run(text, file, forward, to.Text, error, done, progress, stop));
                return written != ExitCode.AllHold ? written : end;
            }
            catch (Exception e) when (e is IOException or UnauthorizedAccessException)
            {
                error.WriteLine($"trivet: {file} cannot be read: {e.Message}");
                return ExitCode.Refused;
            }
        });
        return command;
    }

    private static int At(
        ParseResult parsed, Option<string?> outOption, CellInput input, DeltaRobot robot, ControllerReadings controller, string text, bool shown)
    {
        var error = parsed.InvocationConfiguration.Error;
        // A decimal comma can not stand here: the commas part the numbers.
        var parts = text.Split(',', StringSplitOptions.TrimEntries);
        var read = parts.Select(p => Quantity.Parse(p, Dimension.Length)).ToArray();
        if (read.Length != 3)
        {
            error.WriteLine("trivet: --at takes three lengths, like \"60 mm, 0 mm, -780 mm\".");
            return ExitCode.Refused;
        }

        foreach (var length in read)
        {
            if (length.Ok) continue;
            error.WriteLine($"trivet: --at: {length.Problem}; {length.Remedy}");
            return ExitCode.Refused;
        }

        var typed = new Vec3(read[0].Value, read[1].Value, read[2].Value);
        var p = shown ? controller.Place(typed) : typed;
        var steps = new Reading();
        double[] drive = [.. RobotInputs.DriveSteps(input.Cell.Robot, steps)];
        var sheet = PoseSheet.Of(robot, controller, Balls(input), Rods(input), steps.Complete ? drive : [], p);
        int written = Options.Write(parsed, outOption, to => Write(sheet, to.Text));
        bool reached = robot.WithinTravel(robot.Inverse(p));
        return written != ExitCode.AllHold ? written : reached ? ExitCode.AllHold : ExitCode.NotAllHold;
    }

    private static void Write(PoseSheet sheet, TextWriter to)
    {
        int wide = sheet.Rows.Max(r => r.What.Length);
        foreach (var row in sheet.Rows) to.WriteLine($"{row.What.PadRight(wide)}  {row.Shown}");
        to.WriteLine();
        to.WriteLine("Modes of assembly");
        foreach (var mode in sheet.Modes)
        {
            var chains = mode.Chains.Zip(mode.Readings, (c, q) => $"{c} {q}");
            to.WriteLine($"{(mode.Chosen ? "●" : "○")} {string.Join(", ", chains)}");
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
    private static BallJoint[] Balls(CellInput input)
    {
        var reading = new Reading();
        var balls = RobotInputs.Joints(input.Cell.Robot, reading);
        return reading.Complete ? [.. balls] : [];
    }
}
