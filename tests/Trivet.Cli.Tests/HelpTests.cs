using System.CommandLine;
using Xunit;

namespace Trivet.Cli.Tests;

/// <summary>Help that teaches by example: every command has examples, and each is a command line that the parser takes.</summary>
public sealed class HelpTests
{
    public static TheoryData<string> Commands => [.. TrivetProgram.Root().Subcommands.Select(c => c.Name)];

    [Theory, MemberData(nameof(Commands))]
    public void Examples_are_command_lines_that_the_program_takes(string name)
    {
        var command = Assert.IsType<TaughtCommand>(TrivetProgram.Root().Subcommands.Single(c => c.Name == name));
        Assert.NotEmpty(command.Examples);
        foreach (var example in command.Examples)
        {
            var parsed = TrivetProgram.Root().Parse(example.Line);
            Assert.Empty(parsed.Errors);
            Assert.Equal(name, parsed.CommandResult.Command.Name);
        }
    }

    [Theory, MemberData(nameof(Commands))]
    public async Task Help_shows_the_examples(string name)
    {
        var run = await Run.Trivet(name, "--help");
        Assert.Equal(0, run.Code);
        Assert.Contains("Examples:", run.Output, StringComparison.Ordinal);
        Assert.Contains($"trivet {name}", run.Output, StringComparison.Ordinal);
    }

    [Theory, MemberData(nameof(Commands))]
    public async Task No_line_of_help_breaks_before_its_width(string name)
    {
        string[] lines = [.. (await Run.Trivet(name, "--help")).Output.Split('\n').Skip(1).TakeWhile(l => l.Length > 0)];
        for (int i = 0; i + 1 < lines.Length; i++)
            Assert.True(lines[i].TrimEnd().Length + 1 + lines[i + 1].TrimStart().Split(' ')[0].Length > 99, lines[i]);
    }

    [Fact]
    public async Task The_list_of_commands_has_a_sentence_for_each()
    {
        string help = (await Run.Trivet("--help")).Output;
        string list = string.Join(' ', help[help.IndexOf("Commands:", StringComparison.Ordinal)..].Split((char[])[' ', '\n'], StringSplitOptions.RemoveEmptyEntries));
        foreach (var command in TrivetProgram.Root().Subcommands.OfType<TaughtCommand>()) Assert.Contains(command.Summary, list, StringComparison.Ordinal);
        Assert.DoesNotContain("Ends with 1", help, StringComparison.Ordinal);
        Assert.DoesNotContain("[default: Text]", (await Run.Trivet("check", "--help")).Output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_word_that_is_no_command_is_refused_with_a_way_on()
    {
        var run = await Run.Trivet("chekc", "cell.json");
        Assert.Equal(ExitCode.Refused, run.Code);
        Assert.Empty(run.Output);
        Assert.Contains("'chekc'", run.Error, StringComparison.Ordinal);
        Assert.Contains("\"trivet check\" meant?", run.Error, StringComparison.Ordinal);
        Assert.Contains("trivet --help", run.Error, StringComparison.Ordinal);
    }
}
