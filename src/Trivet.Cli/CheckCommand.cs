using System.Collections.Immutable;
using System.CommandLine;
using Trivet.Assessment;
using Trivet.Files;
using Trivet.Views.Ledgers;

namespace Trivet.Cli;

/// <summary><c>trivet check</c>: the ledger of a cell, reach proved.</summary>
internal static class CheckCommand
{
    public static Command Create()
    {
        var input = Options.Cell();
        var cellId = Options.CellId();
        var format = Options.Format();
        var outOption = Options.Out("Write the ledger to this file instead of standard output.");
        var command = new TaughtCommand(
            "check",
            "Judge a cell: every rule against every part it applies to, worst first.",
            new Example("check samples/jar-lids.json", "The ledger of the sample cell."),
            new Example("check samples/broken.json", "A file with mistakes: each with its place, and what would be right."),
            new Example("check my-cell.json --format json", "For a program; docs/output-json.md describes the form."),
            new Example("check my-cell.json --format markdown --out ledger.md", "For a report."),
            new Example("check demo-job", "Every cell of a job folder."))
        {
            input, cellId, format, outOption,
        };
        command.SetAction(async (parsed, stop) =>
        {
            var cells = await CellInput.ReadAsync(parsed, parsed.GetRequiredValue(input), parsed.GetValue(cellId), stop);
            if (cells.IsEmpty) return ExitCode.Refused;
            var form = parsed.GetValue(format);
            if (cells.Length > 1 && form == OutputFormat.Csv)
            {
                parsed.InvocationConfiguration.Error.WriteLine(
                    $"trivet: CSV is the table of one cell and this job has {cells.Length}. Name one with --cell {cells[0].Name}.");
                return ExitCode.Refused;
            }

            ImmutableArray<(CellInput Input, Assessed Result)> assessed;
            using (var progress = ProgressLine.For(parsed, "Checking"))
                assessed = [.. cells.Select((c, i) => (c, Assess.Prove(c.Cell, new Share(progress, i, cells.Length), stop)))];
            stop.ThrowIfCancellationRequested();

            int written = Options.Write(parsed, outOption, destination => Write(destination, assessed, form));
            if (written != ExitCode.AllHold) return written;
            return assessed.All(a => a.Result.Ledger.AllHold) ? ExitCode.AllHold : ExitCode.NotAllHold;
        });
        return command;
    }

    /// <summary>One cell is one document. Several cells are texts below each other, or one JSON array.</summary>
    private static void Write(Destination to, ImmutableArray<(CellInput Input, Assessed Result)> cells, OutputFormat format)
    {
        if (format == OutputFormat.Json && cells.Length > 1)
        {
            to.Text.WriteLine($"[\n{string.Join(",\n", cells.Select(c => Form(c.Input, c.Result, format, to.Width).TrimEnd()))}\n]");
            return;
        }

        for (int i = 0; i < cells.Length; i++)
        {
            if (i > 0) to.Text.WriteLine();
            to.Text.Write(Form(cells[i].Input, cells[i].Result, format, to.Width));
        }
    }

    private static string Form(CellInput input, Assessed result, OutputFormat format, int width) => format switch
    {
        OutputFormat.Json => AssessmentJson.Write(result, CellFile.Hash(input.Cell)),
        OutputFormat.Csv => LedgerCsv.Render(result),
        OutputFormat.Markdown => LedgerMarkdown.Render(LedgerTable.Of(result)),
        _ => LedgerText.Render(LedgerTable.Of(result), width),
    };

    /// <summary>The progress of one cell among several.</summary>
    private sealed class Share(IProgress<double> whole, int index, int count) : IProgress<double>
    {
        public void Report(double value) => whole.Report((index + value) / count);
    }
}
