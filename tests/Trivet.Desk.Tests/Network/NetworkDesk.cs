using System.Net;
using System.Net.Security;
using System.Net.Sockets;
using System.Security.Cryptography.X509Certificates;
using System.Text;
using Trivet.Desk.Network;
using Trivet.Store;

namespace Trivet.Desk;

/// <summary>
/// The whole desk in this process, with both doors open on free ports, over a job folder and a root certificate of its own. Clients trust that root
/// and nothing else: a certificate that did not follow from it would fail every test.
/// </summary>
internal sealed class NetworkDesk : IAsyncDisposable
{
    private readonly CancellationTokenSource _stop = new();
    private readonly string _folder;
    private readonly Task<DeskRefused?> _running;
    private readonly List<HttpClient> _clients = [];

    private NetworkDesk(string folder, Task<DeskRefused?> running, DeskAddresses at, CancellationTokenSource stop) =>
        (_folder, _running, At, _stop) = (folder, running, at, stop);

    public DeskAddresses At { get; }

    public Uri Network => At.Network[0];

    public string Job => Path.Combine(_folder, "job");

    /// <param name="with">Changes the options the desk is started with.</param>
    public static async Task<NetworkDesk> StartAsync(Func<DeskOptions, DeskOptions>? with = null)
    {
        string folder = Directory.CreateTempSubdirectory("trivet-network-").FullName;
        string job = Directory.CreateDirectory(Path.Combine(folder, "job")).FullName;
        await using (var store = Assert.IsType<OpenOutcome.Opened>(await JobStore.OpenAsync(new JobLocation.Folder(job))).Store)
            Assert.IsType<SaveOutcome.Saved>(await store.CreateAsync("lids", OneCellJob.Sample("jar-lids"), new Stamp("ada", DateTimeOffset.UtcNow), "first"));
        var stop = new CancellationTokenSource();
        var listening = new TaskCompletionSource<DeskAddresses>(TaskCreationOptions.RunContinuationsAsynchronously);
        var options = new DeskOptions(job)
        {
            Port = 0,
            Person = "ada",
            Network = new() { Port = 0, Hosts = ["localhost"], Folder = Path.Combine(folder, "settings") },
            Listening = listening.SetResult,
        };
        var running = DeskHost.RunAsync(with?.Invoke(options) ?? options, stop.Token);
        var first = await Task.WhenAny(running, listening.Task);
        if (first == running) Assert.Fail((await running)?.ToString());
        return new(folder, running, await listening.Task, stop);
    }

    /// <summary>A device's browser: keeps its cookies, follows no redirect, trusts the desk's root alone.</summary>
    public HttpClient Client(CookieContainer? cookies = null) => Client(Network, cookies);

    /// <summary>A browser on the machine itself.</summary>
    public HttpClient AtTheMachine() => Client(At.Desk, null);

    private HttpClient Client(Uri address, CookieContainer? cookies)
    {
        var handler = new SocketsHttpHandler
        {
            AllowAutoRedirect = false,
            CookieContainer = cookies ?? new(),
            SslOptions = new() { CertificateChainPolicy = Trust() },
        };
        var client = new HttpClient(handler) { BaseAddress = address };
        _clients.Add(client);
        return client;
    }

    /// <summary>Sends the bytes of a request as they are over a trusted connection, and gives the whole answer as text.</summary>
    public async Task<string> RawAsync(string request, CancellationToken stop)
    {
        using var socket = new TcpClient();
        await socket.ConnectAsync(Network.Host, Network.Port, stop);
        await using var secure = new SslStream(socket.GetStream());
        await secure.AuthenticateAsClientAsync(new SslClientAuthenticationOptions { TargetHost = Network.Host, CertificateChainPolicy = Trust() }, stop);
        await secure.WriteAsync(Encoding.Latin1.GetBytes(request), stop);
        using var reader = new StreamReader(secure, Encoding.Latin1);
        return await reader.ReadToEndAsync(stop);
    }

    private X509ChainPolicy Trust()
    {
        var trust = new X509ChainPolicy { TrustMode = X509ChainTrustMode.CustomRootTrust, RevocationMode = X509RevocationMode.NoCheck };
        trust.CustomTrustStore.Add(X509CertificateLoader.LoadCertificateFromFile(At.Root!.PublicPath));
        return trust;
    }

    public async ValueTask DisposeAsync()
    {
        foreach (var client in _clients) client.Dispose();
        await _stop.CancelAsync();
        try
        {
            await _running;
        }
        catch (OperationCanceledException)
        {
            // Asked for just now.
        }
        _stop.Dispose();
        Directory.Delete(_folder, recursive: true);
    }
}
