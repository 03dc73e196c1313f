using System.Collections.Immutable;
using System.Net;
using System.Net.NetworkInformation;
using System.Net.Sockets;
using System.Text.RegularExpressions;

namespace Trivet.Desk.Network;

/// <summary>By which names and addresses devices may reach this machine.</summary>
public static partial class MachineNames
{
    /// <summary>The machine's name in lower case; empty where it is no name that a certificate could hold.</summary>
    public static string OwnName
    {
        get
        {
            string name = Dns.GetHostName().ToLowerInvariant();
            return IsName(name) ? name : "";
        }
    }

    /// <summary>Why a host typed by a person can not stand in a certificate; null where it can.</summary>
    public static string? WhyNot(string host) => IsName(host) || IsAddress(host) ? null
        : $"'{host}' is neither a host name nor an address. Write it without https:// and without a port: desk.example or 192.168.4.20.";

    /// <summary>The given hosts first, then the machine's own name, its name in multicast DNS, and the addresses of its networks as they are now.</summary>
    internal static ImmutableArray<string> Of(IReadOnlyList<string> hosts)
    {
        string own = OwnName;
        string[] local = own.Length == 0 ? [] : own.Contains('.', StringComparison.Ordinal) ? [own] : [own, own + ".local"];
        return [.. hosts.Select(h => h.ToLowerInvariant()).Concat(local).Concat(Addresses()).Distinct(StringComparer.Ordinal)];
    }

    private static IEnumerable<string> Addresses() => NetworkInterface.GetAllNetworkInterfaces()
        .Where(i => i.OperationalStatus == OperationalStatus.Up && i.NetworkInterfaceType != NetworkInterfaceType.Loopback)
        .SelectMany(i => i.GetIPProperties().UnicastAddresses).Select(a => a.Address)
        // A link-local address of version 6 needs a zone, which an address line does not take.
        .Where(a => a.AddressFamily is AddressFamily.InterNetwork or AddressFamily.InterNetworkV6 && !a.IsIPv6LinkLocal)
        .Select(a => a.ToString()).Order(StringComparer.Ordinal);

    /// <summary>Written in full: "1.2.3" would be read as 1.2.0.3.</summary>
    private static bool IsAddress(string host) => IPAddress.TryParse(host, out var address) && string.Equals(address.ToString(), host, StringComparison.OrdinalIgnoreCase)
        && !host.Contains('%', StringComparison.Ordinal);

    private static bool IsName(string host) => host.Length is > 0 and <= 253 && Name().IsMatch(host);

    // Labels of 1 to 63 letters, digits and inner hyphens (RFC 1123, 2.1); the last may not be all digits, which would be half an address.
    [GeneratedRegex(@"^(?:[A-Za-z0-9](?:[A-Za-z0-9-]{0,61}[A-Za-z0-9])?\.)*(?=[A-Za-z0-9-]*[A-Za-z])[A-Za-z0-9](?:[A-Za-z0-9-]{0,61}[A-Za-z0-9])?\z", RegexOptions.CultureInvariant)]
    private static partial Regex Name();
}
