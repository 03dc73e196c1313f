using System.CommandLine;
using System.Text;

namespace Trivet.Cli;

/// <summary>A table that is turned into another, row by row, from a file or standard input.</summary>
internal static class TableFile
{
    /// <summary>What turns one table into another: exit code 0, 1 where a row has no answer, 2 where the table was refused.</summary>
    /// <param name="done">Fraction of the table read so far.</param>
    public delegate int Turns(TextReader text, string file, TextWriter output, TextWriter error, Func<double> done, IProgress<double> progress, CancellationToken stop);

    public static int Run(ParseResult parsed, Option<string?> outOption, string file, Turns turns, CancellationToken stop)
    {
        var error = parsed.InvocationConfiguration.Error;
        TextReader opened;
        try
        {
            opened = file == "-" ? Console.In : new StreamReader(file, Encoding.UTF8, true, 1 << 16);
        }
        catch (Exception e) when (Places.Refuses(e))
        {
            error.WriteLine($"trivet: {Places.Unreadable(file, e)}");
            return ExitCode.Refused;
        }

        using var text = opened;
        var bytes = (text as StreamReader)?.BaseStream;
        Func<double> done = () => bytes is { CanSeek: true, Length: > 0 } ? (double)bytes.Position / bytes.Length : 0;
        int end = ExitCode.AllHold;
        using var progress = ProgressLine.For(parsed, "Computing");
        int written = Options.Write(parsed, outOption, to => end = turns(text, file, to.Text, error, done, progress, stop));
        return written != ExitCode.AllHold ? written : end;
    }
}
