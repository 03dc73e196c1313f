using System.Collections.Immutable;

namespace Trivet.Views.Words;

/// <summary>English texts about who may use a job from the network.</summary>
internal static class EnglishAccess
{
    public static AccessWords Words { get; } = new()
    {
        CertificateTitle = "Root certificate",
        CertificateWhy = "A browser keeps the floor page on a device, so that it works without a network, only where it trusts the address. "
            + "This machine has made a root certificate of its own for that. It may vouch for names and addresses of local networks and of this desk, and for nothing else.",
        CertificateCompare = "Carry the file to the device yourself where you can. Fetched over the network it comes before the device can trust the address: "
            + "the browser warns, and is right to. Then compare the fingerprint on the device with the one shown here at the desk before you install it; where they differ, someone stands between. Type no PIN before.",
        CertificateGet = "Save the root certificate",
        CertificateNotOnNetwork = "The desk is not on the network. Start it with trivet desk JOB --network.",
        Fingerprint = "Fingerprint (SHA-256)",
        CertificateName = "Name",
        CertificateEnds = "Valid until",
        CertificateFile = "File",
        InstallFromMemory = "The steps are written from memory; names of menus differ between versions.",
        Install =
        [
            new("Android", [
                "Save the file on the device.",
                "Settings, Security and privacy, more settings, Encryption and credentials, Install a certificate, CA certificate. Accept the warning and choose the file.",
                "Settings shows it under Trusted credentials, User, with its fingerprint. Browsers that keep a list of their own may need it imported there too.",
            ]),
            new("iOS and iPadOS", [
                "Open the file in Safari, Mail or Files and allow the profile.",
                "Settings, General, VPN and device management: open the profile, compare the fingerprint under More details, and install it.",
                "Settings, General, About, Certificate trust settings: switch full trust on for it. Without this step nothing changes.",
                "Open the floor page in Safari and add it to the home screen; only then is what it keeps safe from being cleared.",
            ]),
            new("Windows", [
                "Open the file, choose Install certificate, then Current user.",
                "Choose the store yourself: Trusted root certification authorities. Compare the fingerprint where Windows asks (it may show the SHA-1 one: look at the certificate's details and compute SHA-256 with certutil -hashfile over the file in DER form, or compare the file itself).",
                "Start the browser again.",
            ]),
            new("macOS", [
                "Open the file: Keychain Access takes it into the login keychain.",
                "Open it there, compare the fingerprint, and under Trust set Secure Sockets Layer to Always trust.",
            ]),
            new("Linux", [
                "Chromium and its relatives: certutil -d sql:$HOME/.pki/nssdb -A -t C,, -n trivet -i trivet-local-root.crt (Debian: libnss3-tools).",
                "Firefox: Settings, Privacy and security, Certificates, View certificates, Authorities, Import; trust it for web sites.",
                "The whole machine, on Debian: copy it to /usr/local/share/ca-certificates and run update-ca-certificates.",
            ]),
        ],
        InstallAfter = "Then open the desk's address again. No warning may appear; the floor page says Ready to work offline when everything is in order, and Online only, with the reason, when it is not.",
        FloorReady = "Ready to work offline",
        FloorOffline = "Offline. All that is needed is on this device",
        FloorOnlineOnly = "Online only:",
        FloorNotSecure = "the browser does not trust this address. Install the desk's root certificate on this device.",
        FloorNoWorker = "the page is not on this device yet.",
        FloorNotKept = "the browser may clear what is kept here. Install the page on the device, or add it to the home screen.",
    };
}
