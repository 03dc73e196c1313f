using System.Diagnostics;
using System.Globalization;

namespace Trivet.Store.Tests;

/// <summary>The program that writes for ever into a job, and the lines it has said.</summary>
internal sealed class SavingProcess : IDisposable
{
    private readonly Process _process;
    private readonly List<string> _said;

    /// <param name="largestFile">Bytes beyond which no file of the process may grow; null for no limit.</param>
    public SavingProcess(JobLocation job, string[] arguments, List<string> said, long? largestFile = null)
    {
        _said = said;
        string host = Environment.GetEnvironmentVariable("DOTNET_HOST_PATH") ?? "dotnet";
        string place = job is JobLocation.Postgres postgres ? postgres.ConnectionString : ((JobLocation.Folder)job).Path;
        string[] call = [host, Path.Combine(AppContext.BaseDirectory, "Trivet.Store.Saver.dll"), place, .. arguments];
        // A write beyond the limit then fails like one on a full disk, instead of ending the process. The shell counts in kilobytes.
        if (largestFile is { } bytes)
            call = ["bash", "-c", "trap '' XFSZ; ulimit -f \"$0\"; exec \"$@\"", (bytes / 1024).ToString(CultureInfo.InvariantCulture), .. call];
        var start = new ProcessStartInfo(call[0], call[1..]) { RedirectStandardOutput = true, RedirectStandardError = true };
        // The runtime's own memory would otherwise count as a large file.
        if (largestFile is not null) start.Environment["DOTNET_EnableWriteXorExecute"] = "0";
        _process = Process.Start(start)!;
    }

    /// <summary>Waits for the next line.</summary>
    public async Task<string> ReadAsync()
    {
        if (await _process.StandardOutput.ReadLineAsync(TestContext.Current.CancellationToken) is { } line)
        {
            _said.Add(line);
            return line;
        }
        Assert.Fail(await _process.StandardError.ReadToEndAsync(TestContext.Current.CancellationToken));
        return "";
    }

    /// <summary>Ends the process (SIGKILL) and takes what it had still said; a line cut short was not said.</summary>
    public async Task EndAsync()
    {
        _process.Kill();
        string rest = await _process.StandardOutput.ReadToEndAsync(TestContext.Current.CancellationToken);
        await _process.WaitForExitAsync(TestContext.Current.CancellationToken);
        _said.AddRange(rest[..(rest.LastIndexOf('\n') + 1)].Split('\n', StringSplitOptions.RemoveEmptyEntries));
    }

    public void Dispose() => _process.Dispose();
}
