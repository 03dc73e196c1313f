using System.Diagnostics;

namespace Trivet.Testing;

/// <summary>What a Node program of tests/outside said, or why it could not be run: a test then skips with that reason.</summary>
/// <param name="Output">Standard output; empty when not run.</param>
/// <param name="NotRun">Why the program was not run; empty when it was.</param>
public sealed record NodeProgram(string Output, string NotRun)
{
    /// <summary>Runs a script of tests/outside. A program that is there but fails is our own mistake and throws.</summary>
    /// <param name="module">The npm module it needs, to tell "not installed" from "broken".</param>
    public static NodeProgram Run(string script, string module, params string[] arguments)
    {
        string folder = ReferenceData.Folder("outside");
        if (!Directory.Exists(Path.Combine(folder, "node_modules", module)))
            return new("", $"The npm module {module} is not installed; `npm ci` in tests/outside installs it.");

        var start = new ProcessStartInfo("node") { WorkingDirectory = folder, RedirectStandardOutput = true, RedirectStandardError = true };
        start.ArgumentList.Add(script);
        foreach (string argument in arguments) start.ArgumentList.Add(argument);
        try
        {
            using var process = Process.Start(start)!;
            var errors = process.StandardError.ReadToEndAsync();
            string output = process.StandardOutput.ReadToEnd();
            process.WaitForExit();
            return process.ExitCode == 0
                ? new(output, "")
                : throw new InvalidOperationException($"{script} ended with {process.ExitCode}: {errors.Result}");
        }
        catch (System.ComponentModel.Win32Exception)
        {
            return new("", "The program `node` is not installed; Node.js 20 runs the outside checks.");
        }
    }
}
