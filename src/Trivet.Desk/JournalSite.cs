using System.Text;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Trivet.Desk.Access;
using Trivet.Store;

namespace Trivet.Desk;

/// <summary>Gives the journal as a file, with its photographs, and each photograph by its hash: only pixels that were encoded here, so always JPEG.</summary>
internal static class JournalSite
{
    public static void Map(WebApplication app, JobStore store)
    {
        app.Map(AccessTable.Journal, async (HttpContext context, CancellationToken stop) =>
        {
            context.Response.ContentType = "application/x-ndjson";
            context.Response.Headers.ContentDisposition = "attachment; filename=journal.jsonl";
            // Written as it is read: photographs may be many times what fits into memory.
            await using var text = new StreamWriter(context.Response.Body, new UTF8Encoding(false));
            await store.WriteJournalAsync(text, stop);
        });
        app.Map(AccessTable.Photograph, async (string hash, CancellationToken stop) => await store.PhotographAsync(hash, stop) switch
        {
            { Content: { } content } => Results.File(content, "image/jpeg"),
            { Content: null } => Results.StatusCode(StatusCodes.Status410Gone),
            null => Results.NotFound(),
        });
    }
}
