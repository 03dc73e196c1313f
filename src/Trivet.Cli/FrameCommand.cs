using System.Collections.Immutable;
using System.CommandLine;
using System.Text;
using Trivet.Assessment;
using Trivet.Cells;
using Trivet.Files;
using Trivet.Findings;
using Trivet.Frames;
using Trivet.Motion;
using Trivet.Numerics;
using Trivet.Views.Frames;
using Trivet.Views.Words;

namespace Trivet.Cli;

/// <summary><c>trivet frame</c>: modes, sag, settling waits and loads of the frame.</summary>
internal static class FrameCommand
{
    private static readonly ImmutableArray<CsvColumn> ReactionColumns =
    [
        new("t", Dimension.Time), new("fx", Dimension.Force), new("fy", Dimension.Force), new("fz", Dimension.Force),
        new("mx", Dimension.Torque, Optional: true), new("my", Dimension.Torque, Optional: true), new("mz", Dimension.Torque, Optional: true),
    ];

    public static Command Create()
    {
        var cell = Options.Cell();
        var cellId = Options.CellId();
        var format = Options.Format();
        var reaction = new Option<string?>("--reaction")
        {
            Description = "Besides the cell's own cycles, this force of the robot on its base over a time that repeats: t[s],fx[N],fy[N],fz[N] and optional "
                + "mx[N m],my[N m],mz[N m], cell frame, moments about the base frame's origin. The load stays from its last row on. - is standard input.",
            HelpName = "FILE.csv",
        };
        var braces = new Option<bool>("--braces") { Description = "Also try a diagonal in every field: which gives most hertz per kilogram." };
        var readings = new Option<string?>("--readings")
        {
            Description = "Setting up instead: level, squareness and twist from readings at the standing frame, which foot to raise how far, and what to measure next. "
                + "Columns from,to,distance[mm],height[mm],level[mm/m],reversed[mm/m]; corners are a post's id with .foot or .top. - is standard input.",
            HelpName = "FILE.csv",
        };
        var outOption = Options.Out("Write the answer to this file instead of standard output.");
        var command = new TaughtCommand(
            "frame",
            """
            What the frame does: ten modes as a band between softest and stiffest joints, sag and tilt of the mount, how far it gives way,
            and under each cycle the settling wait, the loads of the feet and the safety against overturning. A pull or a tap stated in
            /frame/measured narrows the band. Ends with 1 when a finding about the frame falls short or is open. What it says of
            overturning, feet and anchors is an aid to the risk assessment: local codes and a licensed person decide.
            """,
            new Example("frame samples/jar-lids.json", "The frame of the sample cell."),
            new Example("frame samples/jar-lids.json --braces", "With diagonals that would help."),
            new Example("frame samples/jar-lids.json --reaction forces.csv --format csv", "Under a force over time from elsewhere."),
            new Example("frame samples/jar-lids.json --readings tape-and-level.csv", "Set the frame up: which foot to raise, what to measure next."))
        {
            cell, cellId, format, reaction, braces, readings, outOption,
        };
        command.Validators.Add(result =>
        {
            if (result.GetValue(readings) is not null && (result.GetValue(reaction) is not null || result.GetValue(braces)))
                result.AddError("--readings sets up the standing frame; leave --reaction and --braces away.");
        });
        command.SetAction(async (parsed, stop) =>
        {
            var error = parsed.InvocationConfiguration.Error;
            if (await CellInput.ReadOneAsync(parsed, parsed.GetRequiredValue(cell), parsed.GetValue(cellId), stop) is not { } input) return ExitCode.Refused;
            if (parsed.GetValue(readings) is { } table) return SetUp(parsed, input, table, parsed.GetValue(format), outOption);
            ImmutableArray<FrameLoad> more = [];
            if (parsed.GetValue(reaction) is { } file)
            {
                if (Reaction(file, input.Cell, error) is not { } load) return ExitCode.Refused;
                more = [load];
            }

            FrameReport report;
            FrameSheet? sheet;
            ImmutableArray<Finding> findings;
            using (var progress = ProgressLine.For(parsed, "Computing"))
            {
                var assessor = new Assessor();
                var whole = assessor.Complete(input.Cell, stop);
                report = FrameReport.Of(whole.Cell, more, stop);
                sheet = report.Study is null ? null : FrameSheet.Of(report, parsed.GetValue(braces) ? report.Braces(stop) : []);
                findings = assessor.OfFrame(whole, stop);
            }

            if (sheet is null)
            {
                foreach (string pointer in report.Missing) error.WriteLine($"{input.Name}: {pointer}: Not stated, and the frame's model needs it.");
                foreach (var problem in report.Problems) error.WriteLine($"{input.Name}: {problem.Pointer}: {Sentences.Of(problem.Reason, input.Cell)}");
                return ExitCode.Refused;
            }

            var kind = parsed.GetValue(format);
            var wanting = findings.Where(f => f.Verdict is Verdict.FallsShort or Verdict.Open).ToArray();
            int written = Options.Write(parsed, outOption, to =>
            {
                to.Text.Write(Forms(sheet, kind, input.Cell));
                if (kind == OutputFormat.Text && wanting.Length > 0) to.Text.WriteLine();
                if (kind == OutputFormat.Text)
                    foreach (var finding in wanting) to.Text.WriteLine(Sentences.Of(finding, input.Cell));
            });
            return written != ExitCode.AllHold ? written : wanting.Length == 0 ? ExitCode.AllHold : ExitCode.NotAllHold;
        });
        return command;
    }

    private static int SetUp(ParseResult parsed, CellInput input, string file, OutputFormat format, Option<string?> outOption)
    {
        var error = parsed.InvocationConfiguration.Error;
        var points = SettingUp.PointsOf(FrameMembers.Of(input.Cell.Frame, new()));
        if (points.IsEmpty)
        {
            error.WriteLine($"{input.Name}: /frame: {Locale.English.Language.Frame.SetUpNothing}");
            return ExitCode.Refused;
        }

        try
        {
            using var text = file == "-" ? Console.In : new StreamReader(file, Encoding.UTF8, true, 1 << 16);
            var (rows, errors) = SetUpTable.Read(text, file, points);
            if (!errors.IsEmpty)
            {
                Refusals.Write(errors, error, "the table was not used");
                return ExitCode.Refused;
            }

            var result = SettingUp.Of(points, rows);
            var sheet = SetUpSheet.Of(input.Cell, result);
            int written = Options.Write(parsed, outOption, to =>
            {
                to.Text.Write(Forms(sheet, format, input.Cell));
                if (format == OutputFormat.Text) to.Text.WriteLine("\n" + Locale.English.Language.Frame.SetUpLast);
            });
            return written != ExitCode.AllHold ? written : result.Quantities.All(q => q.Within == true) ? ExitCode.AllHold : ExitCode.NotAllHold;
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            error.WriteLine($"trivet: {file} cannot be read: {e.Message}");
            return ExitCode.Refused;
        }
    }

    private static string Forms(FrameSheet sheet, OutputFormat format, Cell cell) => format switch
    {
        OutputFormat.Json => FrameForms.Json(sheet, CellFile.Hash(cell)),
        OutputFormat.Csv => FrameForms.Csv(sheet),
        OutputFormat.Markdown => FrameForms.Markdown(sheet),
        _ => FrameForms.Text(sheet),
    };

    /// <summary>Reads a reaction over time; null when it was refused, standard error says why.</summary>
    private static FrameLoad? Reaction(string file, Cell cell, TextWriter error)
    {
        try
        {
            using var text = file == "-" ? Console.In : new StreamReader(file, Encoding.UTF8, true, 1 << 16);
            var reader = new CsvReader(text, file, ReactionColumns);
            var time = ImmutableArray.CreateBuilder<double>();
            var force = ImmutableArray.CreateBuilder<Vec3>();
            var moment = ImmutableArray.CreateBuilder<Vec3>();
            var row = new double[ReactionColumns.Length];
            while (reader.Next(row))
            {
                if (time.Count > 0 && row[0] < time[^1])
                {
                    error.WriteLine($"{file}:{reader.Line}: The time falls back here; rows stand in the order of time.");
                    return null;
                }

                time.Add(row[0]);
                force.Add(new(row[1], row[2], row[3]));
                moment.Add(new(Stated(row[4]), Stated(row[5]), Stated(row[6])));
            }

            if (!reader.Errors.IsEmpty)
            {
                Refusals.Write(reader.Errors, error, "the table was not used");
                return null;
            }

            var series = new ReactionOverTime(time.ToImmutable(), force.ToImmutable(), moment.ToImmutable());
            if (series.IsFinite)
            {
                var mount = new Vec3(cell.Mount.X ?? 0, cell.Mount.Y ?? 0, cell.Mount.Z ?? 0);
                // The tool hangs below the base as far as the lowest station is; without one at the base itself.
                double low = cell.Stations.Values.Select(s => s.Z ?? mount.Z).DefaultIfEmpty(mount.Z).Min();
                return new(Path.GetFileName(file), series, [new("end", series.Time.Length - 1, mount with { Z = low })]);
            }

            error.WriteLine($"{file}: A reaction takes time: give two rows at least, at different times.");
            return null;
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            error.WriteLine($"trivet: {Places.Unreadable(file, e)}");
            return null;
        }
    }

    private static double Stated(double value) => double.IsNaN(value) ? 0 : value;
}
