using System.Diagnostics;
using Trivet.Files;
using Trivet.Store;
using Xunit;

namespace Trivet.Cli.Tests;

/// <summary>The program as a process: streams, exit codes, and what it loads.</summary>
public sealed class ProcessTests
{
    private static readonly string Program = Path.Combine(AppContext.BaseDirectory, "trivet.dll");

    [Fact]
    public async Task The_ledger_goes_to_standard_output_as_utf8_with_line_feeds()
    {
        var run = await Start("check", Repository.Sample("jar-lids"));
        Assert.Equal(0, run.Code);
        Assert.Contains("●  holds", run.Output, StringComparison.Ordinal);
        Assert.DoesNotContain('\r', run.Output);
        Assert.NotEqual('\uFEFF', run.Output[0]);
    }

    [Fact]
    public async Task A_cell_can_come_from_standard_input()
    {
        var run = await Start(["check", "-"], await File.ReadAllTextAsync(Repository.Sample("jar-lids"), TestContext.Current.CancellationToken));
        Assert.Equal(0, run.Code);
        Assert.StartsWith("Jar lids", run.Output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_refused_file_ends_with_2()
    {
        var run = await Start("check", Repository.Sample("broken"));
        Assert.Equal(2, run.Code);
        Assert.Empty(run.Output);
    }

    [Fact]
    public async Task An_answer_that_cannot_be_written_ends_with_2_and_says_so()
    {
        Assert.SkipUnless(File.Exists("/dev/full"), "There is no device here that is always full.");
        var run = await Start("/bin/sh", ["-c", $"'{Dotnet}' '{Program}' schema > /dev/full"], "");
        Assert.Equal(ExitCode.Refused, run.Code);
        Assert.Contains("the disk has room", run.Error, StringComparison.Ordinal);
        Assert.DoesNotContain("   at ", run.Error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_reader_that_has_gone_changes_nothing()
    {
        Assert.SkipUnless(File.Exists("/bin/bash"), "There is no bash here.");
        // The pipe has no reader any more before anything is written to it.
        string command = $"'{Dotnet}' '{Program}' check '{Repository.Sample("tight-corner")}' | true; exit ${{PIPESTATUS[0]}}";
        var run = await Start("/bin/bash", ["-c", command], "");
        Assert.Equal(ExitCode.NotAllHold, run.Code);
        Assert.DoesNotContain("trivet:", run.Error, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("[suggest:10]", "trivet che", "check")]
    [InlineData("[suggest:23]", "trivet check a.json --fo", "--format")]
    [InlineData("[suggest:29]", "trivet check a.json --format ", "markdown")]
    [InlineData("[suggest:18]", "trivet completion ", "pwsh")]
    public async Task A_shell_gets_its_completions(string directive, string line, string expected)
    {
        var run = await Start(directive, line);
        Assert.Contains(expected, run.Output.Split('\n'));
    }

    [Theory, InlineData("bash", "complete "), InlineData("zsh", "compdef "), InlineData("pwsh", "Register-ArgumentCompleter ")]
    public async Task A_completion_script_is_printed(string shell, string registers)
    {
        var run = await Start("completion", shell);
        Assert.Equal(0, run.Code);
        Assert.Contains(registers, run.Output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Bash_takes_the_completion_script()
    {
        Assert.SkipUnless(File.Exists("/bin/bash"), "There is no bash here.");
        var script = await Start("completion", "bash");
        using var folder = new TemporaryFolder();
        // A stand-in for the program on the path, so that bash completes with what this build answers.
        string trivet = folder.File("trivet");
        await File.WriteAllTextAsync(trivet, $"#!/bin/sh\nexec '{Dotnet}' '{Program}' \"$@\"\n", TestContext.Current.CancellationToken);
        if (!OperatingSystem.IsWindows()) File.SetUnixFileMode(trivet, UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.UserExecute);
        string ask = $"{script.Output}\nCOMP_WORDS=('{trivet}' che); COMP_CWORD=1; COMP_LINE='trivet che'; COMP_POINT=10; _trivet_complete; echo \"${{COMPREPLY[@]}}\"\n";
        var run = await Start("/bin/bash", [], ask);
        Assert.Equal("check", run.Output.Trim());
    }

    [Fact]
    public async Task The_root_certificate_is_told_with_its_place_and_the_same_each_time()
    {
        Assert.SkipWhen(OperatingSystem.IsWindows(), "On Windows the settings folder is not named by a variable.");
        using var folder = new TemporaryFolder();
        string settings = folder.File("settings");
        var first = await Start("/usr/bin/env", [$"XDG_CONFIG_HOME={settings}", $"HOME={settings}", Dotnet, Program, "desk", "--certificate"], "");
        var second = await Start("/usr/bin/env", [$"XDG_CONFIG_HOME={settings}", $"HOME={settings}", Dotnet, Program, "desk", "--certificate"], "");
        Assert.Equal(0, first.Code);
        Assert.Equal(first.Output, second.Output);
        Assert.Contains("trivet-local-root.crt", first.Output, StringComparison.Ordinal);
        foreach (string platform in new[] { "Android", "iOS and iPadOS", "Windows", "macOS", "Linux" }) Assert.Contains(platform, first.Output, StringComparison.Ordinal);
        Assert.DoesNotContain("PRIVATE", first.Output, StringComparison.Ordinal);
        var strange = await Start("/usr/bin/env", [$"XDG_CONFIG_HOME={settings}", $"HOME={settings}", Dotnet, Program, "desk", "--certificate", "--host", "desk.example"], "");
        Assert.Equal(ExitCode.Refused, strange.Code);
        Assert.Contains("may not vouch for it", strange.Error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_label_for_each_cabinets_door_is_written_with_the_address_that_the_desk_will_have()
    {
        Assert.SkipWhen(OperatingSystem.IsWindows(), "On Windows the settings folder is not named by a variable.");
        using TemporaryFolder folder = new(), job = new();
        string settings = folder.File("settings"), papers = folder.File("papers");
        string[] desk = [$"XDG_CONFIG_HOME={settings}", $"HOME={settings}", Dotnet, Program, "desk", job.Path, "--door-labels", papers, "--host", "desk.example"];
        var none = await Start("/usr/bin/env", desk, "");
        Assert.Equal(ExitCode.Refused, none.Code);
        Assert.Contains("no job folder", none.Error, StringComparison.Ordinal);

        await using (var store = ((OpenOutcome.Opened)await JobStore.OpenAsync(new JobLocation.Folder(job.Path), TestContext.Current.CancellationToken)).Store)
            foreach (string sample in (string[])["jar-lids", "biscuits"])
                await store.CreateAsync(sample, CellFile.Load(Repository.Sample(sample)).Cell!, new("ada", DateTimeOffset.UnixEpoch), "first", TestContext.Current.CancellationToken);
        var written = await Start("/usr/bin/env", desk, "");
        Assert.Equal((0, ""), (written.Code, written.Error));
        foreach (string sample in (string[])["jar-lids", "biscuits"])
        {
            Assert.Contains($"{sample}-door-label.pdf: https://desk.example:5174/floor/?cell={sample}", written.Output, StringComparison.Ordinal);
            Assert.Equal("%PDF-"u8.ToArray(), (await File.ReadAllBytesAsync(Path.Combine(papers, $"{sample}-door-label.pdf"), TestContext.Current.CancellationToken))[..5]);
        }
        // A port that may be another one tomorrow is not printed.
        var free = await Start("/usr/bin/env", [.. desk, "--network-port", "0"], "");
        Assert.Equal(ExitCode.Refused, free.Code);
        Assert.Contains("--network-port 5174", free.Error, StringComparison.Ordinal);
    }

    private static Task<Run> Start(params string[] arguments) => Start(arguments, "");

    private static Task<Run> Start(string[] arguments, string input) => Start(Dotnet, [Program, .. arguments], input);

    /// <summary>The host that runs this test project, which is not always on the path.</summary>
    private static string Dotnet => Path.GetFileNameWithoutExtension(Environment.ProcessPath) == "dotnet" ? Environment.ProcessPath! : "dotnet";

    private static async Task<Run> Start(string program, string[] arguments, string input)
    {
        var utf8 = new System.Text.UTF8Encoding(false);
        using var process = Process.Start(new ProcessStartInfo(program, arguments)
        {
            RedirectStandardInput = true, RedirectStandardOutput = true, RedirectStandardError = true,
            StandardInputEncoding = utf8, StandardOutputEncoding = utf8, StandardErrorEncoding = utf8,
        })!;
        var output = process.StandardOutput.ReadToEndAsync(TestContext.Current.CancellationToken);
        var error = process.StandardError.ReadToEndAsync(TestContext.Current.CancellationToken);
        await process.StandardInput.WriteAsync(input);
        process.StandardInput.Close();
        await process.WaitForExitAsync(TestContext.Current.CancellationToken);
        return new(process.ExitCode, await output, await error);
    }
}
