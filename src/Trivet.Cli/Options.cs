using System.CommandLine;
using System.Text;

namespace Trivet.Cli;

/// <summary>Forms in which a result is written; the first is taken where none is asked for.</summary>
internal enum OutputFormat
{
    Text,
    Json,
    Csv,
    Markdown,
}

/// <summary>Where an answer goes.</summary>
/// <param name="Text">Standard output or a file.</param>
/// <param name="Width">Columns that text is set for: those of the terminal, or 100.</param>
internal readonly record struct Destination(TextWriter Text, int Width);

/// <summary>What several commands share: arguments, options and where the answer goes.</summary>
internal static class Options
{
    private const int UsualWidth = 100;

    public static Argument<string> Cell() =>
        new("cell") { Description = "A cell file (.json), a job folder, or - for standard input.", HelpName = "FILE" };

    public static Option<string?> CellId() => new("--cell") { Description = "Id of one cell, when a job folder is given.", HelpName = "ID" };

    public static Option<OutputFormat> Format()
    {
        var option = new Option<OutputFormat>("--format", "-f")
        {
            Description = "text for people, json for programs, csv for spreadsheets, markdown for reports. [default: text]",
            HelpName = "text|json|csv|markdown",
            CustomParser = result =>
            {
                string word = result.Tokens[0].Value;
                if (Enum.GetNames<OutputFormat>().FirstOrDefault(n => n.Equals(word, StringComparison.OrdinalIgnoreCase)) is { } name)
                    return Enum.Parse<OutputFormat>(name);
                result.AddError($"There is no format '{word}'. Give text, json, csv or markdown.");
                return default;
            },
        };
        option.CompletionSources.Clear();
        option.CompletionSources.Add("text", "json", "csv", "markdown");
        return option;
    }

    /// <summary>A folder for everything a command hands out, where <see cref="Out"/> is one file with its answer; made where it is missing.</summary>
    public static Option<string?> All(string description) => new("--all") { Description = $"Folder for everything: {description}; made where it is missing.", HelpName = "DIR" };

    public static Option<string?> Out(string description) => new OutOption { Description = description, HelpName = "FILE" };

    /// <summary>Why what a command line names for its answer cannot be written, told before anything is computed; null where it can.</summary>
    public static string? WhyNotWritable(ParseResult parsed) =>
        parsed.CommandResult.Command.Options.OfType<OutOption>().Select(parsed.GetValue).OfType<string>().FirstOrDefault() is { } path
            ? Places.WhyNotWritable(path)
            : null;

    /// <summary>Writes to the file of an --out option, or to standard output; a file that cannot be opened is refused.</summary>
    public static int Write(ParseResult parsed, Option<string?> outOption, Action<Destination> write)
    {
        var io = parsed.InvocationConfiguration;
        if (parsed.GetValue(outOption) is not { } path)
        {
            write(new(io.Output, io.Output is StreamWriter && !Console.IsOutputRedirected ? TerminalWidth() : UsualWidth));
            return ExitCode.AllHold;
        }

        StreamWriter opened;
        try
        {
            opened = new StreamWriter(path, append: false, new UTF8Encoding(false), 1 << 16) { NewLine = "\n" };
        }
        catch (Exception e) when (Places.Refuses(e))
        {
            io.Error.WriteLine($"trivet: {Places.Unwritable(path, e)}");
            return ExitCode.Refused;
        }

        using var file = opened;
        write(new(file, UsualWidth));
        return ExitCode.AllHold;
    }

    private sealed class OutOption() : Option<string?>("--out", "-o");

    private static int TerminalWidth()
    {
        try
        {
            return Math.Clamp(Console.WindowWidth, 60, 160);
        }
        catch (IOException)
        {
            return UsualWidth;
        }
    }
}
