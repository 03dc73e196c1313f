using System.Diagnostics;

namespace Trivet.EndToEnd;

/// <summary><c>trivet desk</c> as its own process over a job folder of its own, on a free port.</summary>
internal sealed class RunningDesk : IAsyncDisposable
{
    private readonly Process _process;

    private RunningDesk(Process process, Uri address) => (_process, Address) = (process, address);

    public Uri Address { get; }

    /// <param name="port">0 for a free one; a restart on the same port lets an open page come back.</param>
    public static async Task<RunningDesk> StartAsync(string job, int port = 0)
    {
        var process = Process.Start(new ProcessStartInfo("dotnet", [Repository.Program, "desk", job, "--port", port.ToString(System.Globalization.CultureInfo.InvariantCulture)])
        {
            // Static files must be found from any working directory.
            WorkingDirectory = Path.GetTempPath(),
            RedirectStandardOutput = true,
            RedirectStandardError = true,
        })!;
        var address = new TaskCompletionSource<Uri>(TaskCreationOptions.RunContinuationsAsynchronously);
        var said = new System.Collections.Concurrent.ConcurrentQueue<string>();
        void Hear(object _, DataReceivedEventArgs e)
        {
            if (e.Data is not { } line) return;
            said.Enqueue(line);
            int at = line.IndexOf("http://", StringComparison.Ordinal);
            if (at >= 0 && Uri.TryCreate(line[at..].Split(' ')[0], UriKind.Absolute, out var uri)) address.TrySetResult(uri);
        }

        process.OutputDataReceived += Hear;
        process.ErrorDataReceived += Hear;
        process.EnableRaisingEvents = true;
        process.Exited += (_, _) => address.TrySetException(new InvalidOperationException($"The desk ended before it answered: {string.Join('\n', said)}"));
        process.BeginOutputReadLine();
        process.BeginErrorReadLine();
        try
        {
            return new(process, await address.Task.WaitAsync(TimeSpan.FromMinutes(2)));
        }
        catch
        {
            process.Kill(entireProcessTree: true);
            process.Dispose();
            throw;
        }
    }

    /// <summary>Ends the program without warning, as a power cut would.</summary>
    public async Task KillAsync()
    {
        if (!_process.HasExited) _process.Kill(entireProcessTree: true);
        await _process.WaitForExitAsync();
    }

    public async ValueTask DisposeAsync()
    {
        await KillAsync();
        _process.Dispose();
    }
}
