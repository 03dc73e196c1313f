using System.Text.Json;
using Microsoft.AspNetCore.Antiforgery;
using Microsoft.AspNetCore.Authentication;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Trivet.Desk.Network;
using Trivet.Desk.Sync;
using Trivet.Store;

namespace Trivet.Desk.Access;

/// <summary>
/// What the floor page asks of the desk, as JSON. The number in the address is that of its form: a change that an older page would not understand gets
/// the next one, and the older is kept beside it. Whatever changes something carries the token that <c>me</c> gives, in the header <c>RequestVerificationToken</c>.
/// </summary>
internal static class FloorApi
{
    public const string Root = "/floor/api/v1";

    /// <summary>Largest document a page may send, bytes.</summary>
    private const long Largest = 64 * 1024;

    public sealed record SignInRequest(string? Person, string? Pin);

    public static void Map(WebApplication app)
    {
        app.Map(AccessTable.Me, MeAsync);
        app.Map(AccessTable.SignIn, SignInAsync).WithMetadata(new MostBytes(Largest)).RequireRateLimiting(AccessLimits.SignInPolicy);
        app.Map(AccessTable.SignOut, (HttpContext context) => context.IsAtTheMachine() ? Task.CompletedTask : context.SignOutAsync(SessionCookie.Name)).WithMetadata(new MostBytes(Largest));
        app.Map(AccessTable.Cells, async (JobStore store, CancellationToken stop) =>
            (await store.CellsAsync(stop)).Select(c => new { id = c.Id, name = c.Name, revision = c.Head.Number }));
        app.Map(AccessTable.Bundle, BundleAsync);
        app.Map(AccessTable.FloorBundle, BundleAsync);
    }

    /// <summary>Who the desk takes this device and person for, and what they may do; told to anyone of themselves.</summary>
    private static async Task<IResult> MeAsync(HttpContext context, DeviceKeys devices, IAntiforgery antiforgery, CancellationToken stop)
    {
        var who = context.User;
        bool known = who.Identity?.IsAuthenticated == true;
        var device = context.IsAtTheMachine() ? null : await devices.ReadAsync(context, stop);
        return Results.Json(new
        {
            atTheDesk = Known.IsAtTheMachine(who),
            device = device is null ? null : new { id = device.Id, name = device.Name },
            person = known ? new { id = Known.PersonOf(who), name = who.Identity!.Name } : null,
            may = Enum.GetValues<Act>().Where(act => known && AccessTable.Allows(who, act)).Select(act => JsonNamingPolicy.CamelCase.ConvertName(act.ToString())),
            token = antiforgery.GetAndStoreTokens(context).RequestToken,
        });
    }

    private static async Task<IResult> SignInAsync(HttpContext context, SignInRequest request, DeviceKeys devices, CancellationToken stop)
    {
        if (context.IsAtTheMachine()) return Results.NoContent();
        if (await devices.ReadAsync(context, stop) is not { } device) return Results.Json(new { problem = "notPaired" }, statusCode: StatusCodes.Status403Forbidden);
        if (request is not { Person: { } person, Pin: { } pin }) return Results.Json(new { problem = "wrong" }, statusCode: StatusCodes.Status400BadRequest);
        return await SessionCookie.SignInAsync(context, device, person, pin, stop) switch
        {
            PinAttempt.Allowed => Results.NoContent(),
            PinAttempt.Locked { Until: var until } => Results.Json(new { problem = "locked", until }, statusCode: StatusCodes.Status403Forbidden),
            _ => Results.Json(new { problem = "wrong" }, statusCode: StatusCodes.Status403Forbidden),
        };
    }

    /// <summary>Who has the newest bundle is told so in a few bytes (RFC 9110, 13.1.2).</summary>
    private static async Task<IResult> BundleAsync(HttpContext context, JobStore store, BundleShelf shelf, string cell, CancellationToken stop)
    {
        if (await store.HeadAsync(cell, stop) is not { } stored || stored.Read().Cell is not { } head) return Results.NotFound();
        // What was done against a revision is stale only where something it rests on has changed since.
        var (_, earlier) = await store.JournalOfAsync(cell, stop);
        var bundle = await shelf.OfAsync(cell, head, stored.Revision.Hash, earlier);
        context.Response.Headers.CacheControl = "private, no-cache";
        return Results.Bytes(bundle.Utf8, "application/json", entityTag: new($"\"{bundle.Hash}\""));
    }

    /// <summary>A body longer than this is refused before it is read.</summary>
    private sealed record MostBytes(long Bytes) : Microsoft.AspNetCore.Http.Metadata.IRequestSizeLimitMetadata
    {
        public long? MaxRequestBodySize => Bytes;
    }
}
