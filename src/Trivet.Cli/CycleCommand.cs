using System.Collections.Immutable;
using System.CommandLine;
using System.Globalization;
using Trivet.Assessment;
using Trivet.Cells;
using Trivet.Drives;
using Trivet.Files;
using Trivet.Findings;
using Trivet.Motion;
using Trivet.Numerics.Profiles;
using Trivet.Views.Motion;
using Trivet.Views.Words;

namespace Trivet.Cli;

/// <summary><c>trivet cycle</c>: how long motions take: the cycles of a cell, or row by row of a table, so that another program can check every number.</summary>
internal static class CycleCommand
{
    public static Command Create()
    {
        var moves = new Option<string?>("--moves")
        {
            Description = "Table of moves of any number of axes together, a move in each row: p01,p02,… where they start, p11,… where they end, v01,… and v11,… how "
                + "fast they are there (at rest without them), vmax1,…, amax1,… and jmax1,… limits (no limit of jerk without it). SI, no units in the head. - is standard input.",
            HelpName = "FILE.csv",
        };
        var law = new Option<RestLaw?>("--law")
        {
            Description = "With --moves: a smooth law from rest to rest in place of the shortest profile. fifth-order and cycloid have no jump of acceleration, seventh-order none of jerk.",
            HelpName = "fifth-order|cycloid|seventh-order",
            CustomParser = result =>
            {
                switch (result.Tokens[0].Value)
                {
                    case "fifth-order": return RestLaw.FifthOrder;
                    case "cycloid": return RestLaw.Cycloid;
                    case "seventh-order": return RestLaw.SeventhOrder;
                    default:
                        result.AddError($"There is no law '{result.Tokens[0].Value}'. Give fifth-order, cycloid or seventh-order.");
                        return null;
                }
            },
        };
        law.CompletionSources.Clear();
        law.CompletionSources.Add("fifth-order", "cycloid", "seventh-order");
        var path = new Option<string?>("--path")
        {
            Description = "Table of points along one path: s, q1,q2,… the axes there, vmax1,… and amax1,… limits; optional dq1,… and ddq1,… derivatives by s, and "
                + "m1,c1,g1,fmax1,… for a force m·s̈ + c·ṡ² + g of at most fmax, with fall1,… for what fmax loses with speed. SI, no units in the head.",
            HelpName = "FILE.csv",
        };
        var startSpeed = Speed("--start-speed", "starts");
        var endSpeed = Speed("--end-speed", "ends");
        var cell = Options.Cell();
        cell.Arity = ArgumentArity.ZeroOrOne;
        var cellId = Options.CellId();
        var format = Options.Format();
        var cycle = new Option<string?>("--cycle") { Description = "Id of the cycle; all of them where not given.", HelpName = "ID" };
        var fastest = new Option<bool>("--fastest")
        {
            Description = "Also look for the fastest settings of the controller's law that hold every limit with its reserve, as they are typed into the controller.",
        };
        var outOption = Options.Out("A table is written to this file instead of standard output; of a cell, one cycle over time under the controller's law.");
        var command = new TaughtCommand(
            "cycle",
            """
            How long motions take. Of a cell: its cycles under three laws, as the controller does it, from state to state, and the bound
            that no law can beat; the controller's law also in its other variants, trapezoidal or of seven phases,
            along the path or for all axes together; ends with 1 when a finding about its motion falls short or is open. --moves: the shortest time in which all axes of a row can begin and end together, limits of velocity,
            acceleration and jerk kept; the rows come back with a column duration, empty where there is none. --path: the shortest time
            along a path, from rest to rest unless speeds are given; the table comes back with the time t and the speed sdot at each point and what holds it back
            from there on. Ends with 1 when a row has no move or the path can not be run through; standard error says why.
            """,
            new Example("cycle samples/jar-lids.json", "The cycles of the sample cell."),
            new Example("cycle samples/jar-lids.json --fastest", "With the settings to type into the controller."),
            new Example("cycle samples/jar-lids.json --cycle to-left --out to-left.csv", "One cycle over time: t[s],x[mm],…,q_a[mm],…,f_a[N],…,mount_fx[N],…,power[W],voltage[V]."),
            new Example("cycle --moves moves.csv", "A duration for each row."),
            new Example("cycle --moves moves.csv --out durations.csv", "Into a file."),
            new Example("cycle --moves moves.csv --law cycloid", "The same moves by a law without a jump of acceleration."),
            new Example("cycle --path gate.csv", "The fastest run along the points of a path."))
        {
            cell, cellId, cycle, fastest, format, moves, law, path, startSpeed, endSpeed, outOption,
        };
        command.Validators.Add(result =>
        {
            int given = new[] { moves, path }.Count(o => result.GetValue(o) is not null) + (result.GetValue(cell) is null ? 0 : 1);
            if (given != 1) result.AddError("Give a cell, or one of --moves FILE.csv and --path FILE.csv.");
            if (result.GetValue(moves) is null && result.GetValue(law) is not null) result.AddError("--law goes with --moves FILE.csv.");
            foreach (var speed in new[] { startSpeed, endSpeed })
            {
                if (result.GetValue(speed) is not { } s) continue;
                if (result.GetValue(path) is null) result.AddError($"{speed.Name} goes with --path FILE.csv.");
                else if (!(s >= 0 && double.IsFinite(s))) result.AddError($"{speed.Name} is not below zero: the path is run forward.");
            }
        });
        command.SetAction(async (parsed, stop) => parsed.GetValue(cell) is { } of
            ? await OfCellAsync(parsed, of, parsed.GetValue(cellId), parsed.GetValue(cycle), parsed.GetValue(fastest), parsed.GetValue(format), outOption, stop)
            : parsed.GetValue(moves) is { } file ? TableFile.Run(parsed, outOption, file, new MoveTable(parsed.GetValue(law)).Run, stop) : TableFile.Run(parsed, outOption, parsed.GetValue(path)!, new PathTable(parsed.GetValue(startSpeed) ?? 0, parsed.GetValue(endSpeed) ?? 0).Run, stop));
        return command;
    }

    private static Option<double?> Speed(string name, string does) => new(name)
    {
        Description = $"With --path: ṡ at which the run {does}, in the unit of s per second; from rest without it.",
        HelpName = "SPEED",
        CustomParser = result =>
        {
            if (double.TryParse(result.Tokens[0].Value, NumberStyles.Float, CultureInfo.InvariantCulture, out double speed)) return speed;
            result.AddError($"'{result.Tokens[0].Value}' is no number. Write it like 0.25.");
            return null;
        },
    };

    private static async Task<int> OfCellAsync(
        ParseResult parsed, string path, string? cellId, string? only, bool fastest, OutputFormat format, Option<string?> outOption, CancellationToken stop)
    {
        var error = parsed.InvocationConfiguration.Error;
        if (await CellInput.ReadOneAsync(parsed, path, cellId, stop) is not { } input) return ExitCode.Refused;
        var cycles = input.Cell.Motion.Cycles;
        string[] ids = [.. cycles.InOrder().Select(c => c.Key).Where(id => only is null || id == only)];
        if (ids.Length == 0)
        {
            error.WriteLine(cycles.IsEmpty ? $"trivet: {input.Name} describes no cycle: state one in /motion/cycles."
                : $"trivet: {input.Name} has no cycle {only}. It has {string.Join(", ", cycles.InOrder().Select(c => c.Key))}.");
            return ExitCode.Refused;
        }

        var assessor = new Assessor();
        var planned = assessor.Complete(input.Cell, stop).Cell;
        var inputs = ids.Select(id => CycleInput.Read(planned, id, new()).Input).ToArray();
        if (parsed.GetValue(outOption) is not null)
        {
            if (ids.Length != 1) error.WriteLine($"trivet: --out takes one cycle over time. Name it with --cycle: {string.Join(", ", ids)}.");
            else if (inputs[0] is { } one && CycleTiming.ByController(one) is var timed && CycleTrace.Of(timed, TimingLaw.Controller) is { } trace)
                return Options.Write(parsed, outOption, to => to.Text.Write(CycleForms.Series(trace, one, Drives(planned, [timed]).FirstOrDefault())));
            else error.WriteLine($"trivet: cycle {ids[0]} has no motion. `trivet check {input.Name}` says why.");
            return ExitCode.Refused;
        }

        ImmutableArray<Finding> findings;
        ImmutableArray<string> waits;
        CycleSheet sheet;
        using (var progress = ProgressLine.For(parsed, "Judging motion"))
        {
            var assessed = assessor.Prove(input.Cell, progress, stop);
            waits = [.. ids.Select(id => $"{input.Cell.Motion.Cycles[id].Name ?? id}: {WaitNote.Of(assessed, id)}")];
            findings = [.. assessed.Ledger.Findings.Where(f => f.Subject.Pointer.StartsWith("/motion", StringComparison.Ordinal))];
            ImmutableArray<CycleResult> results = [.. inputs.OfType<CycleInput>().Select(i => CycleTiming.Solve(i))];
            sheet = CycleSheet.Of(planned, results, fastest ? FastestSettings.Find(planned, stop) : null, variants: true, drives: Drives(planned, results));
        }

        stop.ThrowIfCancellationRequested();
        var output = parsed.InvocationConfiguration.Output;
        output.Write(format switch
        {
            OutputFormat.Json => CycleForms.Json(sheet, CellFile.Hash(input.Cell)),
            OutputFormat.Csv => CycleForms.Csv(sheet),
            OutputFormat.Markdown => CycleForms.Markdown(sheet),
            _ => CycleForms.Text(sheet),
        });
        var wanting = findings.Where(f => f.Verdict is Verdict.FallsShort or Verdict.Open).ToArray();
        if (format == OutputFormat.Text)
        {
            foreach (string wait in waits) output.WriteLine(wait);
            foreach (var finding in wanting) output.WriteLine(Sentences.Of(finding, input.Cell));
        }

        return wanting.Length == 0 ? ExitCode.AllHold : ExitCode.NotAllHold;
    }

    /// <summary>What the cycles whose masses are described ask of the drives under the controller's law.</summary>
    private static ImmutableArray<DriveJudgement> Drives(Cell cell, ImmutableArray<CycleResult> results) => DriveChecks.Of(
        cell, [.. results.Where(r => r.Input.Loaded is not null).Select(r => CycleTrace.Of(r, TimingLaw.Controller)?.Series).OfType<CycleSeries>()]).Cycles;
}
