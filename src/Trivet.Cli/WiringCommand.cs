using System.CommandLine;
using Trivet.Assessment;
using Trivet.Cabinets;
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
        var add = new Option<string?>("--add") { Description = "Plan with one module more, like the last along the rail of this role, to see what it changes.", HelpName = "ROLE" };
        var outOption = Options.Out("Write to this file instead of standard output.");
        var papers = new WiringPapers();
        var command = new TaughtCommand(
            "wiring",
            """
            Plan the order of the cabinet's modules and their addresses by the rules of the cabinet, with as few changes as can be to what stands
            and is set already, and tell what each switch must read. The cabinet: rail, heat and air; supplies, consumers, branches and
            wires; all axes stopping together into the motors' supply. The bus: its length, its ohms, its load at worst and with the frames as
            stated, and what is to be heard when the nodes start. Ends with 1 when a finding about any of it falls short or is open.
            """,
            new Example("wiring samples/jar-lids.json", "Modules in their order along the rail, addresses, switches, bus."),
            new Example("wiring samples/jar-lids.json --format csv --out addresses.csv", "The modules as a table."),
            new Example("wiring samples/jar-lids.json --add axis", "What one axis module more would change."),
            new Example("wiring samples/jar-lids.json --format csv --table heat-by-module", "Another table."),
            new Example("wiring samples/jar-lids.json --all papers --labels 4x10", "Lists, diagram, label sheets and schedule into a folder."),
            new Example("wiring samples/jar-lids.json --edited papers/edit-cables.csv --new-cell new.json", "What an edited list changes, and the cell with it."))
        {
            cell, cellId, format, table, add, outOption, papers.All, papers.Labels, papers.Address, papers.Edited, papers.List, papers.NewCell,
        };
        command.SetAction(async (parsed, stop) =>
        {
            if (await CellInput.ReadOneAsync(parsed, parsed.GetRequiredValue(cell), parsed.GetValue(cellId), stop) is not { } input) return ExitCode.Refused;
            if (papers.Compare(parsed, input) is { } compared) return compared;
            if (!papers.Write(parsed, input)) return ExitCode.Refused;
            var of = input.Cell;
            if (parsed.GetValue(add) is { } role)
            {
                if (OneMore.OfRole(of, role) is not { } more)
                {
                    await parsed.InvocationConfiguration.Error.WriteLineAsync($"No module has the role '{role}'; there are {string.Join(", ", of.Cabinet.Modules.Values.Select(m => m.Role).OfType<string>().Distinct())}.");
                    return ExitCode.Refused;
                }
                of = more;
            }
            var sheet = WiringSheet.Of(of);
            var sections = ElectricalSections.Of(of);
            var chosen = sections.SelectMany(s => s.Tables).FirstOrDefault(t => t.Id == parsed.GetValue(table));
            if (parsed.GetValue(table) is { } name && chosen is null)
            {
                await parsed.InvocationConfiguration.Error.WriteLineAsync($"There is no table '{name}' here; there are {string.Join(", ", sections.SelectMany(s => s.Tables).Select(t => t.Id))}.");
                return ExitCode.Refused;
            }
            // One module more is judged where the plan puts it.
            var findings = ElectricalFindings.Of(parsed.GetValue(add) is null ? of : sheet.AsPlanned(), stop);
            int written = Options.Write(parsed, outOption, to => to.Text.Write(parsed.GetValue(format) switch
            {
                OutputFormat.Json => WiringForms.Json(sheet, sections, CellFile.Hash(input.Cell)),
                OutputFormat.Csv => chosen is null ? WiringForms.Csv(sheet) : SectionForms.Csv(chosen),
                OutputFormat.Markdown => WiringForms.Markdown(sheet, sections, findings),
                _ => WiringForms.Text(sheet, sections, findings),
            }));
            if (written != ExitCode.AllHold) return written;
            return findings.All(f => f.Verdict is Verdict.Holds or Verdict.Tight) ? ExitCode.AllHold : ExitCode.NotAllHold;
        });
        return command;
    }
}
