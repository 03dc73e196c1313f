using System.CommandLine;
using Trivet.Assessment;
using Trivet.Files;
using Trivet.Findings;
using Trivet.Views.Cabinets;
using Trivet.Views.Wiring;

namespace Trivet.Cli;

/// <summary><c>trivet wiring</c>: the cabinet's modules with their addresses, what each switch must read, and the bus.</summary>
internal static class WiringCommand
{
    public static Command Create()
    {
        var cell = Options.Cell();
        var cellId = Options.CellId();
        var format = Options.Format();
        var table = new Option<string?>("--table") { Description = "Which table --format csv writes, by its id in --format json; the modules where it is not given.", HelpName = "ID" };
        var outOption = Options.Out("Write to this file instead of standard output.");
        var papers = new WiringPapers();
        var command = new TaughtCommand(
            "wiring",
            """
            Plan the order of the cabinet's modules and their addresses by the rules of the cabinet, with as few changes as can be to what stands
            and is set already, and tell what each switch must read. The cabinet: rail, heat and air. The bus: its length, its ohms, its load at
            worst, and what is to be heard when the nodes start. Ends with 1 when a finding about any of it falls short or is open.
            """,
            new Example("wiring samples/jar-lids.json", "Modules in their order along the rail, addresses, switches, bus."),
            new Example("wiring samples/jar-lids.json --format csv --out addresses.csv", "The modules as a table."),
            new Example("wiring samples/jar-lids.json --format csv --table heat-by-module", "Another table."),
            new Example("wiring samples/jar-lids.json --all papers --labels 4x10", "Lists, diagram, label sheets and schedule into a folder."),
            new Example("wiring samples/jar-lids.json --edited papers/edit-cables.csv --new-cell new.json", "What an edited list changes, and the cell with it."))
        {
            cell, cellId, format, table, outOption, papers.All, papers.Labels, papers.Address, papers.Edited, papers.List, papers.NewCell,
        };
        command.SetAction(async (parsed, stop) =>
        {
            if (await CellInput.ReadOneAsync(parsed, parsed.GetRequiredValue(cell), parsed.GetValue(cellId), stop) is not { } input) return ExitCode.Refused;
            if (papers.Compare(parsed, input) is { } compared) return compared;
            if (!papers.Write(parsed, input)) return ExitCode.Refused;
            var sheet = WiringSheet.Of(input.Cell);
            var sections = ElectricalSections.Of(input.Cell);
            var chosen = sections.SelectMany(s => s.Tables).FirstOrDefault(t => t.Id == parsed.GetValue(table));
            if (parsed.GetValue(table) is { } name && chosen is null)
            {
                await parsed.InvocationConfiguration.Error.WriteLineAsync($"There is no table '{name}' here; there are {string.Join(", ", sections.SelectMany(s => s.Tables).Select(t => t.Id))}.");
                return ExitCode.Refused;
            }
            int written = Options.Write(parsed, outOption, to => to.Text.Write(parsed.GetValue(format) switch
            {
                OutputFormat.Json => WiringForms.Json(sheet, sections, CellFile.Hash(input.Cell)),
                OutputFormat.Csv => chosen is null ? WiringForms.Csv(sheet) : SectionForms.Csv(chosen),
                OutputFormat.Markdown => WiringForms.Markdown(sheet, sections),
                _ => WiringForms.Text(sheet, sections),
            }));
            if (written != ExitCode.AllHold) return written;
            return ElectricalFindings.Of(input.Cell, stop).All(f => f.Verdict is Verdict.Holds or Verdict.Tight) ? ExitCode.AllHold : ExitCode.NotAllHold;
        });
        return command;
    }
}
