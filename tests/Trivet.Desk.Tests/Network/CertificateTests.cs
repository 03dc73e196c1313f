using System.Net;
using System.Security.Cryptography.X509Certificates;

namespace Trivet.Desk.Network;

/// <summary>The root and the leaf, held against the platform's own verifier of chains (OpenSSL on Linux): RFC 5280 as others read it.</summary>
public sealed class CertificateTests : IDisposable
{
    private static readonly DateTimeOffset Day = new(2030, 5, 6, 12, 0, 0, TimeSpan.Zero);
    private readonly string _folder = Path.Combine(Directory.CreateTempSubdirectory("trivet-root-").FullName, "settings");

    public void Dispose() => Directory.Delete(Path.GetDirectoryName(_folder)!, recursive: true);

    [Fact]
    public void The_root_is_made_once_and_its_key_is_its_owners_alone()
    {
        string first;
        using (var root = Open()) first = root.Fingerprint;
        using (var again = Open())
        {
            Assert.Equal(first, again.Fingerprint);
            Assert.DoesNotContain("PRIVATE", again.Pem, StringComparison.Ordinal);
            Assert.DoesNotContain("PRIVATE", File.ReadAllText(again.PublicPath), StringComparison.Ordinal);
            Assert.Contains("PRIVATE", File.ReadAllText(again.SecretPath), StringComparison.Ordinal);
            if (OperatingSystem.IsWindows()) return;
            Assert.Equal(UnixFileMode.UserRead | UnixFileMode.UserWrite, File.GetUnixFileMode(again.SecretPath));
            Assert.Equal(UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.UserExecute, File.GetUnixFileMode(_folder));
        }
    }

    [Fact]
    public void Many_that_start_at_once_share_one_root()
    {
        var prints = new System.Collections.Concurrent.ConcurrentBag<string>();
        Parallel.For(0, 8, _ =>
        {
            using var root = Open();
            prints.Add(root.Fingerprint);
        });
        Assert.Single(prints.Distinct());
        Assert.Equal(2, Directory.GetFiles(_folder).Length);
    }

    [Fact]
    public void A_key_that_others_may_read_is_not_used()
    {
        Assert.SkipWhen(OperatingSystem.IsWindows(), "Windows keeps the person's settings closed by folder, not by mode.");
        Open().Dispose();
        if (!OperatingSystem.IsWindows()) File.SetUnixFileMode(Path.Combine(_folder, LocalRoot.SecretFile), UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.OtherRead);
        var (root, refused) = LocalRoot.Open(_folder, [], Day);
        Assert.Null(root);
        Assert.Contains("chmod 600", refused!.Remedy, StringComparison.Ordinal);
    }

    [Fact]
    public void A_file_that_is_no_certificate_is_refused_with_a_way_out()
    {
        Directory.CreateDirectory(_folder);
        string secret = Path.Combine(_folder, LocalRoot.SecretFile);
        File.WriteAllText(secret, "-----BEGIN CERTIFICATE-----\nAAAA\n-----END CERTIFICATE-----\n");
        if (!OperatingSystem.IsWindows()) File.SetUnixFileMode(secret, UnixFileMode.UserRead);
        var (root, refused) = LocalRoot.Open(_folder, [], Day);
        Assert.Null(root);
        Assert.Contains("move it away", refused!.Remedy, StringComparison.Ordinal);
        Assert.NotNull(LocalRoot.Open("", [], Day).Refused);
    }

    [Fact]
    public void A_root_near_its_end_and_a_name_it_may_not_vouch_for_are_refused()
    {
        Open("desk.example").Dispose();
        Assert.Contains("ends on", LocalRoot.Open(_folder, [], Day + LocalRoot.Life).Refused!.Problem, StringComparison.Ordinal);
        var (_, refused) = LocalRoot.Open(_folder, ["desk.example", "other.example"], Day);
        Assert.Contains("other.example", refused!.Problem, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("desk.example", true)]
    [InlineData("a.desk.example", true)]
    [InlineData("notdesk.example", false)]
    [InlineData("example", false)]
    [InlineData("hall.local", true)]
    [InlineData("192.168.4.20", true)]
    [InlineData("fd12::5", true)]
    [InlineData("203.0.113.7", true)]
    [InlineData("203.0.113.8", false)]
    [InlineData("8.8.8.8", false)]
    [InlineData("2001:db8::1", false)]
    public void A_chain_holds_only_for_what_the_root_permits(string host, bool permitted)
    {
        using var root = Open("desk.example", "203.0.113.7");
        Assert.Equal(permitted, root.Permits(host));
        // A leaf for the host, signed whatever our own rule says: the platform's verifier must come to the same answer.
        using var key = System.Security.Cryptography.ECDsa.Create(System.Security.Cryptography.ECCurve.NamedCurves.nistP256);
        var request = new CertificateRequest("CN=x", key, System.Security.Cryptography.HashAlgorithmName.SHA256);
        var names = new SubjectAlternativeNameBuilder();
        if (IPAddress.TryParse(host, out var address)) names.AddIpAddress(address);
        else names.AddDnsName(host);
        request.CertificateExtensions.Add(names.Build());
        using var leaf = request.Create(root.Certificate, Day, Day.AddDays(1), [1, 2, 3]);
        Assert.Equal(permitted, Verified(leaf, root));
    }

    [Fact]
    public void The_root_signs_no_further_authority()
    {
        using var root = Open();
        using var key = System.Security.Cryptography.ECDsa.Create(System.Security.Cryptography.ECCurve.NamedCurves.nistP256);
        var request = new CertificateRequest("CN=below", key, System.Security.Cryptography.HashAlgorithmName.SHA256);
        request.CertificateExtensions.Add(new X509BasicConstraintsExtension(true, false, 0, true));
        using var below = request.Create(root.Certificate, Day, Day.AddDays(1), [1]).CopyWithPrivateKey(key);
        var leafRequest = new CertificateRequest("CN=leaf", key, System.Security.Cryptography.HashAlgorithmName.SHA256);
        using var leaf = leafRequest.Create(below, Day, Day.AddHours(5), [2]);
        Assert.False(Verified(leaf, root, below));
    }

    [Fact]
    public void The_leaf_serves_the_hosts_given_and_is_renewed_before_its_end()
    {
        using var root = Open("desk.example");
        var clock = new SetClock(Day);
        using var leaf = new LeafCertificate(root, ["desk.example", "192.168.7.7"], clock);
        var first = leaf.Current;
        Assert.True(Verified(first, root));
        Assert.True(first.MatchesHostname("desk.example"));
        Assert.True(first.MatchesHostname("192.168.7.7"));
        Assert.False(first.MatchesHostname("other.example"));
        Assert.Equal("desk.example", leaf.Names[0]);
        Assert.True(first.NotAfter - first.NotBefore < TimeSpan.FromDays(40));

        clock.Now = Day.AddDays(15);
        Assert.Same(first, leaf.Current);
        clock.Now = Day.AddDays(21);
        Assert.NotEqual(first.Thumbprint, leaf.Current.Thumbprint);
        Assert.True(Verified(leaf.Current, root, at: clock.Now));
    }

    [Theory]
    [InlineData("desk.example", true)]
    [InlineData("desk", true)]
    [InlineData("192.168.1.2", true)]
    [InlineData("fd00::2", true)]
    [InlineData("https://desk", false)]
    [InlineData("desk:5174", false)]
    [InlineData("*.example", false)]
    [InlineData("-desk", false)]
    [InlineData("1.2.3", false)]
    [InlineData("", false)]
    public void A_host_is_a_name_or_an_address(string host, bool fit) => Assert.Equal(fit, MachineNames.WhyNot(host) is null);

    private LocalRoot Open(params string[] hosts)
    {
        var (root, refused) = LocalRoot.Open(_folder, hosts, Day);
        Assert.Null(refused);
        return root!;
    }

    private static bool Verified(X509Certificate2 leaf, LocalRoot root, X509Certificate2? between = null, DateTimeOffset? at = null)
    {
        using var chain = new X509Chain();
        chain.ChainPolicy.TrustMode = X509ChainTrustMode.CustomRootTrust;
        chain.ChainPolicy.RevocationMode = X509RevocationMode.NoCheck;
        chain.ChainPolicy.VerificationTime = (at ?? Day.AddHours(1)).UtcDateTime;
        chain.ChainPolicy.CustomTrustStore.Add(X509CertificateLoader.LoadCertificate(root.Certificate.RawData));
        if (between is not null) chain.ChainPolicy.ExtraStore.Add(between);
        return chain.Build(leaf);
    }
}

/// <summary>A clock that stands until it is set.</summary>
internal sealed class SetClock(DateTimeOffset now) : TimeProvider
{
    public DateTimeOffset Now { get; set; } = now;

    public override DateTimeOffset GetUtcNow() => Now;
}
