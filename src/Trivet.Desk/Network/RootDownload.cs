using System.Text;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Trivet.Desk.Access;

namespace Trivet.Desk.Network;

/// <summary>Gives the root certificate, never its key, to whoever asks: it is what every handshake shows anyway.</summary>
internal static class RootDownload
{
    public static void Map(WebApplication app, LocalRoot root) =>
        app.Map(AccessTable.RootCertificate, () => Results.File(Encoding.ASCII.GetBytes(root.Pem), "application/x-x509-ca-cert", LocalRoot.PublicFile));
}
