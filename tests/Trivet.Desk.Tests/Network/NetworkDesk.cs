using System.Net;
using System.Net.Http.Json;
using System.Net.Security;
using System.Net.Sockets;
using System.Security.Cryptography.X509Certificates;
using System.Text;
using System.Text.Json;
using System.Text.RegularExpressions;
using Microsoft.AspNetCore.Builder;
using Microsoft.Extensions.DependencyInjection;
using Trivet.Desk.Access;
using Trivet.Desk.Network;
using Trivet.Store;

namespace Trivet.Desk;

/// <summary>
/// The whole desk in this process, with both doors open on free ports, over a job folder and a root certificate of its own. Clients trust that root
/// and nothing else: a certificate that did not follow from it would fail every test.
/// </summary>
internal sealed class NetworkDesk : IAsyncDisposable
{
    private readonly string _folder;
    private readonly WebApplication _app;
    private readonly JobStore _store;
    private readonly NetworkDoor _door;
    private readonly List<HttpClient> _clients = [];

    private NetworkDesk(string folder, WebApplication app, JobStore store, NetworkDoor door) => (_folder, _app, _store, _door, At) = (folder, app, store, door, DeskHost.AddressesOf(app, door));

    public DeskAddresses At { get; }

    public Uri Network => At.Network[0];

    public JobStore Store => _store;

    public IServiceProvider Services => _app.Services;

    public SetClock Clock => (SetClock)Services.GetRequiredService<TimeProvider>();

    /// <param name="with">Changes the options the desk is started with. By default nothing is counted that the network asks.</param>
    public static async Task<NetworkDesk> StartAsync(Func<DeskOptions, DeskOptions>? with = null)
    {
        string folder = Directory.CreateTempSubdirectory("trivet-network-").FullName;
        string job = Directory.CreateDirectory(Path.Combine(folder, "job")).FullName;
        var store = Assert.IsType<OpenOutcome.Opened>(await JobStore.OpenAsync(new JobLocation.Folder(job))).Store;
        Assert.IsType<SaveOutcome.Saved>(await store.CreateAsync("lids", OneCellJob.Sample("jar-lids"), new Stamp("ada", DateTimeOffset.UtcNow), "first"));
        var options = new DeskOptions(job)
        {
            Port = 0,
            Person = "ada",
            Network = new() { Port = 0, Hosts = ["localhost"], Folder = Path.Combine(folder, "settings") },
            Clock = new SetClock(DateTimeOffset.UtcNow),
            Limits = new(100_000, 100_000, 100_000),
        };
        options = with?.Invoke(options) ?? options;
        var (door, refused) = NetworkDoor.Open(options.Network!, options.Clock);
        Assert.Null(refused);
        var app = DeskHost.Build(options, store, new([]), door);
        await app.StartAsync();
        return new(folder, app, store, door!);
    }

    /// <summary>A device that has been paired by the code of the desk, as its browser does it.</summary>
    public async Task<HttpClient> PairedAsync(string name = "tablet", CookieContainer? cookies = null)
    {
        var client = Client(cookies);
        using var answer = await PairAsync(client, Services.GetRequiredService<PairingCodes>().Make("ada").Text, name);
        Assert.Equal(HttpStatusCode.Redirect, answer.StatusCode);
        return client;
    }

    public static async Task<HttpResponseMessage> PairAsync(HttpClient client, string code, string name = "tablet") =>
        await PostFormAsync(client, "pair", ("_handler", "pair"), ("Code", code), ("DeviceName", name));

    /// <summary>Fetches a page and sends its form back with these fields, as a browser does.</summary>
    public static async Task<HttpResponseMessage> PostFormAsync(HttpClient client, string page, params (string Name, string Value)[] fields)
    {
        string token = Regex.Match(await client.GetStringAsync(page), "name=\"__RequestVerificationToken\" value=\"([^\"]+)\"").Groups[1].Value;
        using var form = new FormUrlEncodedContent([.. fields.Select(f => KeyValuePair.Create(f.Name, f.Value)), KeyValuePair.Create("__RequestVerificationToken", token)]);
        return await client.PostAsync(page, form);
    }

    /// <summary>A person signed in on a device of their own.</summary>
    public Task<HttpClient> SignedInAsync(string id, params Role[] roles) => SignedInAsync(id, new CookieContainer(), roles);

    public async Task<HttpClient> SignedInAsync(string id, CookieContainer cookies, params Role[] roles)
    {
        Assert.IsType<AccessOutcome.Kept>(await Services.GetRequiredService<People>().AddAsync(id, id.ToUpperInvariant(), Pin, roles));
        var client = await PairedAsync($"tablet of {id}", cookies);
        using var answer = await SignInAsync(client, id, Pin);
        Assert.Equal(HttpStatusCode.NoContent, answer.StatusCode);
        return client;
    }

    public const string Pin = "480271";

    public static async Task<HttpResponseMessage> SignInAsync(HttpClient client, string person, string pin)
    {
        using var request = new HttpRequestMessage(HttpMethod.Post, FloorApi.Root[1..] + "/sign-in") { Content = JsonContent.Create(new { person, pin }) };
        request.Headers.Add("RequestVerificationToken", (await MeAsync(client)).GetProperty("token").GetString());
        return await client.SendAsync(request);
    }

    public static async Task<JsonElement> MeAsync(HttpClient client) => JsonDocument.Parse(await client.GetStringAsync(FloorApi.Root[1..] + "/me")).RootElement;

    /// <summary>A device's browser: keeps its cookies, follows no redirect, trusts the desk's root alone.</summary>
    public HttpClient Client(CookieContainer? cookies = null) => Client(Network, cookies);

    /// <summary>A browser on the machine itself.</summary>
    public HttpClient AtTheMachine() => Client(At.Desk, null);

    /// <summary>What carries a client's requests, with its cookies: for a connection that stays open.</summary>
    public SocketsHttpHandler Handler(CookieContainer cookies) => new() { AllowAutoRedirect = false, CookieContainer = cookies, SslOptions = new() { CertificateChainPolicy = Trust() } };

    private HttpClient Client(Uri address, CookieContainer? cookies)
    {
        var client = new HttpClient(Handler(cookies ?? new())) { BaseAddress = address };
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
        await _app.StopAsync();
        await _app.DisposeAsync();
        _door.Dispose();
        await _store.DisposeAsync();
        for (int tries = 0; ; tries++)
        {
            try
            {
                Directory.Delete(_folder, recursive: true);
                return;
            }
            // The last read of a page that was left may still be at the database's files.
            catch (IOException) when (tries < 50)
            {
                await Task.Delay(100);
            }
        }
    }
}
