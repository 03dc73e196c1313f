using System.Collections.Immutable;
using System.Net;
using System.Security.Cryptography;
using System.Security.Cryptography.X509Certificates;

namespace Trivet.Desk.Network;

/// <summary>
/// The root certificate of this machine, made once and installed by people on their devices: it vouches for the desk's own certificate
/// and for nothing else. ECDSA on P-256 with SHA-256; it may sign no further authority (path length 0) and only for the names and
/// addresses in its critical name constraints (RFC 5280, 4.2.1.9 and 4.2.1.10), so that a stolen key can not pose as the rest of the web.
/// </summary>
public sealed class LocalRoot : IDisposable
{
    /// <summary>Certificate and private key, readable by its owner only.</summary>
    public const string SecretFile = "trivet-local-root.pem";
    /// <summary>The certificate alone, to be given to devices.</summary>
    public const string PublicFile = "trivet-local-root.crt";

    /// <summary>Installing a root by hand on every device is a nuisance, so it is made for long.</summary>
    public static readonly TimeSpan Life = TimeSpan.FromDays(3650);

    private LocalRoot(X509Certificate2 certificate, string folder) => (Certificate, Folder) = (certificate, folder);

    /// <summary>With its private key.</summary>
    internal X509Certificate2 Certificate { get; }

    public string Folder { get; }
    public string PublicPath => Path.Combine(Folder, PublicFile);
    public string SecretPath => Path.Combine(Folder, SecretFile);

    /// <summary>The certificate without its key, as text (RFC 7468).</summary>
    public string Pem => Certificate.ExportCertificatePem() + "\n";

    /// <summary>SHA-256 of the certificate, as devices show it: pairs of hexadecimal digits.</summary>
    public string Fingerprint => string.Join(' ', Certificate.GetCertHashString(HashAlgorithmName.SHA256).Chunk(2).Select(pair => new string(pair)));

    public string Name => Certificate.GetNameInfo(X509NameType.SimpleName, forIssuer: false);
    public DateTimeOffset Ends => new(Certificate.NotAfter.ToUniversalTime(), TimeSpan.Zero);

    /// <summary>The person's folder for settings, with a folder of ours in it; empty where the system names none.</summary>
    public static string UsualFolder
    {
        get
        {
            string settings = Environment.GetFolderPath(Environment.SpecialFolder.ApplicationData, Environment.SpecialFolderOption.DoNotVerify);
            return settings.Length == 0 ? "" : Path.Combine(settings, "trivet");
        }
    }

    /// <summary>True for a name or address that this root may vouch for.</summary>
    public bool Permits(string host) => NameConstraints.Read(Certificate).Permit(host);

    /// <summary>Reads the root that is there, or makes one.</summary>
    /// <param name="hosts">Names and addresses that a new root must permit besides those of local networks.</param>
    public static (LocalRoot? Root, DeskRefused? Refused) Open(string folder, IReadOnlyList<string> hosts, DateTimeOffset now)
    {
        if (folder.Length == 0)
            return (null, new("There is no folder for settings to keep the root certificate in.", "Set XDG_CONFIG_HOME (or HOME) to a folder that you alone may read."));
        string secret = Path.Combine(folder, SecretFile);
        try
        {
            if (!File.Exists(secret)) Make(folder, hosts, now);
            if (WhyTooOpen(secret) is { } open) return (null, open);
            string pem = File.ReadAllText(secret);
            var root = new LocalRoot(X509Certificate2.CreateFromPem(pem, pem), folder);
            if (root.Ends < now + LeafCertificate.Life)
            {
                string end = $"{root.Ends:yyyy-MM-dd}";
                root.Dispose();
                return (null, new($"The root certificate {secret} ends on {end}.", "Move it away; the desk then makes a new one, which has to be installed on every device again."));
            }
            if (!File.Exists(root.PublicPath)) File.WriteAllText(root.PublicPath, root.Pem);
            if (hosts.FirstOrDefault(h => !root.Permits(h)) is not { } strange) return (root, null);
            root.Dispose();
            return (null, new($"The root certificate {secret} was made without \"{strange}\" and may not vouch for it.",
                "Leave that name out, or move the file away: the desk then makes a new root with it, which has to be installed on every device again."));
        }
        catch (CryptographicException e)
        {
            return (null, new($"{secret} can not be read as a certificate with its key: {e.Message}", "Bring it back from a copy, or move it away: the desk then makes a new one, which has to be installed on every device again."));
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            return (null, new($"The root certificate in {folder} can not be read or made: {e.Message}", "Give yourself the right to read and write that folder."));
        }
    }

    public void Dispose() => Certificate.Dispose();

    private static void Make(string folder, IReadOnlyList<string> hosts, DateTimeOffset now)
    {
        const UnixFileMode Owner = UnixFileMode.UserRead | UnixFileMode.UserWrite;
        if (OperatingSystem.IsWindows()) Directory.CreateDirectory(folder);
        else Directory.CreateDirectory(folder, Owner | UnixFileMode.UserExecute);

        using var key = ECDsa.Create(ECCurve.NamedCurves.nistP256);
        string machine = MachineNames.OwnName;
        var request = new CertificateRequest($"CN=Trivet local root of {(machine.Length > 0 ? machine : "this machine")} {now:yyyy-MM-dd}", key, HashAlgorithmName.SHA256);
        request.CertificateExtensions.Add(new X509BasicConstraintsExtension(certificateAuthority: true, hasPathLengthConstraint: true, pathLengthConstraint: 0, critical: true));
        request.CertificateExtensions.Add(new X509KeyUsageExtension(X509KeyUsageFlags.KeyCertSign, critical: true));
        request.CertificateExtensions.Add(new X509SubjectKeyIdentifierExtension(request.PublicKey, critical: false));
        request.CertificateExtensions.Add(NameConstraints.Of(hosts).Extension());
        // Begun a day ago: the clock of a tablet may be behind.
        using var certificate = request.CreateSelfSigned(now.AddDays(-1), now + Life);

        // Written whole under another name, so that no one ever reads half of it, and of two programs that start at once the first wins.
        string half = Path.Combine(folder, $"{SecretFile}.{Guid.NewGuid():n}");
        var options = new FileStreamOptions { Mode = FileMode.CreateNew, Access = FileAccess.Write };
        if (!OperatingSystem.IsWindows()) options.UnixCreateMode = Owner;
        using (var writer = new StreamWriter(half, options))
        {
            writer.WriteLine(certificate.ExportCertificatePem());
            writer.WriteLine(key.ExportPkcs8PrivateKeyPem());
        }
        try
        {
            File.Move(half, Path.Combine(folder, SecretFile), overwrite: false);
            File.WriteAllText(Path.Combine(folder, PublicFile), certificate.ExportCertificatePem() + "\n");
        }
        catch (IOException) when (File.Exists(Path.Combine(folder, SecretFile)))
        {
            File.Delete(half);
        }
    }

    /// <summary>On Windows the folder of the person's settings is closed to other users by the system; elsewhere the file's own mode says it.</summary>
    private static DeskRefused? WhyTooOpen(string secret)
    {
        const UnixFileMode Others = UnixFileMode.GroupRead | UnixFileMode.GroupWrite | UnixFileMode.OtherRead | UnixFileMode.OtherWrite;
        return !OperatingSystem.IsWindows() && (File.GetUnixFileMode(secret) & Others) != 0
            ? new($"Others on this machine may read or change {secret}, the private key of the root certificate.",
                $"Find out who could; then close it with: chmod 600 \"{secret}\", or move it away for a new one.")
            : null;
    }
}
