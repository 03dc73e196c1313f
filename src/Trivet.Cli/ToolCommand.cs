using System.CommandLine;
using Trivet.Assessment;
using Trivet.Files;
using Trivet.Findings;
using Trivet.Views.Tooling;
using Trivet.Views.Words;

namespace Trivet.Cli;

/// <summary><c>trivet tool</c>: masses, centres and inertia of the tool stack, gripping, air, and what moves and may be thrown.</summary>
internal static class ToolCommand
{
    // Rules of other trades begin otherwise.
    private static readonly string[] Own = ["tool.", "grip.", "protect."];

    public static Command Create()
    {
        var cell = Options.Cell();
        var cellId = Options.CellId();
        var format = Options.Format();
        var outOption = Options.Out("Write the cell to this file, with what was read from its mesh files: for a job folder or a database, which have no files beside them.");
        var command = new TaughtCommand(
            "tool",
            """
            The tool stack of a cell: mass, centre of mass and inertia of each part and of their sums at the mechanical interface and at the tool centre point,
            empty and with each part; force, evacuation and release of vacuum cups; compressed air; the space that moving parts stay within, and what a part
            or a rod carries that comes off. Mesh files (STL, glTF) are read from beside the cell file. Ends with 1 when a finding about tool, gripping,
            handling or guarding falls short or is open.
            """,
            new Example("tool samples/jar-lids.json", "The tool of the sample cell."),
            new Example("tool samples/jar-lids.json --format csv", "Every number in SI, for another program."),
            new Example("tool my-cell.json --out whole.json", "A cell file that needs its meshes no longer."))
        {
            cell, cellId, format, outOption,
        };
        command.SetAction(async (parsed, stop) =>
        {
            if (await CellInput.ReadOneAsync(parsed, parsed.GetRequiredValue(cell), parsed.GetValue(cellId), stop) is not { } input) return ExitCode.Refused;
            if (parsed.GetValue(outOption) is not null) return Options.Write(parsed, outOption, to => to.Text.Write(CellFile.Write(input.Cell)));
            var assessed = Assess.Preview(input.Cell);
            var sheet = ToolSheet.Of(assessed.Planned);
            var output = parsed.InvocationConfiguration.Output;
            var shown = parsed.GetValue(format);
            output.Write(shown switch
            {
                OutputFormat.Json => ToolForms.Json(sheet, CellFile.Hash(input.Cell)),
                OutputFormat.Csv => ToolForms.Csv(sheet),
                OutputFormat.Markdown => ToolForms.Markdown(sheet),
                _ => ToolForms.Text(sheet),
            });
            // These rules need no long proof: the fast answer is the full one for them.
            var wanting = assessed.Ledger.Findings
                .Where(f => f.Verdict is Verdict.FallsShort or Verdict.Open && Own.Any(o => f.Rule.Id.StartsWith(o, StringComparison.Ordinal))).ToArray();
            if (shown == OutputFormat.Text)
            {
                foreach (var finding in wanting) output.WriteLine(Sentences.Of(finding, input.Cell));
            }
            return wanting.Length == 0 ? ExitCode.AllHold : ExitCode.NotAllHold;
        });
        return command;
    }
}
