using System.Collections.Immutable;
using System.Formats.Asn1;
using System.Net;
using System.Security.Cryptography.X509Certificates;

namespace Trivet.Desk.Network;

/// <summary>What a root may vouch for: DNS names with all names below them, and ranges of addresses (RFC 5280, 4.2.1.10).</summary>
internal sealed record NameConstraints(ImmutableArray<string> Names, ImmutableArray<IPNetwork> Ranges)
{
    private const string Oid = "2.5.29.30";

    /// <summary>Names that no public authority gives out: multicast DNS (RFC 6762), home networks (RFC 8375), the private-use name
    /// "internal", and "lan", which many routers use (common practice, no source).</summary>
    private static readonly ImmutableArray<string> LocalNames = ["local", "home.arpa", "internal", "lan"];

    /// <summary>Private, link-local and loopback addresses (RFC 1918, RFC 3927, RFC 4193, RFC 4291).</summary>
    private static readonly ImmutableArray<IPNetwork> LocalRanges =
    [
        .. new[] { "10.0.0.0/8", "172.16.0.0/12", "192.168.0.0/16", "169.254.0.0/16", "127.0.0.0/8", "fc00::/7", "fe80::/10", "::1/128" }.Select(IPNetwork.Parse),
    ];

    private static readonly Asn1Tag Permitted = new(TagClass.ContextSpecific, 0, isConstructed: true);
    private static readonly Asn1Tag DnsName = new(TagClass.ContextSpecific, 2);
    private static readonly Asn1Tag Address = new(TagClass.ContextSpecific, 7);

    /// <summary>Local networks, this machine's own name, and the hosts given.</summary>
    public static NameConstraints Of(IReadOnlyList<string> hosts) => new(
        [.. LocalNames.Concat(hosts.Where(h => !IPAddress.TryParse(h, out _))).Append(MachineNames.OwnName).Where(n => n.Length > 0).Distinct(StringComparer.OrdinalIgnoreCase)],
        [.. LocalRanges.Concat(hosts.Select(h => IPAddress.TryParse(h, out var a) ? a : null).OfType<IPAddress>().Select(a => new IPNetwork(a, a.GetAddressBytes().Length * 8)))]);

    public bool Permit(string host) => IPAddress.TryParse(host, out var address)
        ? Ranges.Any(r => r.Contains(address))
        : Names.Any(n => host.Equals(n, StringComparison.OrdinalIgnoreCase) || host.EndsWith("." + n, StringComparison.OrdinalIgnoreCase));

    public X509Extension Extension()
    {
        var writer = new AsnWriter(AsnEncodingRules.DER);
        using (writer.PushSequence())
        using (writer.PushSequence(Permitted))
        {
            foreach (string name in Names)
                using (writer.PushSequence()) writer.WriteCharacterString(UniversalTagNumber.IA5String, name, DnsName);
            foreach (var range in Ranges)
                using (writer.PushSequence()) writer.WriteOctetString([.. range.BaseAddress.GetAddressBytes(), .. MaskOf(range)], Address);
        }
        return new X509Extension(Oid, writer.Encode(), critical: true);
    }

    public static NameConstraints Read(X509Certificate2 root)
    {
        var names = ImmutableArray.CreateBuilder<string>();
        var ranges = ImmutableArray.CreateBuilder<IPNetwork>();
        if (root.Extensions[Oid] is { } extension)
        {
            var permitted = new AsnReader(extension.RawData, AsnEncodingRules.DER).ReadSequence().ReadSequence(Permitted);
            while (permitted.HasData)
            {
                var one = permitted.ReadSequence();
                if (one.PeekTag().HasSameClassAndValue(DnsName)) names.Add(one.ReadCharacterString(UniversalTagNumber.IA5String, DnsName));
                else ranges.Add(RangeOf(one.ReadOctetString(Address)));
            }
        }
        return new(names.ToImmutable(), ranges.ToImmutable());
    }

    private static byte[] MaskOf(IPNetwork range)
    {
        byte[] mask = new byte[range.BaseAddress.GetAddressBytes().Length];
        for (int bit = 0; bit < range.PrefixLength; bit++) mask[bit / 8] |= (byte)(0x80 >> (bit % 8));
        return mask;
    }

    private static IPNetwork RangeOf(byte[] addressAndMask)
    {
        int half = addressAndMask.Length / 2;
        int prefix = addressAndMask.Skip(half).Sum(b => System.Numerics.BitOperations.PopCount(b));
        return new(new IPAddress(addressAndMask.AsSpan(0, half)), prefix);
    }
}
