using System.CommandLine;
using Trivet.Files;
using Trivet.Findings;
using Trivet.Listing;
using Trivet.Views.Listing;
using Trivet.Views.Words;

namespace Trivet.Cli;

/// <summary><c>trivet parts</c>: everything a cell consists of, with quantities, bought or made, and spares.</summary>
internal static class PartsCommand
{
    public static Command Create()
    {
        var cell = Options.Cell();
        var cellId = Options.CellId();
        var format = Options.Format();
        var outOption = Options.Out("Write the list to this file instead of standard output.");
        var command = new TaughtCommand(
            "parts",
            """
            The parts list of a cell: robot, drives, tool, compressed air, frame, guarding, cabinet and cables as far as they are described, equal things in
            one line, with quantities, bought or made, and spares. What the description does not say is the usual, and says so; /partsList states it, and
            adds lines. Ends with 1 when a line of /partsList speaks of something that is not there.
            """,
            new Example("parts samples/jar-lids.json", "The parts of the sample cell."),
            new Example("parts samples/jar-lids.json --format csv --out parts.csv", "For a spreadsheet."))
        {
            cell, cellId, format, outOption,
        };
        command.SetAction(async (parsed, stop) =>
        {
            if (await CellInput.ReadOneAsync(parsed, parsed.GetRequiredValue(cell), parsed.GetValue(cellId), stop) is not { } input) return ExitCode.Refused;
            var sheet = PartsSheet.Of(input.Cell);
            int written = Options.Write(parsed, outOption, to => to.Text.Write(parsed.GetValue(format) switch
            {
                OutputFormat.Json => PartsForms.Json(sheet, CellFile.Hash(input.Cell)),
                OutputFormat.Csv => PartsForms.Csv(sheet),
                OutputFormat.Markdown => PartsForms.Markdown(sheet),
                _ => PartsForms.Text(sheet),
            }));
            if (written != ExitCode.AllHold) return written;
            var astray = PartsChecks.Check(input.Cell, new()).Findings;
            foreach (Finding finding in astray) parsed.InvocationConfiguration.Error.WriteLine($"trivet: {Sentences.Of(finding, input.Cell)}");
            return astray.IsEmpty ? ExitCode.AllHold : ExitCode.NotAllHold;
        });
        return command;
    }
}
