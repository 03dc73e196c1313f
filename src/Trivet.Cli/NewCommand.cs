using System.CommandLine;
using Trivet.Cells;
using Trivet.Files;

namespace Trivet.Cli;

/// <summary><c>trivet new</c>: a cell file to start from.</summary>
internal static class NewCommand
{
    public static Command Create()
    {
        var file = new Argument<string>("file") { Description = "Where to write the cell file.", HelpName = "FILE" };
        var command = new TaughtCommand(
            "new",
            "Start a cell file. `trivet check` on it then lists what is still open.",
            new Example("new my-cell.json", "An almost empty description at the depth of a quote."))
        {
            file,
        };
        command.SetAction(parsed => Run(parsed, parsed.GetRequiredValue(file)));
        return command;
    }

    private static int Run(ParseResult parsed, string path)
    {
        var error = parsed.InvocationConfiguration.Error;
        if (File.Exists(path))
        {
            error.WriteLine($"trivet: {path} exists and was left alone. Give another name, or remove it first.");
            return ExitCode.Refused;
        }

        string text = CellFile.Write(Cell.Empty with { Name = Path.GetFileNameWithoutExtension(path), Depth = Depth.Quote });
        try
        {
            File.WriteAllText(path, text);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            error.WriteLine($"trivet: cannot write {path}: {e.Message}");
            return ExitCode.Refused;
        }

        error.WriteLine($"Wrote {path}. Next: trivet check {path}");
        return ExitCode.AllHold;
    }
}
