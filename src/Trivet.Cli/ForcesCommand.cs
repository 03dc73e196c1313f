using System.CommandLine;
using Trivet.Assessment;
using Trivet.Cells;
using Trivet.Dynamics;
using Trivet.Files;
using Trivet.Findings;
using Trivet.Motion;
using Trivet.Views.Motion;
using Trivet.Views.Words;

namespace Trivet.Cli;

/// <summary><c>trivet forces</c>: what a motion asks of the drives, row by row, so that another program can check every number.</summary>
internal static class ForcesCommand
{
    public static Command Create()
    {
        var cell = Options.Cell();
        var cellId = Options.CellId();
        var format = Options.Format();
        var falls = new Option<bool>("--falls")
        {
            Description = "In place of a table: where each chain falls to at every station and cycle when its drive lets go, by what holds it and with nothing left of its drive.",
        };
        var states = new Option<string?>("--states")
        {
            Description = "Table with the columns x[m],y[m],z[m],vx[m/s],vy[m/s],vz[m/s],ax[m/s2],ay[m/s2],az[m/s2]: platform reference point in the base frame. - is standard input.",
            HelpName = "FILE.csv",
        };
        var part = new Option<string?>("--part") { Description = "Id of the part in the gripper; without this option the first one of the brief.", HelpName = "ID" };
        var empty = new Option<bool>("--without-part") { Description = "Nothing in the gripper." };
        var lumped = new Option<bool>("--lumped")
        {
            Description = "Also what the forces would be off by if two thirds of each rod's mass stood at carriage or elbow and one third at the platform.",
        };
        var outOption = Options.Out("Write the table to this file instead of standard output.");
        var command = new TaughtCommand(
            "forces",
            """
            Turn states of motion into forces of the drives (torques for cranks), positive where they push towards growing
            readings: down a rail, an arm downward. Masses, friction, rotors and the tilt of the mount are those of the cell. Each row also
            gets the largest tension and compression at the ends of any rod, and force and moment of the robot on its mount in the base
            frame, moments about its origin. Columns rotary[deg], rotary_speed and rotary_acceleration may say how the rotary axis
            moves; it is at rest otherwise. What can not be reached stays empty. Ends with 1 when a row is not reached within travel.
            --falls shows what comes down when drives let go; ends with 1 when something falls as held or can not be computed. An aid to the
            risk assessment, never a substitute for it.
            """,
            new Example("forces samples/jar-lids.json --states states.csv", "Forces with the first part of the brief in the gripper; any unit may stand in the head."),
            new Example("forces samples/jar-lids.json --states states.csv --without-part --out forces.csv", "Empty gripper, into a file."),
            new Example("forces samples/jar-lids.json --states states.csv --lumped", "With the error of the usual lumped rods beside the exact forces."),
            new Example("forces samples/jar-lids.json --falls", "What comes down when drives let go."))
        {
            cell, cellId, states, part, empty, lumped, falls, format, outOption,
        };
        command.Validators.Add(result =>
        {
            if (result.GetValue(part) is not null && result.GetValue(empty)) result.AddError("Give --part ID or --without-part, not both.");
            if (result.GetValue(states) is null != result.GetValue(falls)) result.AddError("Give --states FILE.csv or --falls.");
        });
        command.SetAction(async (parsed, stop) =>
        {
            var error = parsed.InvocationConfiguration.Error;
            if (await CellInput.ReadOneAsync(parsed, parsed.GetRequiredValue(cell), parsed.GetValue(cellId), stop) is not { } input) return ExitCode.Refused;
            if (parsed.GetValue(falls)) return OfFalls(parsed, input, parsed.GetValue(format), outOption, stop);
            if (parsed.GetValue(part) is { } named && !input.Cell.Brief.Parts.ContainsKey(named))
            {
                var parts = input.Cell.Brief.Parts.InOrder().Select(p => p.Key).ToArray();
                error.WriteLine(parts.Length == 0 ? $"trivet: {input.Name} describes no part: state one in /brief/parts, or give --without-part."
                    : $"trivet: {input.Name} has no part {named}. It has {string.Join(", ", parts)}.");
                return ExitCode.Refused;
            }

            string? carried = parsed.GetValue(empty) ? null : parsed.GetValue(part) ?? input.Cell.Brief.Parts.InOrder().Select(p => p.Key).FirstOrDefault();
            if (Dynamics(input, carried, error) is not { } dynamics) return ExitCode.Refused;
            var table = new ForcesTable(dynamics, input.Cell.Robot.Rotary.Fitted == true, parsed.GetValue(lumped));
            return TableFile.Run(parsed, outOption, parsed.GetValue(states)!, table.Run, stop);
        });
        return command;
    }

    private static int OfFalls(ParseResult parsed, CellInput input, OutputFormat format, Option<string?> outOption, CancellationToken stop)
    {
        Falls falls;
        using (ProgressLine.For(parsed, "Computing"))
        {
            falls = Falls.Of(input.Cell, stop);
        }

        stop.ThrowIfCancellationRequested();
        var sheet = FallSheet.Of(input.Cell, falls);
        // In text it stands below the table.
        if (format != OutputFormat.Text)
        {
            foreach (string why in sheet.Waits) parsed.InvocationConfiguration.Error.WriteLine($"{input.Name}: {why}");
        }

        int written = Options.Write(parsed, outOption, to => to.Text.Write(format switch
        {
            OutputFormat.Json => FallForms.Json(sheet, CellFile.Hash(input.Cell)),
            OutputFormat.Csv => FallForms.Csv(sheet, input.Cell.Robot.Family ?? RobotFamily.RailDelta),
            OutputFormat.Markdown => FallForms.Markdown(sheet),
            _ => FallForms.Text(sheet),
        }));
        if (written != ExitCode.AllHold) return written;
        bool stays = falls.Places.Length > 0 && sheet.Waits.IsEmpty && falls.Places.All(p => p.Cases.All(c => c.AsHeld.Fall.End == FallEnd.Stays));
        return stays ? ExitCode.AllHold : ExitCode.NotAllHold;
    }

    private static RobotDynamics? Dynamics(CellInput input, string? part, TextWriter error)
    {
        var reading = new Reading();
        var read = DynamicsInputs.Read(new Assessor().Complete(input.Cell, CancellationToken.None).Cell, part, reading);
        if (read.Dynamics is { } dynamics) return dynamics;
        foreach (string pointer in reading.MissingFields) error.WriteLine($"{input.Name}: {pointer}: Not stated, and forces need it.");
        foreach (var problem in read.Problems) error.WriteLine($"{input.Name}: {problem.Pointer}: {Sentences.Of(problem.Reason, input.Cell)}");
        return null;
    }
}
