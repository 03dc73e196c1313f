using Microsoft.EntityFrameworkCore;
using Trivet.Cells;
using Trivet.Files;
using Trivet.Store.Rows;

namespace Trivet.Store;

public sealed partial class JobStore
{
    /// <summary>A person's draft of a cell; one without edits where nothing was begun, null where there is no such cell.</summary>
    public Task<Draft?> DraftAsync(string cellId, string person, CancellationToken stop = default) => RunAsync(async (context, stop) =>
    {
        await using var moment = await Opening.ReadOneMomentAsync(context, stop);
        return await context.Cells.AsNoTracking().SingleOrDefaultAsync(c => c.Id == cellId, stop) is { } cell
            ? await DraftAsync(context, cell, person, stop)
            : null;
    }, stop);

    /// <summary>Keeps one edit: the cell as it is after it. Edits that were undone are dropped, as they no longer follow.</summary>
    /// <param name="basis">The draft as read: its version must still be the one on disk.</param>
    /// <param name="words">What the edit did, for the list of what can be undone.</param>
    public Task<DraftOutcome> EditAsync(Draft basis, Cell cell, DateTimeOffset when, string words, CancellationToken stop = default)
    {
        var (text, refusal) = Inputs.TextOf(cell);
        if ((refusal ?? Inputs.OfStamp(new Stamp(basis.Person, when), words)) is { } no)
            return Task.FromResult<DraftOutcome>(new DraftOutcome.Refused(no.Problem, no.Remedy));
        return ChangeAsync(basis, async (context, row, stop) =>
        {
            int last = row.Cursor;
            var edits = context.Edits.Where(e => e.CellId == basis.CellId && e.Person == basis.Person);
            await edits.Where(e => e.Number > last || e.Number <= last + 1 - Draft.LargestDepth).ExecuteDeleteAsync(stop);
            if (last == 0) row.Base = basis.Base;
            row.Cursor = last + 1;
            context.Edits.Add(new EditRow
            {
                CellId = basis.CellId,
                Person = basis.Person,
                Number = row.Cursor,
                Text = text,
                Ticks = when.UtcTicks,
                Words = words,
            });
        }, stop);
    }

    /// <summary>Takes back the edit in force. Where there is nothing to take back the draft stays as it is.</summary>
    public Task<DraftOutcome> UndoAsync(Draft basis, CancellationToken stop = default) => MoveAsync(basis, basis.CanUndo, -1, stop);

    /// <summary>Does again what was last undone. Where there is nothing the draft stays as it is.</summary>
    public Task<DraftOutcome> RedoAsync(Draft basis, CancellationToken stop = default) => MoveAsync(basis, basis.CanRedo, +1, stop);

    /// <summary>Throws all edits away: the person is back at the head.</summary>
    public Task<DraftOutcome> DiscardAsync(Draft basis, CancellationToken stop = default) => ChangeAsync(basis, EmptyAsync, stop);

    /// <summary>Places a draft on the present head, after the person has seen what was saved since: saving it then replaces that.</summary>
    public Task<DraftOutcome> RebaseAsync(Draft basis, CancellationToken stop = default) => ChangeAsync(basis, (_, row, _) =>
    {
        row.Base = basis.Head;
        return Task.CompletedTask;
    }, stop);

    /// <summary>Saves what the draft holds as a new revision and empties it, both or neither.</summary>
    /// <returns>A conflict also where the draft itself was changed elsewhere since it was read; read it again then.</returns>
    public Task<SaveOutcome> SaveDraftAsync(Draft basis, DateTimeOffset when, string words, CancellationToken stop = default)
    {
        var by = new Stamp(basis.Person, when);
        if (Inputs.OfStamp(by, words) is { } no) return Task.FromResult<SaveOutcome>(new SaveOutcome.Refused(no.Problem, no.Remedy));
        return WriteAsync(basis.CellId, new SaveOutcome.NotFound(), async (context, held, stop) =>
        {
            var now = await DraftAsync(context, held, basis.Person, stop);
            if (now.Version != basis.Version) return new SaveOutcome.Conflict(RevisionOf((await RowAsync(context, held.Id, held.Head, stop))!));
            string name = now.Read().Cell is { } cell ? NameOf(held.Id, cell) : held.Name;
            var outcome = await AppendAsync(context, held, now.Base, now.Text, name, by, words, null, stop);
            if (outcome is SaveOutcome.Saved or SaveOutcome.Unchanged
                && await context.Drafts.SingleOrDefaultAsync(d => d.CellId == basis.CellId && d.Person == basis.Person, stop) is { } row)
            {
                row.Version++;
                await EmptyAsync(context, row, stop);
            }
            return outcome;
        }, stop);
    }

    private Task<DraftOutcome> MoveAsync(Draft basis, bool possible, int step, CancellationToken stop) =>
        possible
            ? ChangeAsync(basis, (_, row, _) =>
            {
                row.Cursor += step;
                return Task.CompletedTask;
            }, stop)
            : Task.FromResult<DraftOutcome>(new DraftOutcome.Kept(basis));

    /// <summary>Changes a draft whose version is still the one read, and reads it back.</summary>
    private Task<DraftOutcome> ChangeAsync(Draft basis, Func<JobContext, DraftRow, CancellationToken, Task> change, CancellationToken stop) =>
        WriteAsync<DraftOutcome>(basis.CellId, new DraftOutcome.NotFound(), async (context, held, stop) =>
        {
            var row = await context.Drafts.SingleOrDefaultAsync(d => d.CellId == basis.CellId && d.Person == basis.Person, stop);
            if ((row?.Version ?? 0) != basis.Version) return new DraftOutcome.Moved(await DraftAsync(context, held, basis.Person, stop));
            if (row is null)
            {
                row = new DraftRow { CellId = basis.CellId, Person = basis.Person, Base = basis.Base, Cursor = 0, Version = 0 };
                context.Drafts.Add(row);
            }
            row.Version++;
            await change(context, row, stop);
            await context.SaveChangesAsync(stop);
            return new DraftOutcome.Kept(await DraftAsync(context, held, basis.Person, stop));
        }, stop);

    private static async Task EmptyAsync(JobContext context, DraftRow row, CancellationToken stop)
    {
        await context.Edits.Where(e => e.CellId == row.CellId && e.Person == row.Person).ExecuteDeleteAsync(stop);
        row.Cursor = 0;
    }

    private static async Task<Draft> DraftAsync(JobContext context, CellRow cell, string person, CancellationToken stop)
    {
        var row = await context.Drafts.AsNoTracking().SingleOrDefaultAsync(d => d.CellId == cell.Id && d.Person == person, stop);
        var edits = await context.Edits.Where(e => e.CellId == cell.Id && e.Person == person).OrderBy(e => e.Number)
            .Select(e => new { e.Number, e.Ticks, e.Words }).ToListAsync(stop);
        // A draft without edits follows the head: there is nothing that could be placed on an older revision.
        int begunFrom = row is null || edits.Count == 0 ? cell.Head : row.Base;
        int cursor = row?.Cursor ?? 0;
        string? text = await context.Edits.Where(e => e.CellId == cell.Id && e.Person == person && e.Number == cursor)
            .Select(e => e.Text).SingleOrDefaultAsync(stop);
        return new Draft(cell.Id, person, begunFrom, cell.Head, row?.Version ?? 0, cursor,
            [.. edits.Select(e => new DraftEdit(e.Number, new DateTimeOffset(e.Ticks, TimeSpan.Zero), e.Words))],
            text ?? StoredOf(await RowAsync(context, cell.Id, begunFrom, stop))!.Text);
    }
}
