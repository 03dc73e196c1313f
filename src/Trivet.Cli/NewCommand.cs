using System.CommandLine;
using System.Text;
using Trivet.Cells;
using Trivet.Files;

namespace Trivet.Cli;

/// <summary><c>trivet new</c>: a cell file to start from.</summary>
internal static class NewCommand
{
    public static Command Create()
    {
        var file = new Argument<string>("file") { Description = "Where to write the cell file.", HelpName = "FILE" };
        var from = new Option<string?>("--sample")
        {
            Description = $"Start from a copy of a sample: {string.Join(", ", Samples.All.Select(s => s.Name))}.",
            HelpName = "NAME",
        };
        from.CompletionSources.Add([.. Samples.All.Select(s => s.Name)]);
        var command = new TaughtCommand(
            "new",
            "Start a cell file. `trivet check` on it then lists what is still open.",
            new Example("new my-cell.json", "An almost empty description, at the depth of a quote."),
            new Example("new lids.json --sample jar-lids", "A copy of the complete sample, to be changed into your own."))
        {
            file, from,
        };
        file.Validators.Add(result =>
        {
            if (string.IsNullOrWhiteSpace(result.GetValueOrDefault<string>())) result.AddError("The name of the cell file is empty. Give one, like my-cell.json.");
        });
        command.SetAction(parsed => Run(parsed.GetRequiredValue(file), parsed.GetValue(from), parsed.InvocationConfiguration.Error));
        return command;
    }

    private static int Run(string path, string? sampleName, TextWriter error)
    {
        string text;
        if (sampleName is null) text = CellFile.Write(Cell.Empty with { Name = Path.GetFileNameWithoutExtension(path), Depth = Depth.Quote });
        else if (Samples.Find(sampleName) is { } sample) text = sample.Text;
        else
        {
            error.WriteLine($"trivet: there is no sample '{sampleName}'. There are {string.Join(", ", Samples.All.Select(s => s.Name))}.");
            return ExitCode.Refused;
        }

        try
        {
            // Made only where nothing stands: somebody's work is never overwritten, also not by a race.
            using var file = new FileStream(path, FileMode.CreateNew, FileAccess.Write);
            file.Write(Encoding.UTF8.GetBytes(text));
        }
        catch (IOException) when (File.Exists(path))
        {
            error.WriteLine($"trivet: {path} exists and was left alone. Give another name, or take it away first.");
            return ExitCode.Refused;
        }
        catch (Exception e) when (Places.Refuses(e))
        {
            error.WriteLine($"trivet: {Places.Unwritable(path, e)}");
            return ExitCode.Refused;
        }

        error.WriteLine($"Wrote {path}. Next: trivet check {path}");
        return ExitCode.AllHold;
    }
}
