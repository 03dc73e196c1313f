using System.Collections.Immutable;
using System.Security.Authentication;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.Server.Kestrel.Core;

namespace Trivet.Desk.Network;

/// <summary>The door to the network: its root, its certificate, and the port it listens on.</summary>
public sealed class NetworkDoor : IDisposable
{
    private readonly LeafCertificate _leaf;
    private readonly NetworkOptions _options;

    private NetworkDoor(LocalRoot root, NetworkOptions options, TimeProvider clock) => (Root, _options, _leaf, Port) = (root, options, new(root, options.Hosts, clock), options.Port);

    public LocalRoot Root { get; }

    /// <summary>Names and addresses it answers to at this moment.</summary>
    public ImmutableArray<string> Names => _leaf.Names;

    /// <summary>The port it listens on; before it does, the one it was told, 0 for a free one.</summary>
    public int Port { get; internal set; }

    /// <summary>The next start listens on the same port: what is printed now still leads here then.</summary>
    public bool PortLasts => _options.Port != 0;

    /// <summary>The address a device is told first.</summary>
    public Uri Address => AddressOf(Names[0]);

    /// <summary>Opens the root, which is made if there is none yet; nothing listens yet.</summary>
    public static (NetworkDoor? Door, DeskRefused? Refused) Open(NetworkOptions options, TimeProvider clock)
    {
        var (root, refused) = LocalRoot.Open(options.Folder, options.Hosts, clock.GetUtcNow());
        if (root is null) return (null, refused);
        var door = new NetworkDoor(root, options, clock);
        if (!door.Names.IsEmpty) return (door, null);
        door.Dispose();
        return (null, new("This machine has no name and no address on a network that its root certificate may vouch for.", "Give one: --host desk.example"));
    }

    internal void Listen(KestrelServerOptions kestrel) => kestrel.ListenAnyIP(_options.Port, listen => listen.UseHttps(https =>
    {
        https.SslProtocols = SslProtocols.Tls12 | SslProtocols.Tls13;
        https.ServerCertificateSelector = (_, _) => _leaf.Current;
    }));

    public Uri AddressOf(string host) => new($"https://{Doors.InAddress(host)}:{Port.ToString(System.Globalization.CultureInfo.InvariantCulture)}/");

    public void Dispose()
    {
        _leaf.Dispose();
        Root.Dispose();
    }
}
