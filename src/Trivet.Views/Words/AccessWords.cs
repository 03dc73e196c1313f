using System.Collections.Immutable;

namespace Trivet.Views.Words;

/// <summary>How a root certificate is installed on one kind of device.</summary>
public sealed record InstallSteps(string Platform, ImmutableArray<string> Steps);

/// <summary>Texts about who may use a job from the network, and on which devices.</summary>
public sealed record AccessWords
{
    // The root certificate.
    public required string CertificateTitle { get; init; }
    public required string CertificateWhy { get; init; }
    /// <summary>How it reaches a device, and that the fingerprint has to be compared.</summary>
    public required string CertificateCompare { get; init; }
    public required string CertificateGet { get; init; }
    public required string CertificateNotOnNetwork { get; init; }
    public required string Fingerprint { get; init; }
    public required string CertificateName { get; init; }
    public required string CertificateEnds { get; init; }
    public required string CertificateFile { get; init; }
    public required string InstallFromMemory { get; init; }
    public required ImmutableArray<InstallSteps> Install { get; init; }
    public required string InstallAfter { get; init; }

    // The floor page, of itself.
    public required string FloorReady { get; init; }
    public required string FloorOffline { get; init; }
    public required string FloorOnlineOnly { get; init; }
    public required string FloorNotSecure { get; init; }
    public required string FloorNoWorker { get; init; }
    public required string FloorNotKept { get; init; }
}
