using System.Collections.Immutable;

namespace Trivet.Views.Words;

/// <summary>How a root certificate is installed on one kind of device.</summary>
public sealed record InstallSteps(string Platform, ImmutableArray<string> Steps);

/// <summary>Texts about who may use a job from the network, and on which devices.</summary>
public sealed record AccessWords
{
    /// <summary>BCP 47 tag.</summary>
    public required string Tag { get; init; }

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

    // People and devices, at the desk and on the device. {time} {wrong}
    public required string AccessTitle { get; init; }
    public required string PairDesk { get; init; }
    public required string PairNote { get; init; }
    public required string ShowCode { get; init; }
    public required string PairHow { get; init; }
    public required string CodeUntil { get; init; }
    public required string Withdraw { get; init; }
    public required string QrLabel { get; init; }
    // Labels of cabinet doors. {address}
    public required string DoorLabels { get; init; }
    public required string DoorLabelsWhy { get; init; }
    public required string DoorLabelsAddress { get; init; }
    public required string DoorLabelsPort { get; init; }
    public required string DoorLabelsNone { get; init; }
    public required string DoorLabelsNoCell { get; init; }
    public required string DoorLabelFile { get; init; }
    public required string Devices { get; init; }
    public required string NoDevices { get; init; }
    public required string HeadId { get; init; }
    public required string HeadPaired { get; init; }
    public required string Revoke { get; init; }
    public required string RevokedOn { get; init; }
    public required string PeopleTitle { get; init; }
    public required string AddPerson { get; init; }
    public required string HeadName { get; init; }
    public required string HeadPerson { get; init; }
    public required string Pin { get; init; }
    public required string NewPin { get; init; }
    public required string SetPin { get; init; }
    public required string PinNote { get; init; }
    public required string PinUnfit { get; init; }
    public required string IdTaken { get; init; }
    public required string GoneAlready { get; init; }
    public required string EndPerson { get; init; }
    public required string EndAndForget { get; init; }
    public required string Keep { get; init; }
    public required string LeftOn { get; init; }
    public required string NameForgotten { get; init; }
    public required string RolesTitle { get; init; }
    public required string AtTheMachineNote { get; init; }
    public required string PairTitle { get; init; }
    public required string PairWhy { get; init; }
    public required string Code { get; init; }
    public required string DeviceName { get; init; }
    public required string DeviceNameNote { get; init; }
    public required string Pair { get; init; }
    public required string CodeWrong { get; init; }
    public required string SignInTitle { get; init; }
    public required string SignOut { get; init; }
    public required string SignedInAs { get; init; }
    public required string NotPaired { get; init; }
    public required string NobodyYet { get; init; }
    public required string PinWrong { get; init; }
    public required string LockedOut { get; init; }
    public required string OnDevice { get; init; }
    public required string NoNeedHere { get; init; }
    public required string OpenFloor { get; init; }
    public required string OpenDesk { get; init; }
    public required string RefusedTitle { get; init; }
    public required string RefusedWhy { get; init; }
    public required string TooOften { get; init; }
    /// <summary>In the order of the desk's roles: look, record, release, design.</summary>
    public required ImmutableArray<string> Roles { get; init; }
    /// <summary>In the order of what the desk's table of access names.</summary>
    public required ImmutableArray<string> Acts { get; init; }

    public static ImmutableArray<AccessWords> All => [EnglishAccess.Words, GermanAccess.Words];

    /// <param name="wanted">BCP 47 tags, the best first, as a browser tells them (RFC 9110, 12.5.4): <c>de-AT</c> is answered in German.</param>
    /// <returns>English where none of them is spoken.</returns>
    public static AccessWords In(params IEnumerable<string> wanted) => Spoken.Of(All, w => w.Tag, wanted);
}
