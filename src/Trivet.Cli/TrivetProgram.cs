using System.CommandLine;
using System.CommandLine.Completions;
using System.CommandLine.Help;
using Trivet.Files;

namespace Trivet.Cli;

/// <summary>How a command ends.</summary>
internal static class ExitCode
{
    public const int AllHold = 0;
    /// <summary>Something falls short or is open.</summary>
    public const int NotAllHold = 1;
    /// <summary>The input or the command line was refused; standard error says where, what and what would be right.</summary>
    public const int Refused = 2;
    /// <summary>A fault of the program itself.</summary>
    public const int Fault = 3;
    /// <summary>Stopped by the user; the number a shell gives to a program ended by Ctrl-C.</summary>
    public const int Cancelled = 130;
}

/// <summary>The program <c>trivet</c>: its commands, and one run of it. Tests call the same entry as the process does.</summary>
internal static class TrivetProgram
{
    /// <summary>Set, it shows where a fault of the program arose.</summary>
    private const string Trace = "TRIVET_TRACE";

    public static async Task<int> RunAsync(IReadOnlyList<string> arguments, TextWriter output, TextWriter error, CancellationToken stop)
    {
        var parsed = Root().Parse(arguments);
        if (arguments.Count == 0) parsed = Root().Parse("--help");
        else if (parsed.Errors.Count > 0 && parsed.Action is not HelpWithExamples)
        {
            // Where a word was not understood it says nothing to complain also that a command is missing.
            var problems = parsed.Errors.Where(e => parsed.UnmatchedTokens.Count == 0 || parsed.UnmatchedTokens.Any(t => e.Message.Contains(t, StringComparison.Ordinal)));
            foreach (var problem in problems) error.WriteLine($"trivet: {problem.Message}");
            if (arguments[0] is { } first && parsed.CommandResult.Command is RootCommand root && Nearest.To(first, root.Subcommands.Select(c => c.Name)) is { } meant)
                error.WriteLine($"Is \"trivet {meant}\" meant?");
            error.WriteLine($"Try: {CallOf(parsed.CommandResult.Command)} --help");
            return ExitCode.Refused;
        }

        var configuration = new InvocationConfiguration { Output = output, Error = error, EnableDefaultExceptionHandler = false };
        try
        {
            if (parsed.Action is not HelpWithExamples && Options.WhyNotWritable(parsed) is { } why)
            {
                error.WriteLine($"trivet: {why}");
                return ExitCode.Refused;
            }

            int code = await parsed.InvokeAsync(configuration, stop);
            await output.FlushAsync(stop);
            return code;
        }
        catch (OperationCanceledException)
        {
            error.WriteLine("trivet: stopped.");
            return ExitCode.Cancelled;
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            // A full disk, a drive or a server that went away: what was written up to here is not whole.
            error.WriteLine($"trivet: reading or writing failed, and the answer is not whole: {Places.Ended(e.Message)} See that the disk has room and that every place named can be reached; then try again.");
            return ExitCode.Refused;
        }
        catch (Exception e)
        {
            error.WriteLine($"trivet: a fault of the program, not of your input ({e.GetType().Name}: {e.Message}).");
            if (Environment.GetEnvironmentVariable(Trace) is { Length: > 0 }) error.WriteLine(e);
            else error.WriteLine($"Set {Trace}=1 and run it again to see where; send that to whoever gave you Trivet.");
            return ExitCode.Fault;
        }
    }

    public static RootCommand Root()
    {
        var root = new RootCommand(Flowing.Text("""
            Trivet checks, computes and records the work of delivering pick-and-place cells around delta robots.
            It never commands motion.

            Commands that judge end with 0 when all holds, 1 when something falls short or is open, and 2 when the input
            is refused; standard error then says where, what is wrong and what would be right. A fault of the program ends with 3.
            """))
        {
            NewCommand.Create(),
            CheckCommand.Create(),
            ReachCommand.Create(),
            PoseCommand.Create(),
            CycleCommand.Create(),
            ForcesCommand.Create(),
            PlateCommand.Create(),
            WiringCommand.Create(),
            SettingsCommand.Create(),
            ProcedureCommand.Create(),
            ToolCommand.Create(),
            PictureCommand.Create(),
            PartsCommand.Create(),
            FrameCommand.Create(),
            JointsCommand.Create(),
            JournalCommand.Create(),
            SchemaCommand.Create(),
            DeskCommand.Create(),
            CompletionCommand.Create(),
        };
        foreach (var help in root.Options.OfType<HelpOption>()) help.Action = new HelpWithExamples();
        root.Directives.Clear();
        root.Add(new SuggestDirective());
        return root;
    }

    /// <summary>The words that call a command: "trivet check".</summary>
    public static string CallOf(Command command) => command is RootCommand ? "trivet" : $"trivet {command.Name}";
}
