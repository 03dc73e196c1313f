using System.CommandLine;
using System.Text;

namespace Trivet.Cli;

/// <summary><c>trivet cycle</c>: how long motions take, row by row of a table, so that another program can check every number.</summary>
internal static class CycleCommand
{
    public static Command Create()
    {
        var moves = new Option<string?>("--moves")
        {
            Description = "Table of moves of any number of axes together, a move in each row: p01,p02,… where they start, p11,… where they end, v01,… and v11,… how "
                + "fast they are there (at rest without them), vmax1,…, amax1,… and jmax1,… limits (no limit of jerk without it). SI, no units in the head. - is standard input.",
            HelpName = "FILE.csv",
        };
        var path = new Option<string?>("--path")
        {
            Description = "Table of points along one path: s, q1,q2,… the axes there, vmax1,… and amax1,… limits; optional dq1,… and ddq1,… derivatives by s, and "
                + "m1,c1,g1,fmax1,… for a force m·s̈ + c·ṡ² + g of at most fmax, with fall1,… for what fmax loses with speed. SI, no units in the head.",
            HelpName = "FILE.csv",
        };
        var outOption = Options.Out("Write the table to this file instead of standard output.");
        var command = new TaughtCommand(
            "cycle",
            """
            How long motions take. --moves: the shortest time in which all axes of a row can begin and end together, limits of velocity,
            acceleration and jerk kept; the rows come back with a column duration, empty where there is none. --path: the shortest time
            along a path from rest to rest; the table comes back with the time t and the speed sdot at each point and what holds it back
            from there on. Ends with 1 when a row has no move or the path can not be run through; standard error says why.
            """,
            new Example("cycle --moves moves.csv", "A duration for each row."),
            new Example("cycle --moves moves.csv --out durations.csv", "Into a file."),
            new Example("cycle --path gate.csv", "The fastest run along the points of a path."))
        {
            moves, path, outOption,
        };
        command.Validators.Add(result =>
        {
            if (new[] { moves, path }.Count(o => result.GetValue(o) is not null) != 1) result.AddError("Give one of --moves FILE.csv and --path FILE.csv.");
        });
        command.SetAction((parsed, stop) => Task.FromResult(
            parsed.GetValue(moves) is { } file ? Table(parsed, outOption, file, MoveTable.Run, stop) : Table(parsed, outOption, parsed.GetValue(path)!, PathTable.Run, stop)));
        return command;
    }

    /// <summary>What turns one table into another: exit code 0, 1 where a row has no answer, 2 where the table was refused.</summary>
    /// <param name="done">Fraction of the table read so far.</param>
    private delegate int Turns(TextReader text, string file, TextWriter output, TextWriter error, Func<double> done, IProgress<double> progress, CancellationToken stop);

    private static int Table(ParseResult parsed, Option<string?> outOption, string file, Turns turns, CancellationToken stop)
    {
        var error = parsed.InvocationConfiguration.Error;
        try
        {
            using var text = file == "-" ? Console.In : new StreamReader(file, Encoding.UTF8, true, 1 << 16);
            var bytes = (text as StreamReader)?.BaseStream;
            Func<double> done = () => bytes is { CanSeek: true, Length: > 0 } ? (double)bytes.Position / bytes.Length : 0;
            int end = ExitCode.AllHold;
            using var progress = ProgressLine.For(parsed, "Computing");
            int written = Options.Write(parsed, outOption, to => end = turns(text, file, to.Text, error, done, progress, stop));
            return written != ExitCode.AllHold ? written : end;
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            error.WriteLine($"trivet: {file} cannot be read: {e.Message}");
            return ExitCode.Refused;
        }
    }
}
