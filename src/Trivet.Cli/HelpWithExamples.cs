using System.Collections.Immutable;
using System.CommandLine;
using System.CommandLine.Help;
using System.CommandLine.Invocation;

namespace Trivet.Cli;

/// <summary>A command line worth imitating.</summary>
/// <param name="Line">As typed after <c>trivet</c>: <c>check samples/jar-lids.json</c>.</param>
/// <param name="Shows">What it does, in one sentence.</param>
internal sealed record Example(string Line, string Shows);

/// <summary>A command that teaches by example: its help ends with them, and a test runs each through the parser.</summary>
internal sealed class TaughtCommand(string name, string description, params ImmutableArray<Example> examples) : Command(name, description)
{
    public ImmutableArray<Example> Examples { get; } = examples;
}

/// <summary>The usual help, with the command's examples below it.</summary>
internal sealed class HelpWithExamples : SynchronousCommandLineAction
{
    private readonly HelpAction _usual = new() { MaxWidth = 100 };

    public override bool ClearsParseErrors => true;

    public override int Invoke(ParseResult parseResult)
    {
        int code = _usual.Invoke(parseResult);
        if (parseResult.CommandResult.Command is not TaughtCommand { Examples.Length: > 0 } command) return code;

        var output = parseResult.InvocationConfiguration.Output;
        output.WriteLine("Examples:");
        foreach (var example in command.Examples)
        {
            output.WriteLine($"  {example.Shows}");
            output.WriteLine($"    trivet {example.Line}");
        }

        output.WriteLine();
        return code;
    }
}
