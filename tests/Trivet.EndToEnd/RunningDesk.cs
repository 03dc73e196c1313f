using System.Diagnostics;

namespace Trivet.EndToEnd;

/// <summary><c>trivet desk</c> as its own process over a job folder of its own, on a free port.</summary>
internal sealed class RunningDesk : IAsyncDisposable
{
    private readonly Process _process;

    private RunningDesk(Process process, (Uri Desk, Uri? Network) at) => (_process, Address, Network) = (process, at.Desk, at.Network);

    public Uri Address { get; }

    /// <summary>Its first address on the network; null where it is not there.</summary>
    public Uri? Network { get; }

    /// <param name="port">0 for a free one; a restart on the same port lets an open page come back.</param>
    /// <param name="home">Home folder of the person who starts it; null keeps the test's own.</param>
    /// <param name="options">Further options.</param>
    public static async Task<RunningDesk> StartAsync(string job, int port = 0, string? home = null, params string[] options)
    {
        var start = new ProcessStartInfo("dotnet", [Repository.Program, "desk", job, "--port", port.ToString(System.Globalization.CultureInfo.InvariantCulture), .. options])
        {
            // Static files must be found from any working directory.
            WorkingDirectory = Path.GetTempPath(),
            RedirectStandardOutput = true,
            RedirectStandardError = true,
        };
        if (home is not null) (start.Environment["HOME"], start.Environment["XDG_CONFIG_HOME"]) = (home, Path.Combine(home, ".config"));
        var process = Process.Start(start)!;
        Uri? here = null, network = null;
        var address = new TaskCompletionSource<(Uri, Uri?)>(TaskCreationOptions.RunContinuationsAsynchronously);
        var said = new System.Collections.Concurrent.ConcurrentQueue<string>();
        void Hear(object _, DataReceivedEventArgs e)
        {
            if (e.Data is not { } line) return;
            said.Enqueue(line);
            int at = line.IndexOf("http://", StringComparison.Ordinal);
            if (at >= 0 && Uri.TryCreate(line[at..].Split(' ')[0], UriKind.Absolute, out var uri)) here = uri;
            int outside = line.IndexOf("https://", StringComparison.Ordinal);
            if (outside >= 0 && network is null && Uri.TryCreate(line[outside..].Trim(), UriKind.Absolute, out var away)) network = away;
            // The last line: all addresses have been told.
            if (here is not null && line.StartsWith("Ctrl-C", StringComparison.Ordinal)) address.TrySetResult((here, network));
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
