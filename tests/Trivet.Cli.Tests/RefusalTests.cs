using Xunit;

namespace Trivet.Cli.Tests;

/// <summary>Whatever stands on the command line is refused with a way on, and a fault of the program says that it is one.</summary>
public sealed class RefusalTests
{
    [Theory]
    [InlineData("A port is a number; 'abc'", "0 to 65535", "desk", "demo", "--port", "abc")]
    [InlineData("An empty port", "0 to 65535", "desk", "demo", "--port", "")]
    [InlineData("A port too large", "0 to 65535", "desk", "demo", "--port", "65536")]
    [InlineData("A port for the network too large", "0 to 65535", "desk", "demo", "--network", "--network-port", "65536")]
    [InlineData("A host with its scheme", "without https://", "desk", "demo", "--network", "--host", "https://desk.example")]
    [InlineData("A host without the network", "give --network", "desk", "demo", "--host", "desk.example")]
    [InlineData("A person without an id", "1 to 128", "desk", "demo", "--person", " ")]
    [InlineData("A job without a name", "Give one", "desk", "")]
    [InlineData("A file without a name", "Give one", "new", "")]
    [InlineData("A cell without a name", "Name a cell file", "check", "")]
    [InlineData("An answer without a name", "Name a file", "schema", "--out", "")]
    [InlineData("A table without a name", "Name a file", "cycle", "--path", "")]
    [InlineData("A table that is not there", "there is no such file. Check the name", "cycle", "--moves", "never-written.csv")]
    [InlineData("A plane without unit", "units that fit", "reach", "a.json", "--under", "-650")]
    public async Task A_command_line_is_refused_with_a_way_on(string what, string remedy, params string[] line)
    {
        var run = await Run.Trivet(line);
        Assert.True(run.Code == ExitCode.Refused, what);
        Assert.Contains(remedy, run.Error, StringComparison.Ordinal);
        Assert.DoesNotContain("   at ", run.Error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_desk_over_a_file_is_refused()
    {
        using var folder = new TemporaryFolder();
        string file = folder.File("a.json");
        await File.WriteAllTextAsync(file, "{}", TestContext.Current.CancellationToken);
        foreach (string place in new[] { file, Path.Combine(file, "below") })
        {
            var run = await Run.Trivet("desk", place, "--demo");
            Assert.Equal(ExitCode.Refused, run.Code);
            Assert.Contains("Name a", run.Error, StringComparison.Ordinal);
        }
    }

    [Fact]
    public async Task An_answer_that_has_no_place_is_refused_before_the_cell_is_read()
    {
        using var folder = new TemporaryFolder();
        var run = await Run.Trivet("check", folder.File("never-written.json"), "--out", folder.File("no/ledger.md"));
        Assert.Equal(ExitCode.Refused, run.Code);
        Assert.Contains("Make it first", run.Error, StringComparison.Ordinal);
        Assert.DoesNotContain("never-written", run.Error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_file_that_stands_where_the_answer_goes_is_left_when_the_input_is_refused()
    {
        using var folder = new TemporaryFolder();
        string standing = folder.File("ledger.md"), free = folder.File("free.md");
        await File.WriteAllTextAsync(standing, "mine", TestContext.Current.CancellationToken);
        foreach (string answer in new[] { standing, free })
            Assert.Equal(ExitCode.Refused, (await Run.Trivet("check", folder.File("never-written.json"), "--out", answer)).Code);
        Assert.Equal("mine", await File.ReadAllTextAsync(standing, TestContext.Current.CancellationToken));
        Assert.False(File.Exists(free));
    }

    [Fact]
    public async Task A_fault_of_the_program_says_that_it_is_one()
    {
        using var error = new StringWriter();
        await using var faulty = new Faulty();
        int code = await TrivetProgram.RunAsync(["schema"], faulty, error, CancellationToken.None);
        Assert.Equal(ExitCode.Fault, code);
        Assert.Contains("a fault of the program", error.ToString(), StringComparison.Ordinal);
        Assert.Contains("TRIVET_TRACE=1", error.ToString(), StringComparison.Ordinal);
        Assert.DoesNotContain("   at ", error.ToString(), StringComparison.Ordinal);
    }

    private sealed class Faulty : StringWriter
    {
        public override void Write(string? value) => throw new InvalidOperationException("made for the test");
    }
}
