using System.Collections.Immutable;
using System.Net;
using System.Security.Cryptography;
using System.Security.Cryptography.X509Certificates;

namespace Trivet.Desk.Network;

/// <summary>
/// The certificate the desk shows on the network, signed by the local root: made anew at each start, when the machine's names or addresses
/// change, and when its end comes near. Its key is never written down. Safe for concurrent use.
/// </summary>
internal sealed class LeafCertificate(LocalRoot root, IReadOnlyList<string> hosts, TimeProvider clock) : IDisposable
{
    /// <summary>Short, since nobody has to install it. Phones refuse more than 825 days under a root of one's own (from memory).</summary>
    public static readonly TimeSpan Life = TimeSpan.FromDays(30);

    private static readonly TimeSpan RenewedBefore = TimeSpan.FromDays(10);
    private static readonly TimeSpan BetweenLooks = TimeSpan.FromMinutes(1);

    private readonly Lock _gate = new();
    private readonly List<X509Certificate2> _made = [];
    private State? _state;

    /// <summary>What it vouches for now: the host given first stands first. Also the only hosts that the network's door answers to.</summary>
    public ImmutableArray<string> Names => Now().Names;

    public X509Certificate2 Current => Now().Certificate;

    private State Now()
    {
        var now = clock.GetUtcNow();
        lock (_gate)
        {
            if (_state is { } fresh && now - fresh.Looked < BetweenLooks && now >= fresh.Looked) return fresh;
            ImmutableArray<string> names = [.. MachineNames.Of(hosts).Where(root.Permits)];
            var kept = _state is { } held && held.Names.SequenceEqual(names) && held.Certificate.NotAfter.ToUniversalTime() - now.UtcDateTime > RenewedBefore ? held.Certificate : Make(names, now);
            _state = new(kept, names, now);
            return _state;
        }
    }

    private X509Certificate2 Make(ImmutableArray<string> names, DateTimeOffset now)
    {
        using var key = ECDsa.Create(ECCurve.NamedCurves.nistP256);
        var alternatives = new SubjectAlternativeNameBuilder();
        foreach (string name in names)
            if (IPAddress.TryParse(name, out var address)) alternatives.AddIpAddress(address);
            else alternatives.AddDnsName(name);
        // Whom it is for stands in the alternatives; the subject is for people who look at it (RFC 9525, 2).
        var request = new CertificateRequest("CN=Trivet desk", key, HashAlgorithmName.SHA256);
        request.CertificateExtensions.Add(new X509BasicConstraintsExtension(false, false, 0, critical: true));
        request.CertificateExtensions.Add(new X509KeyUsageExtension(X509KeyUsageFlags.DigitalSignature, critical: true));
        request.CertificateExtensions.Add(new X509EnhancedKeyUsageExtension([new Oid("1.3.6.1.5.5.7.3.1", "server authentication")], critical: false));
        request.CertificateExtensions.Add(new X509SubjectKeyIdentifierExtension(request.PublicKey, critical: false));
        request.CertificateExtensions.Add(X509AuthorityKeyIdentifierExtension.CreateFromCertificate(root.Certificate, includeKeyIdentifier: true, includeIssuerAndSerial: false));
        request.CertificateExtensions.Add(alternatives.Build());
        byte[] serial = RandomNumberGenerator.GetBytes(16);
        serial[0] &= 0x7f;
        using var signed = request.Create(root.Certificate, now.AddHours(-1), now + Life, serial);
        using var whole = signed.CopyWithPrivateKey(key);
        // Windows hands out a connection only with a key that has gone through this form.
        var made = X509CertificateLoader.LoadPkcs12(whole.Export(X509ContentType.Pkcs12), password: null);
        // Earlier ones may still be in a handshake; a few stay until the end.
        _made.Add(made);
        return made;
    }

    public void Dispose()
    {
        foreach (var certificate in _made) certificate.Dispose();
    }

    private sealed record State(X509Certificate2 Certificate, ImmutableArray<string> Names, DateTimeOffset Looked);
}
