using System.Diagnostics;
using System.Globalization;

namespace Trivet.Cli;

/// <summary>
/// Progress on standard error, only of work that takes over a second: one line that is rewritten in a terminal, a plain line
/// every five seconds elsewhere, so that a log stays short.
/// </summary>
internal sealed class ProgressLine(TextWriter error, string work, bool inTerminal) : IProgress<double>, IDisposable
{
    private static readonly TimeSpan Quiet = TimeSpan.FromSeconds(1), BetweenRewrites = TimeSpan.FromSeconds(0.1), BetweenLines = TimeSpan.FromSeconds(5);
    private readonly Lock _lock = new();
    private readonly Stopwatch _since = Stopwatch.StartNew();
    private TimeSpan _next = Quiet;
    private bool _shown;

    /// <summary>Progress of a command, in a terminal when the process has one.</summary>
    public static ProgressLine For(System.CommandLine.ParseResult parsed, string work)
    {
        var error = parsed.InvocationConfiguration.Error;
        return new(error, work, ReferenceEquals(error, Console.Error) && !Console.IsErrorRedirected);
    }

    /// <param name="value">Fraction done, 0 to 1.</param>
    public void Report(double value)
    {
        lock (_lock)
        {
            if (_since.Elapsed < _next) return;
            _next = _since.Elapsed + (inTerminal ? BetweenRewrites : BetweenLines);
            string line = string.Create(CultureInfo.InvariantCulture, $"{work} {Math.Clamp(value, 0, 1) * 100:0} %");
            if (inTerminal) error.Write($"\r{line} ");
            else error.WriteLine(line);
            _shown = true;
        }
    }

    public void Dispose()
    {
        lock (_lock)
        {
            if (_shown && inTerminal) error.Write($"\r{new string(' ', work.Length + 7)}\r");
            _shown = false;
        }
    }
}
