using System.Collections.Immutable;
using Microsoft.EntityFrameworkCore;
using Trivet.Files.Entries;
using Trivet.Journal;
using Trivet.Store.Rows;

namespace Trivet.Store;

// The journal is only ever added to. An entry is kept whatever it says, as long as it is not damaged: what does not fit together is shown.
public sealed partial class JobStore
{
    /// <summary>Key of the lock that lets one program at a time add to the chain of receipts on PostgreSQL; any fixed number will do.</summary>
    private const long ReceiptLock = 0x7472697665740002;

    /// <summary>Entries written in one transaction: a thousand readings take some hundred kilobytes.</summary>
    private const int LargestBatch = 500;

    /// <summary>Adds entries, in their order. What has been returned as received is on disk; sending it again gives the same receipt.</summary>
    /// <param name="received">The moment, written into the receipts.</param>
    /// <returns>One outcome for each arrival.</returns>
    public async Task<ImmutableArray<AppendOutcome>> AppendAsync(IReadOnlyList<Arrival> arrivals, DateTimeOffset received, CancellationToken stop = default)
    {
        var outcomes = ImmutableArray.CreateBuilder<AppendOutcome>(arrivals.Count);
        foreach (var batch in arrivals.Chunk(LargestBatch))
        {
            EntryRead[] reads = [.. batch.Select(ReadArrival)];
            outcomes.AddRange(await RunAsync((context, stop) => AppendAsync(context, batch, reads, received, stop), stop));
            if (reads.Any(r => r.Entry?.Says is Erased)) await ForgetLogAsync(stop);
        }
        return outcomes.MoveToImmutable();
    }

    /// <summary>
    /// Writes an entry into the chain of a device that has no memory of its own but this store: the desk, a command. Its place in the chain is
    /// given while the journal is held, so that several may write for one device.
    /// </summary>
    /// <param name="entry">Sequence and previous hash are filled in here.</param>
    public async Task<AppendOutcome> RecordAsync(Entry entry, DateTimeOffset received, CancellationToken stop = default)
    {
        var outcome = await RunAsync((context, stop) => RecordAsync(context, entry, received, stop), stop);
        if (entry.Says is Erased) await ForgetLogAsync(stop);
        return outcome;
    }

    private static async Task<AppendOutcome> RecordAsync(JobContext context, Entry entry, DateTimeOffset received, CancellationToken stop)
    {
        await using var transaction = await context.Database.BeginTransactionAsync(stop);
        await HoldAsync(context, stop);
        var last = await context.Entries.AsNoTracking().Where(e => e.Device == entry.Device)
            .OrderByDescending(e => e.Sequence).ThenBy(e => e.Hash).Select(e => new { e.Sequence, e.Hash }).FirstOrDefaultAsync(stop);
        var arrival = new Arrival(EntryText.Of(entry with { Sequence = (last?.Sequence ?? 0) + 1, Previous = last?.Hash ?? "" }));
        var outcomes = await AppendHeldAsync(context, [arrival], [ReadArrival(arrival)], received, stop);
        await transaction.CommitAsync(stop);
        return outcomes[0];
    }

    /// <summary>The journal after a receipt, of all cells: a device's chain knows no cells.</summary>
    /// <param name="after">Number of the last receipt already known; 0 for all.</param>
    public Task<JournalPart> JournalAsync(long after = 0, CancellationToken stop = default) => RunAsync(async (context, stop) =>
    {
        await using var moment = await Opening.ReadOneMomentAsync(context, stop);
        var head = await HeadAsync(context, stop);
        var lines = ImmutableArray.CreateBuilder<JournalLine>();
        var damaged = ImmutableArray.CreateBuilder<Receipt>();
        var rows = from receipt in context.Receipts.AsNoTracking()
                   join entry in context.Entries on receipt.EntryHash equals entry.Hash
                   where receipt.Number > after
                   orderby receipt.Number
                   select new { receipt, entry.Text };
        await foreach (var row in rows.AsAsyncEnumerable().WithCancellation(stop))
        {
            var receipt = ReceiptOf(row.receipt);
            var read = EntryReader.Read(row.Text);
            if (read.Entry is { } entry && read.Hash == receipt.Entry)
                lines.Add(new(new Kept(entry, read.Hash, receipt, row.receipt.Hash), row.Text, EntryText.Of(receipt)));
            else
                damaged.Add(receipt);
        }
        return new JournalPart(lines.ToImmutable(), damaged.ToImmutable(), head);
    }, stop);

    /// <summary>Looks through the journal alone, as <see cref="CheckAsync"/> does with the rest.</summary>
    /// <returns>What is wrong, in words; empty when it is sound.</returns>
    public Task<ImmutableArray<string>> CheckJournalAsync(CancellationToken stop = default) => RunAsync(async (context, stop) =>
    {
        await using var moment = await Opening.ReadOneMomentAsync(context, stop);
        var faults = ImmutableArray.CreateBuilder<string>();
        await CheckJournalAsync(context, faults, stop);
        return faults.ToImmutable();
    }, stop);

    /// <summary>The newest receipt; null while the journal is empty.</summary>
    public Task<JournalHead?> JournalHeadAsync(CancellationToken stop = default) => RunAsync(HeadAsync, stop);

    private static Task<JournalHead?> HeadAsync(JobContext context, CancellationToken stop) =>
        context.Receipts.OrderByDescending(r => r.Number).Select(r => new JournalHead(r.Number, r.Hash)).FirstOrDefaultAsync(stop);

    private static EntryRead ReadArrival(Arrival arrival)
    {
        var read = EntryReader.Read(arrival.Text);
        if (read.Ok && read.Entry is null) return read with { Problem = "it is a receipt, not an entry" };
        return read.Ok && arrival.Hash is { } told && told != read.Hash ? read with { Problem = "its hash does not fit its text" } : read;
    }

    private static async Task<ImmutableArray<AppendOutcome>> AppendAsync(
        JobContext context, Arrival[] arrivals, EntryRead[] reads, DateTimeOffset received, CancellationToken stop)
    {
        await using var transaction = await context.Database.BeginTransactionAsync(stop);
        await HoldAsync(context, stop);
        var outcomes = await AppendHeldAsync(context, arrivals, reads, received, stop);
        await transaction.CommitAsync(stop);
        return outcomes;
    }

    /// <summary>Holds the journal until the transaction ends: SQLite lets one writer in at a time, PostgreSQL takes a lock.</summary>
    private static Task<int> HoldAsync(JobContext context, CancellationToken stop) => context is PostgresJobContext
        ? context.Database.ExecuteSqlAsync($"SELECT pg_advisory_xact_lock({ReceiptLock})", stop)
        : Task.FromResult(0);

    private static async Task<ImmutableArray<AppendOutcome>> AppendHeldAsync(
        JobContext context, Arrival[] arrivals, EntryRead[] reads, DateTimeOffset received, CancellationToken stop)
    {
        string[] hashes = [.. reads.Where(r => r.Ok).Select(r => r.Hash).Distinct()];
        var known = (await context.Receipts.AsNoTracking().Where(r => hashes.Contains(r.EntryHash)).ToListAsync(stop)).ToDictionary(r => r.EntryHash);
        var (number, previous) = await HeadAsync(context, stop) is { } head ? (head.Number, head.Hash) : (0, "");

        var outcomes = ImmutableArray.CreateBuilder<AppendOutcome>(arrivals.Length);
        for (int i = 0; i < arrivals.Length; i++)
        {
            var read = reads[i];
            if (!read.Ok)
            {
                outcomes.Add(new AppendOutcome.Damaged($"The entry is damaged: {read.Problem}.", "Send it again as the device has it; on the device nothing is lost."));
                continue;
            }
            bool again = known.TryGetValue(read.Hash, out var row);
            if (!again)
            {
                var receipt = new Receipt(++number, read.Hash, previous, received.UtcTicks);
                previous = EntryText.Hash(EntryText.Of(receipt));
                row = new ReceiptRow { Number = receipt.Number, EntryHash = receipt.Entry, PreviousHash = receipt.Previous, Hash = previous, Ticks = receipt.Ticks };
                known.Add(read.Hash, row);
                context.Entries.Add(RowOf(read, arrivals[i].Text));
                context.Receipts.Add(row);
                if (read.Entry!.Says is Erased erased) await EraseAsync(context, erased, read.Entry, stop);
            }
            outcomes.Add(new AppendOutcome.Received(ReceiptOf(row!), row!.Hash, again));
        }
        await context.SaveChangesAsync(stop);
        return outcomes.MoveToImmutable();
    }

    private static EntryRow RowOf(EntryRead read, string text) => new()
    {
        Device = read.Entry!.Device,
        Sequence = read.Entry.Sequence,
        Hash = read.Hash,
        CellId = read.Entry.Cell,
        Ticks = read.Entry.Ticks,
        Text = text,
    };

    private static Receipt ReceiptOf(ReceiptRow row) => new(row.Number, row.EntryHash, row.PreviousHash, row.Ticks);

    /// <summary>Every entry has the hash of its text and one receipt, the receipts are one chain, every photograph has its hash.</summary>
    private static async Task CheckJournalAsync(JobContext context, ImmutableArray<string>.Builder faults, CancellationToken stop)
    {
        long number = 0;
        string previous = "";
        await foreach (var row in context.Receipts.AsNoTracking().OrderBy(r => r.Number).AsAsyncEnumerable().WithCancellation(stop))
        {
            number++;
            if (row.Number != number) faults.Add($"Journal: receipt {number} is missing before {row.Number}.");
            if (row.PreviousHash != previous) faults.Add($"Journal: receipt {row.Number} does not follow the one before it.");
            if (EntryText.Hash(EntryText.Of(ReceiptOf(row))) != row.Hash) faults.Add($"Journal: receipt {row.Number} does not have its hash.");
            (number, previous) = (row.Number, row.Hash);
        }

        long entries = 0;
        await foreach (var row in context.Entries.AsNoTracking().OrderBy(e => e.Device).ThenBy(e => e.Sequence).AsAsyncEnumerable().WithCancellation(stop))
        {
            entries++;
            var read = EntryReader.Read(row.Text);
            if (read.Entry is not { } entry || read.Hash != row.Hash)
                faults.Add($"Journal: the text of entry {row.Sequence} of {row.Device} does not have its hash.");
            else if ((entry.Device, entry.Sequence, entry.Cell, entry.Ticks) != (row.Device, row.Sequence, row.CellId, row.Ticks))
                faults.Add($"Journal: entry {row.Sequence} of {row.Device} is filed under what it does not say.");
        }
        if (entries != number) faults.Add($"Journal: {entries} entries and {number} receipts.");

        await foreach (var row in context.Photographs.AsNoTracking().Where(p => p.Content != null).OrderBy(p => p.Hash).AsAsyncEnumerable().WithCancellation(stop))
            if (Inputs.Hash(row.Content!) != row.Hash) faults.Add($"Journal: photograph {row.Hash} does not have its hash.");
    }
}
