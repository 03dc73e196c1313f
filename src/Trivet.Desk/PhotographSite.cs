using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Trivet.Desk.Access;
using Trivet.Store;

namespace Trivet.Desk;

/// <summary>Gives the photographs of the journal by their hash: only pixels that were encoded here, so always JPEG.</summary>
internal static class PhotographSite
{
    public static void Map(WebApplication app, JobStore store) =>
        app.Map(AccessTable.Photograph, async (string hash, CancellationToken stop) => await store.PhotographAsync(hash, stop) switch
        {
            { Content: { } content } => Results.File(content, "image/jpeg"),
            { Content: null } => Results.StatusCode(StatusCodes.Status410Gone),
            null => Results.NotFound(),
        });
}
