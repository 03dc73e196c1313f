using System.Diagnostics;
using System.Net;
using System.Net.Sockets;
using System.Security.Cryptography;

namespace Trivet.Testing;

/// <summary>
/// A throw-away PostgreSQL server for tests: a fresh cluster in a folder of its own, on a free port of the loopback address. The
/// server refuses to run as root, so root starts it as the user <c>postgres</c>. Nothing is left behind, also when the tests are
/// killed: a small script waits for this process to end.
/// </summary>
public sealed class PostgresServer : IAsyncDisposable
{
    /// <summary>A server to use instead of a throw-away one; the role must be allowed to create databases and roles.</summary>
    public const string Variable = "TRIVET_TEST_POSTGRES";

    private static readonly string[] Places =
        ["/usr/lib/postgresql/17/bin", "/usr/lib/postgresql/16/bin", "/usr/lib/postgresql/15/bin", "/usr/local/bin", "/opt/homebrew/bin"];

    /// <summary>Where one of PostgreSQL's own programs lies; null where it is not installed.</summary>
    public static string? Program(string name) => Places.Append("/usr/bin").Select(p => Path.Combine(p, name)).FirstOrDefault(File.Exists);

    private readonly string _bin;
    private readonly string _folder;

    private PostgresServer(string bin, string folder, string connectionString)
    {
        _bin = bin;
        _folder = folder;
        ConnectionString = connectionString;
    }

    /// <summary>Connects to the server's own database <c>postgres</c> as a role that may do everything.</summary>
    public string ConnectionString { get; private set; }

    /// <summary>Starts a server, or says why there is none.</summary>
    public static async Task<(PostgresServer? Server, string Reason)> StartAsync()
    {
        if (Places.FirstOrDefault(p => File.Exists(Path.Combine(p, "initdb"))) is not { } bin)
            return (null, $"PostgreSQL is not installed (Debian: apt install postgresql) and {Variable} is not set");
        if (Environment.UserName == "root" && !File.Exists("/usr/sbin/runuser"))
            return (null, "PostgreSQL does not run as root, and there is no runuser to start it as another user");

        var (ended, folder) = await RunAsync("mktemp", ["-d", "-t", "trivet-postgres-XXXXXX"]);
        folder = folder.Trim();
        if (ended != 0) return (null, $"no folder for PostgreSQL: {folder}");
        string password = RandomNumberGenerator.GetHexString(32), data = Path.Combine(folder, "data"), secret = Path.Combine(folder, "secret");
        await RunAsync("tee", [secret], password);
        (ended, string said) = await RunAsync(Path.Combine(bin, "initdb"),
            ["-D", data, "-U", "trivet", "-A", "scram-sha-256", $"--pwfile={secret}", "-E", "UTF8", "--locale=C.UTF-8", "--no-sync"]);
        if (ended != 0) return (null, $"initdb failed: {said}");

        int port = FreePort();
        var server = new PostgresServer(bin, folder, $"Host=127.0.0.1;Port={port};Username=trivet;Password={password};Database=postgres");
        (ended, said) = await server.LaunchAsync(port);
        if (ended != 0) return (null, $"PostgreSQL did not start: {said}");
        Watch(bin, folder);
        return (server, "");
    }

    /// <summary>Ends every process of the server at once, as a power cut would, and starts it again on the same data.</summary>
    public async Task CrashAndRestartAsync()
    {
        string port = ConnectionString.Split(';').Single(p => p.StartsWith("Port=", StringComparison.Ordinal))["Port=".Length..];
        await RunAsync(Path.Combine(_bin, "pg_ctl"), ["-D", Path.Combine(_folder, "data"), "-m", "immediate", "-w", "stop"]);
        var (ended, said) = await LaunchAsync(int.Parse(port, System.Globalization.CultureInfo.InvariantCulture));
        if (ended != 0) throw new InvalidOperationException($"PostgreSQL did not start again: {said}");
    }

    public async ValueTask DisposeAsync()
    {
        await RunAsync(Path.Combine(_bin, "pg_ctl"), ["-D", Path.Combine(_folder, "data"), "-m", "immediate", "-w", "stop"]);
        await RunAsync("rm", ["-rf", _folder]);
    }

    private Task<(int, string)> LaunchAsync(int port) => RunAsync(Path.Combine(_bin, "pg_ctl"),
        ["-D", Path.Combine(_folder, "data"), "-l", Path.Combine(_folder, "log"), "-w", "-o",
            $"-p {port} -c listen_addresses=127.0.0.1 -c unix_socket_directories={_folder} -c max_connections=200", "start"]);

    private static void Watch(string bin, string folder)
    {
        string script = $"while [ -d {folder} ] && kill -0 {Environment.ProcessId} 2>/dev/null; do sleep 1; done; " +
            $"[ -d {folder} ] && {{ {Command(Path.Combine(bin, "pg_ctl"))} -D {folder}/data -m immediate stop; rm -rf {folder}; }}";
        using var watcher = Process.Start(new ProcessStartInfo("/bin/sh", ["-c", $"({script}) >/dev/null 2>&1 &"]) { UseShellExecute = false })!;
        watcher.WaitForExit();
    }

    private static string Command(string program) => Environment.UserName == "root" ? $"/usr/sbin/runuser -u postgres -- {program}" : program;

    private static async Task<(int Ended, string Said)> RunAsync(string program, string[] arguments, string input = "")
    {
        string[] words = [.. Command(program).Split(' '), .. arguments];
        using var process = Process.Start(new ProcessStartInfo(words[0], words[1..])
        {
            RedirectStandardInput = true,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
            WorkingDirectory = "/",
        })!;
        // A short program may have ended before anything is written, and its end of the pipe with it: write to a reader only.
        if (input.Length > 0) await process.StandardInput.WriteLineAsync(input);
        process.StandardInput.Close();
        // The server inherits these pipes and never closes them: read what there is when the starter has ended.
        var said = new System.Text.StringBuilder();
        process.OutputDataReceived += (_, line) => said.AppendLine(line.Data);
        process.ErrorDataReceived += (_, line) => said.AppendLine(line.Data);
        process.BeginOutputReadLine();
        process.BeginErrorReadLine();
        while (!process.HasExited) await Task.Delay(20);
        if (process.ExitCode != 0 || program == "mktemp") await process.WaitForExitAsync();
        lock (said) return (process.ExitCode, said.ToString());
    }

    private static int FreePort()
    {
        using var listener = new TcpListener(IPAddress.Loopback, 0);
        listener.Start();
        return ((IPEndPoint)listener.LocalEndpoint).Port;
    }
}
