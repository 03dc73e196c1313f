using System.CommandLine;
using Trivet.Assessment;
using Trivet.Cells;
using Trivet.Files;
using Trivet.Findings;
using Trivet.Reach;
using Trivet.Views.Reaches;
using Trivet.Views.Words;

namespace Trivet.Cli;

/// <summary><c>trivet reach</c>: what the robot can reach, and where its mount would best stand.</summary>
internal static class ReachCommand
{
    private const int Heights = 13;
    private const double HeightsWithin = 0.06;

    public static Command Create()
    {
        var cell = Options.Cell();
        var cellId = Options.CellId();
        var format = Options.Format();
        var outOption = Options.Out("Write the answer to this file instead of standard output.");
        var placeMount = new Option<bool>("--place-mount")
        {
            Description = "Also look for the mount with the largest worst margin, and show what each height wins and costs.",
        };
        var under = new Option<double?>("--under")
        {
            Description = "Height z of a plane in the base frame that the largest cylinder and box must lie under.",
            HelpName = "Z",
        };
        under.CustomParser = result =>
        {
            var read = Quantity.Parse(result.Tokens[0].Value, Dimension.Length);
            if (!read.Ok) result.AddError($"--under: {read.Problem}; {read.Remedy}");
            return read.Value;
        };
        var within = new Option<string?>("--within")
        {
            Description = "Further limits that a place must keep to count as reached: swing (of the ball joints), condition (number of the Jacobian), or both. Cylinder and box are then sampled.",
            HelpName = "swing,condition",
        };
        within.Validators.Add(result =>
        {
            foreach (string word in Words(result.GetValueOrDefault<string?>()))
                if (word is not ("swing" or "condition")) result.AddError($"There is no limit '{word}'. Give swing, condition or swing,condition.");
        });
        var command = new TaughtCommand(
            "reach",
            """
            What the robot can reach: volume, largest upright cylinder and box, how far chains may differ while homing, and the
            worst margin of each station. Places are those of the platform's reference point. Ends with 1 when a finding about reach falls short or is open.
            """,
            new Example("reach samples/jar-lids.json", "The reach of the sample cell."),
            new Example("reach samples/jar-lids.json --format csv", "For a spreadsheet: SI values with all digits."),
            new Example("reach samples/jar-lids.json --under \"-650 mm\"", "The largest cylinder and box under a plane of the base frame, such as a guard."),
            new Example("reach samples/jar-lids.json --within swing,condition", "Only where the ball joints' swing and the condition number keep their limits."),
            new Example("reach samples/tight-corner.json --place-mount", "Where the robot would better hang."))
        {
            cell, cellId, under, within, placeMount, format, outOption,
        };
        command.SetAction(async (parsed, stop) =>
        {
            if (await CellInput.ReadOneAsync(parsed, parsed.GetRequiredValue(cell), parsed.GetValue(cellId), stop) is not { } input) return ExitCode.Refused;
            string[] words = Words(parsed.GetValue(within));
            var stated = new Reading();
            var limits = ReachLimits.Read(input.Cell, words.Contains("swing"), words.Contains("condition"), stated);
            if (!stated.Complete)
            {
                foreach (string pointer in stated.MissingFields) parsed.InvocationConfiguration.Error.WriteLine($"{input.Name}: {pointer}: Not stated, and --within {string.Join(',', words)} needs it.");
                return ExitCode.Refused;
            }

            Assessed assessed;
            ReachReport? report;
            using (var progress = ProgressLine.For(parsed, "Proving reach"))
            {
                assessed = Assess.Prove(input.Cell, progress, stop);
                report = ReachReport.Of(input.Cell, assessed.Ledger, parsed.GetValue(under), limits, stop);
            }

            stop.ThrowIfCancellationRequested();
            if (report is null || assessed.Geometry.Robot is not { } robot)
            {
                foreach (var open in assessed.Ledger.Findings.OfType<Unjudged>().Take(1))
                    parsed.InvocationConfiguration.Error.WriteLine($"trivet: {Sentences.Of(open, input.Cell)}");
                parsed.InvocationConfiguration.Error.WriteLine($"trivet: the robot in {input.Name} is not complete. `trivet check {input.Name}` lists what is open.");
                return ExitCode.Refused;
            }

            var sheet = ReachSheet.Of(input.Cell, robot, report);
            if (parsed.GetValue(placeMount)) sheet = Place(parsed, sheet, input.Cell, stop);
            int written = Options.Write(parsed, outOption, to => to.Text.Write(parsed.GetValue(format) switch
            {
                OutputFormat.Json => ReachForms.Json(sheet, CellFile.Hash(input.Cell)),
                OutputFormat.Csv => ReachForms.Csv(sheet),
                OutputFormat.Markdown => ReachForms.Markdown(sheet),
                _ => ReachForms.Text(sheet),
            }));
            if (written != ExitCode.AllHold) return written;
            bool holds = assessed.Ledger.Findings.Where(f => f.Rule.Trade == Trade.Reach).All(f => f.Verdict is Verdict.Tight or Verdict.Holds);
            return holds ? ExitCode.AllHold : ExitCode.NotAllHold;
        });
        return command;
    }

    private static string[] Words(string? list) => list?.Split(',', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries) ?? [];

    private static ReachSheet Place(ParseResult parsed, ReachSheet sheet, Cell cell, CancellationToken stop)
    {
        using var progress = ProgressLine.For(parsed, "Placing the mount");
        var best = MountSearch.Best(cell, new MountFreedom(), Assessor.SampledReach, progress, stop);
        stop.ThrowIfCancellationRequested();
        double z = best.Mount.Z ?? 0;
        var trade = MountSearch.OverHeight(cell with { Mount = best.Mount }, z - HeightsWithin, z + HeightsWithin, Heights, Assessor.SampledReach, stop);
        stop.ThrowIfCancellationRequested();
        return sheet.With(best, trade);
    }
}
