using System.CommandLine;
using System.Text;
using Trivet.Findings;
using Trivet.Kinematics;

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
        var outOption = Options.Out("Write the table to this file instead of standard output.");
        var command = new TaughtCommand(
            "pose",
            """
            Turn places into drive readings (--points), or drive readings into places (--joints). Each row also gets the condition
            number of ∂q/∂p, the largest swing of a ball joint, and the reserve: the smallest distance of a reading to an end of
            its travel, negative beyond it. What a rod does not reach stays empty. Ends with 1 when a row is not reached within travel.
            """,
            new Example("pose samples/jar-lids.json --points points.csv", "Drive readings for the places in a table; any unit of length may stand in its head."),
            new Example("pose samples/jar-lids.json --points points.csv --out readings.csv", "Into a file."),
            new Example("pose samples/jar-lids.json --joints readings.csv", "And back: a table that was written here can be read here."))
        {
            cell, cellId, points, joints, outOption,
        };
        command.Validators.Add(result =>
        {
            if (result.GetValue(points) is null == (result.GetValue(joints) is null))
                result.AddError("Give either --points FILE.csv or --joints FILE.csv.");
        });
        command.SetAction(async (parsed, stop) =>
        {
            var error = parsed.InvocationConfiguration.Error;
            if (await CellInput.ReadOneAsync(parsed, parsed.GetRequiredValue(cell), parsed.GetValue(cellId), stop) is not { } input) return ExitCode.Refused;
            if (Robot(input, error) is not { } robot) return ExitCode.Refused;
            var table = new PoseTable(robot, Balls(input));

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

    private static DeltaRobot? Robot(CellInput input, TextWriter error)
    {
        var reading = new Reading();
        var read = RobotInputs.Geometry(input.Cell.Robot, reading);
        if (read.Robot is { } robot) return robot;
        foreach (string pointer in reading.MissingFields) error.WriteLine($"{input.Name}: {pointer}: Not stated, and a pose needs it.");
        foreach (var problem in read.Problems) error.WriteLine($"{input.Name}: {problem.Pointer}: {problem.Words}");
        return null;
    }

    /// <summary>The ball joints where the description states them; the swing is left empty otherwise.</summary>
    private static BallJoint[] Balls(CellInput input)
    {
        var reading = new Reading();
        var balls = RobotInputs.Joints(input.Cell.Robot, reading);
        return reading.Complete ? [.. balls] : [];
    }
}
