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
internal sealed class TaughtCommand(string name, string description, params ImmutableArray<Example> examples) : Command(name, Flowing.Text(description))
{
    public ImmutableArray<Example> Examples { get; } = examples;

    /// <summary>The first sentence of the description, for the list of commands.</summary>
    public string Summary => Description is { } all && all.IndexOf(". ", StringComparison.Ordinal) is > 0 and int end ? all[..(end + 1)] : Description ?? "";
}

/// <summary>Text written over several lines in the source, to be set to the width of whoever reads it.</summary>
internal static class Flowing
{
    /// <summary>Lines run on; an empty line parts paragraphs.</summary>
    public static string Text(string lines) =>
        string.Join("\n\n", lines.ReplaceLineEndings("\n").Split("\n\n").Select(paragraph => paragraph.Replace('\n', ' ')));
}

/// <summary>The usual help, with the command's examples below it.</summary>
internal sealed class HelpWithExamples : SynchronousCommandLineAction
{
    private readonly HelpAction _usual = new() { MaxWidth = 100 };

    public override bool ClearsParseErrors => true;

    public override int Invoke(ParseResult parseResult)
    {
        // The list of commands is for finding one; each tells the rest in its own help.
        if (parseResult.CommandResult.Command is RootCommand root)
        {
            foreach (var listed in root.Subcommands.OfType<TaughtCommand>()) listed.Description = listed.Summary;
        }

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
