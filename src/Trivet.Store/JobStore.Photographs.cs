using System.Collections.Immutable;
using Microsoft.EntityFrameworkCore;
using Trivet.Files.Entries;
using Trivet.Journal;
using Trivet.Store.Rows;

namespace Trivet.Store;

public sealed partial class JobStore
{
    /// <summary>Largest photograph kept, bytes.</summary>
    public const int LargestPhotograph = PhotographText.Largest;

    /// <summary>Keeps a photograph under the hash of its bytes. The same bytes are kept once. What they hold is the caller's to have cleaned.</summary>
    public Task<PhotographOutcome> AddPhotographAsync(byte[] content, Stamp by, CancellationToken stop = default)
    {
        if (Inputs.OfStamp(by, "") is { } no) return Task.FromResult<PhotographOutcome>(new PhotographOutcome.Refused(no.Problem, no.Remedy));
        if (content.Length is 0 or > LargestPhotograph)
        {
            return Task.FromResult<PhotographOutcome>(new PhotographOutcome.Refused(
                $"The photograph has {content.Length / 1048576.0:0.0} MB; kept are at most {LargestPhotograph / 1048576} MB.", "Take it with fewer pixels."));
        }
        return RunAsync<PhotographOutcome>(async (context, stop) =>
        {
            string hash = Inputs.Hash(content);
            long ticks = by.When.UtcTicks;
            int added = await context.Database.ExecuteSqlAsync(
                $"INSERT INTO photographs (hash, person, ticks, content) VALUES ({hash}, {by.Person}, {ticks}, {content}) ON CONFLICT DO NOTHING", stop);
            return await context.Photographs.AnyAsync(p => p.Hash == hash && p.Content != null, stop)
                ? new PhotographOutcome.Stored(hash, Again: added == 0)
                : new PhotographOutcome.WasErased(hash);
        }, stop);
    }

    /// <summary>A photograph by its hash; null where the store never had it.</summary>
    public Task<StoredPhotograph?> PhotographAsync(string hash, CancellationToken stop = default) => RunAsync(async (context, stop) =>
    {
        if (await context.Photographs.AsNoTracking().SingleOrDefaultAsync(p => p.Hash == hash, stop) is not { } row) return null;
        if (row.Content is { } content && Inputs.Hash(content) != row.Hash)
            throw new StoreFailedException($"Photograph {row.Hash} is damaged: its bytes do not have its hash.");
        return new StoredPhotograph(row.Hash, StampOf(row.Person, row.Ticks), row.Content);
    }, stop);

    /// <summary>The hashes of all photographs whose bytes are here, sorted.</summary>
    public Task<ImmutableArray<string>> PhotographsAsync(CancellationToken stop = default) => RunAsync(async (context, stop) =>
        (await context.Photographs.Where(p => p.Content != null).Select(p => p.Hash).ToListAsync(stop)).Order(StringComparer.Ordinal).ToImmutableArray(), stop);

    /// <summary>Lets go of the bytes in the transaction that keeps the entry which says so; where they never came, they will not be taken.</summary>
    private static async Task EraseAsync(JobContext context, Erased erased, Entry entry, CancellationToken stop)
    {
        int gone = await context.Photographs.Where(p => p.Hash == erased.Photograph).ExecuteUpdateAsync(p => p.SetProperty(r => r.Content, (byte[]?)null), stop);
        if (gone == 0)
            await context.Database.ExecuteSqlAsync(
                $"INSERT INTO photographs (hash, person, ticks, content) VALUES ({erased.Photograph}, {entry.Person}, {entry.Ticks}, NULL)", stop);
    }

    /// <summary>Erased bytes stay in SQLite's log until it is taken over and cut; another reader may keep that from happening until later.</summary>
    private Task<bool> ForgetLogAsync(CancellationToken stop) => RunAsync(async (context, stop) =>
    {
        if (context is SqliteJobContext) await context.Database.ExecuteSqlAsync($"PRAGMA wal_checkpoint(TRUNCATE)", stop);
        return true;
    }, stop);
}
