using System.CommandLine;
using System.Globalization;
using System.Text;
using Trivet.Assessment;
using Trivet.Bolting;
using Trivet.Files;
using Trivet.Findings;
using Trivet.Papers;
using Trivet.Views.Mechanical;
using Trivet.Views.Papers;
using Trivet.Views.Words;

namespace Trivet.Cli;

/// <summary><c>trivet joints</c>: the torque sheet of a cell's bolted joints.</summary>
internal static class JointsCommand
{
    public static Command Create()
    {
        var cell = Options.Cell();
        var cellId = Options.CellId();
        var format = Options.Format();
        var outOption = new Option<string?>("--out", "-o")
        {
            Description = "Write the sheet to this file instead of standard output; a name that ends in .pdf or .svg gives the sheet on paper, with room to sign.",
            HelpName = "FILE",
        };
        var command = new TaughtCommand(
            "joints",
            """
            The torque sheet of the bolted joints in the order they are tightened: torque with its steps, preload between friction and wrench,
            what stays after embedding, the order of the screws, when to re-check. Ends with 1 when a finding about joints falls short or is open.
            """,
            new Example("joints samples/jar-lids.json", "The torque sheet of the sample cell."),
            new Example("joints samples/jar-lids.json --out torque.pdf", "On paper, to be signed joint by joint."))
        {
            cell, cellId, format, outOption,
        };
        command.SetAction(async (parsed, stop) =>
        {
            if (await CellInput.ReadOneAsync(parsed, parsed.GetRequiredValue(cell), parsed.GetValue(cellId), stop) is not { } input) return ExitCode.Refused;
            if (input.Cell.Joints.IsEmpty)
            {
                parsed.InvocationConfiguration.Error.WriteLine($"trivet: {input.Name} describes no bolted joint: state one in /joints.");
                return ExitCode.Refused;
            }
            var assessor = new Assessor();
            var planned = assessor.Complete(input.Cell, stop).Cell;
            var sheet = TorqueSheet.Of(planned, JointStage.Results(planned));
            string revision = CellFile.Hash(input.Cell);
            int written = Write(parsed, outOption, sheet, parsed.GetValue(format), revision);
            if (written != ExitCode.AllHold) return written;
            var wanting = assessor.Preview(input.Cell).Ledger.Findings
                .Where(f => f.Subject.Pointer.StartsWith("/joints", StringComparison.Ordinal) && f.Verdict is (Verdict.FallsShort or Verdict.Open)).ToArray();
            foreach (var finding in wanting) parsed.InvocationConfiguration.Error.WriteLine($"trivet: {Sentences.Of(finding, input.Cell)}");
            return wanting.Length == 0 ? ExitCode.AllHold : ExitCode.NotAllHold;
        });
        return command;
    }

    private static int Write(ParseResult parsed, Option<string?> outOption, TorqueSheet sheet, OutputFormat format, string revision)
    {
        string? file = parsed.GetValue(outOption);
        bool pdf = file?.EndsWith(".pdf", StringComparison.OrdinalIgnoreCase) == true, svg = file?.EndsWith(".svg", StringComparison.OrdinalIgnoreCase) == true;
        if (!pdf && !svg)
        {
            return Options.Write(parsed, outOption, to => to.Text.Write(format switch
            {
                OutputFormat.Json => TorqueForms.Json(sheet, revision),
                OutputFormat.Csv => TorqueForms.Csv(sheet),
                OutputFormat.Markdown => TorqueForms.Markdown(sheet),
                _ => TorqueForms.Text(sheet),
            }));
        }
        try
        {
            var now = DateTime.Now;
            var paper = sheet.Paper(revision[..8], now.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture));
            if (pdf) File.WriteAllBytes(file!, PaperPdf.Of(sheet.Title, now, paper));
            else File.WriteAllText(file!, PaperSvg.Of(paper).Svg, new UTF8Encoding(false));
            return ExitCode.AllHold;
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            parsed.InvocationConfiguration.Error.WriteLine($"trivet: {Places.Unwritable(file!, e)}");
            return ExitCode.Refused;
        }
    }
}
