using System.CommandLine;
using Trivet.Files;
using Trivet.Findings;
using Trivet.Views.Wiring;
using Trivet.Wiring;

namespace Trivet.Cli;

/// <summary><c>trivet wiring</c>: the cabinet's modules with their addresses, what each switch must read, and the bus.</summary>
internal static class WiringCommand
{
    public static Command Create()
    {
        var cell = Options.Cell();
        var cellId = Options.CellId();
        var format = Options.Format();
        var outOption = Options.Out("Write to this file instead of standard output.");
        var command = new TaughtCommand(
            "wiring",
            """
            Plan the addresses of the cabinet's modules by the rules of their classes, with as few changes as can be to those already set, and tell
            what each switch must read. The bus: its length, its ohms, its load at worst, and what is to be heard when the nodes start. Ends
            with 1 when a finding about addresses or bus falls short or is open.
            """,
            new Example("wiring samples/jar-lids.json", "Modules in their order along the rail, addresses, switches, bus."),
            new Example("wiring samples/jar-lids.json --format csv --out addresses.csv", "The modules as a table."))
        {
            cell, cellId, format, outOption,
        };
        command.SetAction(async (parsed, stop) =>
        {
            if (await CellInput.ReadOneAsync(parsed, parsed.GetRequiredValue(cell), parsed.GetValue(cellId), stop) is not { } input) return ExitCode.Refused;
            var sheet = WiringSheet.Of(input.Cell);
            int written = Options.Write(parsed, outOption, to => to.Text.Write(parsed.GetValue(format) switch
            {
                OutputFormat.Json => WiringForms.Json(sheet, CellFile.Hash(input.Cell)),
                OutputFormat.Csv => WiringForms.Csv(sheet),
                OutputFormat.Markdown => WiringForms.Markdown(sheet),
                _ => WiringForms.Text(sheet),
            }));
            if (written != ExitCode.AllHold) return written;
            return WiringStage.Of(input.Cell).Findings.All(f => f.Verdict is Verdict.Holds or Verdict.Tight) ? ExitCode.AllHold : ExitCode.NotAllHold;
        });
        return command;
    }
}
