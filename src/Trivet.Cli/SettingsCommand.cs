using System.Collections.Immutable;
using System.CommandLine;
using Trivet.Cells;
using Trivet.Files;
using Trivet.Files.Exchange;
using Trivet.Findings;
using Trivet.Papers;
using Trivet.Settings;
using Trivet.Views.Settings;

namespace Trivet.Cli;

/// <summary><c>trivet settings</c>: the values to type into the controller, an export held against them, a backup held against what was read out.</summary>
internal static class SettingsCommand
{
    public static Command Create()
    {
        var cell = Options.Cell();
        var cellId = Options.CellId();
        var format = Options.Format();
        var outOption = Options.Out("Write to this file instead of standard output: a .pdf is the list or the record on paper, with room for names and signatures.");
        var export = new Option<string?>("--export") { Description = "Compare this file, exported from the controller, with the plan.", HelpName = "FILE" };
        var backup = new Option<string?>("--backup") { Description = "With --restored: the backup that was put back.", HelpName = "FILE" };
        var restored = new Option<string?>("--restored") { Description = "What was read out of the controller after that.", HelpName = "FILE" };
        var command = new TaughtCommand(
            "settings",
            """
            The values to type into the controller, computed from the plan through the cell's controller mapping and rounded to the steps that the controller takes. An
            exported file, read as /controller/export says, is compared with them; a backup is compared with what was read out after it was restored. Nothing is
            written to a controller. Ends with 0 when all is the same, 1 when something differs, falls short or is open, 2 when a file is refused.
            """,
            new Example("settings samples/jar-lids.json", "What to type, and what the rounding costs."),
            new Example("settings samples/jar-lids.json --out settings.pdf", "The same as a list to take to the machine."),
            new Example("settings samples/jar-lids.json --export samples/exports/jar-lids.txt", "An export against the plan."),
            new Example("settings samples/jar-lids.json --backup samples/exports/jar-lids.txt --restored read-out.txt --out proof.pdf", "Proof that a backup was restored."))
        {
            cell, cellId, format, outOption, export, backup, restored,
        };
        command.Validators.Add(result =>
        {
            if (result.GetValue(backup) is null != result.GetValue(restored) is null) result.AddError("A proof takes two files: --backup and --restored.");
            if (result.GetValue(export) is not null && result.GetValue(backup) is not null) result.AddError("Give --export, or --backup with --restored, not all of them.");
        });
        command.SetAction(async (parsed, stop) =>
        {
            if (await CellInput.ReadOneAsync(parsed, parsed.GetRequiredValue(cell), parsed.GetValue(cellId), stop) is not { } input) return ExitCode.Refused;
            ImmutableArray<string> files = [.. new[] { parsed.GetValue(export), parsed.GetValue(backup), parsed.GetValue(restored) }.OfType<string>()];
            var read = ImmutableArray.CreateBuilder<ReadOut>();
            foreach (string file in files)
            {
                if (Read(parsed, input.Cell, file) is not { } one) return ExitCode.Refused;
                read.Add(one);
            }
            var sheet = read.Count switch
            {
                1 => ExportSheet.Compared(input.Cell, read[0]),
                2 => ExportSheet.Proof(input.Cell, read[0], read[1]),
                _ => null,
            };
            string revision = CellFile.Hash(input.Cell);
            var plan = SettingStage.Of(input.Cell);
            bool good = sheet?.Good ?? plan.Findings.All(f => f.Verdict is Verdict.Holds or Verdict.Tight);
            int ends = good ? ExitCode.AllHold : ExitCode.NotAllHold;
            if (parsed.GetValue(outOption) is { } pdf && pdf.EndsWith(".pdf", StringComparison.OrdinalIgnoreCase))
                return Write(parsed, pdf, sheet is null ? SettingFiles.List(input.Cell, DateTime.Now) : SettingFiles.Record(sheet, input.Cell, DateTime.Now)) ? ends : ExitCode.Refused;
            int written = Options.Write(parsed, outOption, to => to.Text.Write((parsed.GetValue(format), sheet) switch
            {
                (OutputFormat.Json, null) => SettingForms.Json(input.Cell, revision),
                (OutputFormat.Csv, null) => SettingForms.Csv(input.Cell),
                (OutputFormat.Markdown, null) => SettingForms.Markdown(input.Cell, plan.Findings),
                (_, null) => SettingForms.Text(input.Cell, plan.Findings),
                (OutputFormat.Json, _) => SettingForms.Json(sheet, input.Cell, revision),
                (OutputFormat.Csv, _) => SettingForms.Csv(sheet),
                (OutputFormat.Markdown, _) => SettingForms.Markdown(sheet),
                _ => SettingForms.Text(sheet),
            }));
            return written != ExitCode.AllHold ? written : ends;
        });
        return command;
    }

    private static ReadOut? Read(ParseResult parsed, Cell cell, string path)
    {
        var error = parsed.InvocationConfiguration.Error;
        byte[] bytes;
        try
        {
            // One byte more than is taken tells that there was more; the rest is never read.
            using var stream = File.OpenRead(path);
            bytes = new byte[Math.Min(stream.Length, ParameterExport.LargestFile + 1L)];
            stream.ReadExactly(bytes);
        }
        catch (Exception e) when (Places.Refuses(e))
        {
            error.WriteLine($"trivet: {Places.Unreadable(path, e)}");
            return null;
        }
        var read = ReadOut.Of(cell, Path.GetFileName(path), bytes);
        if (read.Errors.IsEmpty) return read;
        Refusals.Write(read.Errors, error);
        return null;
    }

    private static bool Write(ParseResult parsed, string path, PaperFile paper)
    {
        try
        {
            File.WriteAllBytes(path, paper.Bytes);
            return true;
        }
        catch (Exception e) when (Places.Refuses(e))
        {
            parsed.InvocationConfiguration.Error.WriteLine($"trivet: {Places.Unwritable(path, e)}");
            return false;
        }
    }
}
