using System.Collections.Immutable;
using Microsoft.EntityFrameworkCore;
using Trivet.Store.Rows;

namespace Trivet.Store;

public sealed partial class JobStore
{
    /// <summary>
    /// Looks through the whole store: the database file itself (SQLite), the hash of every text, the chain of parents from first
    /// revision to head without a gap, that every draft's cursor stands on an edit or on its base, the chain of receipts and the photographs.
    /// </summary>
    /// <returns>What is wrong, in words; empty when the store is sound.</returns>
    public Task<ImmutableArray<string>> CheckAsync(CancellationToken stop = default) => RunAsync(async (context, stop) =>
    {
        await using var moment = await Opening.ReadOneMomentAsync(context, stop);
        var faults = ImmutableArray.CreateBuilder<string>();
        if (context is SqliteJobContext)
            faults.AddRange((await context.Database.SqlQuery<string>($"SELECT integrity_check AS \"Value\" FROM pragma_integrity_check").ToListAsync(stop))
                .Where(line => line != "ok"));

        foreach (var cell in await context.Cells.AsNoTracking().OrderBy(c => c.Id).ToListAsync(stop))
        {
            int number = 0;
            string parent = "";
            await foreach (var row in context.Revisions.AsNoTracking().Where(r => r.CellId == cell.Id).OrderBy(r => r.Number).AsAsyncEnumerable().WithCancellation(stop))
            {
                number++;
                if (row.Number != number) faults.Add($"{cell.Id}: revision {number} is missing before {row.Number}.");
                if (row.ParentHash != parent) faults.Add($"{cell.Id}: revision {row.Number} does not follow the one before it.");
                if (Inputs.Hash(row.Text) != row.Hash) faults.Add($"{cell.Id}: the text of revision {row.Number} does not have its hash.");
                (number, parent) = (row.Number, row.Hash);
            }
            if (number != cell.Head) faults.Add($"{cell.Id}: the head is {cell.Head}, the last revision {number}.");
        }

        foreach (var draft in await context.Drafts.AsNoTracking().OrderBy(d => d.CellId).ThenBy(d => d.Person).ToListAsync(stop))
        {
            var edits = await context.Edits.Where(e => e.CellId == draft.CellId && e.Person == draft.Person).OrderBy(e => e.Number).Select(e => e.Number).ToListAsync(stop);
            if (draft.Cursor != 0 && !edits.Contains(draft.Cursor)) faults.Add($"{draft.CellId}: the draft of {draft.Person} stands on an edit that is not there.");
            if (edits.Count > 0 && edits[^1] - edits[0] + 1 != edits.Count) faults.Add($"{draft.CellId}: the draft of {draft.Person} lacks an edit in between.");
        }

        await CheckJournalAsync(context, faults, stop);
        return faults.ToImmutable();
    }, stop);
}
