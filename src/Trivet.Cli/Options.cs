using System.CommandLine;
using System.Text;

namespace Trivet.Cli;

/// <summary>Forms in which a result is written.</summary>
internal enum OutputFormat
{
    Text,
    Json,
    Csv,
    Markdown,
}

/// <summary>What several commands share: arguments, options and where the answer goes.</summary>
internal static class Options
{
    public static Argument<string> CellFile(string description = "The cell file (.json), a job folder, or - for standard input.") =>
        new("cell") { Description = description, HelpName = "FILE" };

    public static Option<OutputFormat> Format()
    {
        var option = new Option<OutputFormat>("--format", "-f")
        {
            Description = "text for people, json for programs, csv for spreadsheets, markdown for reports.",
            HelpName = "text|json|csv|markdown",
            DefaultValueFactory = _ => OutputFormat.Text,
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

    public static Option<string?> Out(string description) => new("--out", "-o") { Description = description, HelpName = "FILE" };

    /// <summary>Writes to the file of an --out option, or to standard output; a file that cannot be written is refused.</summary>
    public static int Write(ParseResult parsed, Option<string?> outOption, Action<TextWriter> write)
    {
        if (parsed.GetValue(outOption) is not { } path)
        {
            write(parsed.InvocationConfiguration.Output);
            return ExitCode.AllHold;
        }

        try
        {
            using var file = new StreamWriter(path, append: false, new UTF8Encoding(false), 1 << 16) { NewLine = "\n" };
            write(file);
            return ExitCode.AllHold;
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            parsed.InvocationConfiguration.Error.WriteLine($"trivet: cannot write {path}: {e.Message}");
            return ExitCode.Refused;
        }
    }
}
