using System.CommandLine;
using Trivet.Assessment;
using Trivet.Files;
using Trivet.Papers;
using Trivet.Views.Procedures;
using Trivet.Views.Words;

namespace Trivet.Cli;

/// <summary><c>trivet procedure</c>: from a pile of parts to a robot ready for its programme.</summary>
internal static class ProcedureCommand
{
    /// <summary>Where the desk serves the page of a cell when it was started without a port.</summary>
    private const string Desk = "http://localhost:5173";

    public static Command Create()
    {
        var cell = Options.Cell();
        var cellId = Options.CellId();
        var people = new Option<int>("--people") { Description = "How many work: 1 or 2. [default: 2]", HelpName = "1|2", DefaultValueFactory = _ => 2 };
        people.Validators.Add(result =>
        {
            if (result.GetValueOrDefault<int>() is not (1 or 2)) result.AddError("--people is 1 or 2.");
        });
        var language = new Option<string>("--language") { Description = "Language of the words: en or de.", HelpName = "en|de", DefaultValueFactory = _ => "en" };
        language.AcceptOnlyFromAmong([.. ProcedureWords.All.Select(w => w.Tag)]);
        var step = new Option<string?>("--step") { Description = "Only this step, with all it says.", HelpName = "ID" };
        var faults = new Option<bool>("--faults") { Description = "Which single mistakes would be noticed, by which step and how likely, in place of the steps; as text, or with --format csv." };
        var safe = new Option<bool>("--safe") { Description = "How this cell is made safe, in place of the steps: what to press, what stays live and for how long, what comes down; as text." };
        var cards = new Option<string?>("--cards") { Description = "Also write a card for each step to this PDF, A5, with the picture of this cell where the step has one.", HelpName = "FILE" };
        var address = new Option<string?>("--address") { Description = $"Address of the cell's page of the procedure, to which the codes on the cards lead; the desk on this machine where it is not given ({Desk}).", HelpName = "URL" };
        var format = Options.Format();
        var outOption = Options.Out("Write to this file instead of standard output.");
        var command = new TaughtCommand(
            "procedure",
            """
            The steps from a pile of parts to a robot ready for its programme, computed from the cell: what, why, hazard, what holds each chain, who, tools, minutes,
            what is recorded with its limits, and what a bad result means; in an order in which nothing is energised before the check that protects it. Trivet
            moves nothing; local rules and licensed people decide. Ends with 1 when a step needs a number that the cell does not state, 2 when a file is refused.
            """,
            new Example("procedure samples/jar-lids.json", "All steps, who is needed when, and how long two people take."),
            new Example("procedure samples/jar-lids.json --step stop-chain", "One step with all it says."),
            new Example("procedure samples/jar-lids.json --safe", "What to press, what stays live and for how long, what comes down."),
            new Example("procedure samples/jar-lids.json --faults", "Which single mistakes would be noticed, and which would slip through."),
            new Example("procedure samples/jar-lids.json --language de --cards cards.pdf", "Cards to take to the machine, in German."))
        {
            cell, cellId, people, language, step, safe, faults, cards, address, format, outOption,
        };
        command.SetAction(async (parsed, stop) =>
        {
            if (await CellInput.ReadOneAsync(parsed, parsed.GetRequiredValue(cell), parsed.GetValue(cellId), stop) is not { } input) return ExitCode.Refused;
            var error = parsed.InvocationConfiguration.Error;
            var sheet = ProcedureSheet.Of(input.Cell, parsed.GetValue(people), ProcedureWords.In(parsed.GetRequiredValue(language)));
            WordedStep? one = null;
            if (parsed.GetValue(step) is { } id && (one = sheet.Steps.FirstOrDefault(s => s.Step.Id == id)) is null)
            {
                string? near = Nearest.To(id, sheet.Steps.Select(s => s.Step.Id));
                error.WriteLine($"trivet: there is no step \"{id}\" in this procedure.{(near is null ? " The last column of the list has their ids." : $" Is \"{near}\" meant?")}");
                return ExitCode.Refused;
            }
            if (parsed.GetValue(cards) is { } pdf)
            {
                string own = parsed.GetValue(address) ?? $"{Desk}/cell/{Uri.EscapeDataString(Path.GetFileNameWithoutExtension(input.Name))}/procedure";
                byte[] bytes = ProcedureFiles.Cards(sheet, Assess.Preview(input.Cell), own, DateTime.Now).Bytes;
                try
                {
                    File.WriteAllBytes(pdf, bytes);
                }
                catch (Exception e) when (Places.Refuses(e))
                {
                    error.WriteLine($"trivet: {Places.Unwritable(pdf, e)}");
                    return ExitCode.Refused;
                }
            }
            var slips = parsed.GetValue(faults) ? SlipSheet.Of(input.Cell, sheet.Procedure, FaultWords.In(sheet.Words.Tag)) : null;
            int written = Options.Write(parsed, outOption, to => to.Text.Write(parsed.GetValue(format) switch
            {
                OutputFormat.Csv when slips is not null => slips.Csv(),
                _ when slips is not null => slips.Text(),
                OutputFormat.Json => ProcedureForms.Json(sheet, input.Cell, CellFile.Hash(input.Cell)),
                OutputFormat.Csv => ProcedureForms.Csv(sheet),
                OutputFormat.Markdown => ProcedureForms.Markdown(sheet),
                _ when parsed.GetValue(safe) => ProcedureForms.Safe(sheet),
                _ => one is null ? ProcedureForms.Text(sheet) : ProcedureForms.Text(one, sheet),
            }));
            if (written != ExitCode.AllHold) return written;
            if (slips is not null) return slips.Rows.Any(r => r.Of.SlipsThrough) ? ExitCode.NotAllHold : ExitCode.AllHold;
            return sheet.Procedure.Gaps.IsEmpty ? ExitCode.AllHold : ExitCode.NotAllHold;
        });
        return command;
    }
}
