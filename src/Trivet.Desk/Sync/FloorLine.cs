using System.Collections.Immutable;
using System.Text.Json;
using System.Text.Json.Serialization.Metadata;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Http.Features;
using Microsoft.Extensions.Primitives;
using Trivet.Desk.Access;
using Trivet.Files.Entries;
using Trivet.Files.Floor;
using Trivet.Journal;
using Trivet.Store;

namespace Trivet.Desk.Sync;

/// <summary>
/// What devices at the machine exchange with the desk: entries and photographs in, receipts and what others wrote out, and who is at which step.
/// All of it may be repeated: the same entry has the same receipt, the same photograph is kept once.
/// </summary>
internal static class FloorLine
{
    /// <summary>Most characters of entries in one request, bytes; a page sends at most half of it at once.</summary>
    private const long LargestRequest = 2 * 1024 * 1024;

    /// <summary>Most entries in one request, and in one answer.</summary>
    private const int MostEntries = 500;

    public static void Map(WebApplication app)
    {
        app.Map(AccessTable.AddEntries, AddAsync);
        app.Map(AccessTable.EntriesAfter, AfterAsync);
        app.Map(AccessTable.AddPhotograph, AddPhotographAsync);
        app.Map(AccessTable.Live, LiveAsync);
    }

    private static async Task<IResult> AddAsync(HttpContext context, JobStore store, TimeProvider clock, CancellationToken stop)
    {
        if (await ReadAsync(context, FloorJson.Default.EntriesSent, stop) is not { Entries: { IsDefault: false } texts }) return Refuse("the body is no list of entries");
        if (texts.Length > MostEntries || texts.Any(t => t is null)) return Refuse($"more than {MostEntries} entries, or one that is no text");

        // A signature counts for who signed in: one in another's name, or by someone who may not, stays on the device until that person signs in there.
        string? signer = AccessTable.Allows(context.User, Act.Sign) ? Known.PersonOf(context.User) : null;
        bool anyone = Known.IsAtTheMachine(context.User);
        bool[] held = [.. texts.Select(t => !anyone && EntryReader.Read(t).Entry is { Says: Released or Signed, Person: var person } && person != signer)];
        var outcomes = await store.AppendAsync([.. texts.Where((_, i) => !held[i]).Select(t => new Arrival(t))], clock.GetUtcNow(), stop);
        var told = ImmutableArray.CreateBuilder<EntryOutcome>(texts.Length);
        for (int i = 0, next = 0; i < texts.Length; i++)
        {
            told.Add(held[i]
                ? new("", "a signature counts only for the person who is signed in and may sign", "let that person sign in on this device", EntryRefusals.Signature)
                : outcomes[next++] switch
                {
                    AppendOutcome.Received received => new(EntryText.Of(received.Receipt), "", ""),
                    AppendOutcome.Damaged damaged => new("", damaged.Problem, damaged.Remedy, EntryRefusals.Damaged),
                    var other => throw new InvalidOperationException($"{other} is no outcome."),
                });
        }
        return Results.Json(new(told.MoveToImmutable(), clock.GetUtcNow().UtcTicks), FloorJson.Default.EntriesAnswer);
    }

    private static async Task<IResult> AfterAsync(JobStore store, CancellationToken stop, long after = 0)
    {
        var part = await store.JournalAsync(Math.Max(0, after), stop);
        long head = part.Head?.Number ?? 0;
        var some = part.Lines.Take(MostEntries).ToImmutableArray();
        long upTo = some.Length < part.Lines.Length ? some[^1].Kept.Receipt!.Number : head;
        return Results.Json(new([.. some.Select(l => new ReceivedEntry(l.Text, l.ReceiptText))], upTo, head), FloorJson.Default.EntriesPart);
    }

    private static async Task<IResult> AddPhotographAsync(HttpContext context, string hash, JobStore store, TimeProvider clock, CancellationToken stop)
    {
        Limit(context, JobStore.LargestPhotograph);
        using var bytes = new MemoryStream();
        await context.Request.Body.CopyToAsync(bytes, stop);
        byte[] content = bytes.ToArray();
        if (JpegCheck.Problem(content) is { } problem) return Never(problem);
        if (Convert.ToHexStringLower(System.Security.Cryptography.SHA256.HashData(content)) != hash) return Never("the photograph does not have the hash it was sent under");
        return await store.AddPhotographAsync(content, new(Known.PersonOf(context.User), clock.GetUtcNow()), stop) switch
        {
            PhotographOutcome.Refused refused => Never($"{refused.Problem} {refused.Remedy}"),
            // Erased on purpose: the device need not send it again.
            _ => Results.NoContent(),
        };
    }

    private static async Task<IResult> LiveAsync(HttpContext context, string cell, JobStore store, LiveBoard board, TimeProvider clock, CancellationToken stop)
    {
        if (await ReadAsync(context, FloorJson.Default.AtWork, stop) is not { } at || !LiveBoard.Fits(at)) return Refuse("the body does not say which device is at which step");
        if (!Known.IsAtTheMachine(context.User)) at = at with { Person = Known.PersonOf(context.User) };
        var others = board.Tell(cell, at, clock.GetUtcNow());
        var head = await store.JournalHeadAsync(stop);
        return Results.Json(new(others, head?.Number ?? 0, clock.GetUtcNow().UtcTicks), FloorJson.Default.LiveAnswer);
    }

    /// <summary>Null for a body that is not of the kind, or is no JSON: what another site could send without asking is not read at all.</summary>
    private static async Task<T?> ReadAsync<T>(HttpContext context, JsonTypeInfo<T> kind, CancellationToken stop)
        where T : class
    {
        Limit(context, LargestRequest);
        if (!StringSegment.Equals(context.Request.ContentType?.Split(';')[0].Trim() ?? "", "application/json", StringComparison.OrdinalIgnoreCase)) return null;
        try
        {
            return await JsonSerializer.DeserializeAsync(context.Request.Body, kind, stop);
        }
        catch (JsonException)
        {
            return null;
        }
    }

    private static void Limit(HttpContext context, long most)
    {
        if (context.Features.Get<IHttpMaxRequestBodySizeFeature>() is { IsReadOnly: false } size) size.MaxRequestBodySize = most;
    }

    private static IResult Refuse(string problem, int status = StatusCodes.Status400BadRequest) => Results.Text($"Refused: {problem}.", "text/plain; charset=utf-8", statusCode: status);

    /// <summary>What was sent will not be taken however often it comes: the device need not send it again (RFC 9110, 15.5.21).</summary>
    private static IResult Never(string problem) => Refuse(problem, StatusCodes.Status422UnprocessableEntity);
}
