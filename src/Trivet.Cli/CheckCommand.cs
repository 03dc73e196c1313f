using System.CommandLine;
using Trivet.Assessment;

namespace Trivet.Cli;

/// <summary><c>trivet check</c>: the ledger of a cell, reach proved.</summary>
internal static class CheckCommand
{
    public static Command Create()
    {
        var file = Options.CellFile();
        var format = Options.Format();
        var command = new TaughtCommand(
            "check",
            "Judge a cell: every rule against every part it applies to, worst first.",
            new Example("check samples/jar-lids.json", "The ledger of the sample cell."),
            new Example("check my-cell.json --format json", "The same for a program; docs/output-json.md describes it."),
            new Example("check samples/broken.json", "A file with mistakes: each one with its place and what would be right."))
        {
            file, format,
        };
        command.SetAction((parsed, stop) => Task.FromResult(Run(parsed, parsed.GetRequiredValue(file), parsed.GetValue(format), stop)));
        return command;
    }

    private static int Run(ParseResult parsed, string path, OutputFormat format, CancellationToken stop)
    {
        if (CellInput.Read(parsed, path) is not { } input) return ExitCode.Refused;
        Assessed assessed;
        using (var progress = ProgressLine.For(parsed, "Checking")) assessed = Assess.Prove(input.Cell, progress, stop);
        stop.ThrowIfCancellationRequested();
        _ = format;
        return assessed.Ledger.AllHold ? ExitCode.AllHold : ExitCode.NotAllHold;
    }
}
