using Microsoft.EntityFrameworkCore;
using Trivet.Cells;
using Trivet.Files;
using Trivet.Store.Rows;

namespace Trivet.Store;

// Every writing call holds its cell while it looks and writes: SQLite lets one writer in at a time, PostgreSQL locks the cell's row.
public sealed partial class JobStore
{
    /// <summary>Adds a cell with its first revision.</summary>
    /// <param name="cellId">1 to 64 lower-case letters, digits and single hyphens; never changed afterwards.</param>
    public Task<SaveOutcome> CreateAsync(string cellId, Cell cell, Stamp by, string words, CancellationToken stop = default)
    {
        var (text, refusal) = Inputs.TextOf(cell);
        if ((refusal ?? Inputs.OfCellId(cellId) ?? Inputs.OfStamp(by, words)) is { } no) return Task.FromResult<SaveOutcome>(new SaveOutcome.Refused(no.Problem, no.Remedy));
        return RunAsync<SaveOutcome>(async (context, stop) =>
        {
            await using var transaction = await context.Database.BeginTransactionAsync(stop);
            string name = NameOf(cellId, cell);
            int added = await context.Database.ExecuteSqlAsync(
                $"INSERT INTO cells (id, name, head) VALUES ({cellId}, {name}, {1}) ON CONFLICT DO NOTHING", stop);
            if (added == 0) return new SaveOutcome.Taken(RevisionOf((await HeadRowAsync(context, cellId, stop))!));
            var row = Row(cellId, 1, "", text, by, words, restores: null);
            context.Revisions.Add(row);
            await context.SaveChangesAsync(stop);
            await transaction.CommitAsync(stop);
            return new SaveOutcome.Saved(RevisionOf(row));
        }, stop);
    }

    /// <summary>Saves a cell as a new revision, where the head is still the one expected.</summary>
    /// <param name="expectedHead">Number of the revision the change was made on.</param>
    public Task<SaveOutcome> SaveAsync(string cellId, int expectedHead, Cell cell, Stamp by, string words, CancellationToken stop = default)
    {
        var (text, refusal) = Inputs.TextOf(cell);
        if ((refusal ?? Inputs.OfStamp(by, words)) is { } no) return Task.FromResult<SaveOutcome>(new SaveOutcome.Refused(no.Problem, no.Remedy));
        return WriteAsync(cellId, new SaveOutcome.NotFound(), (context, held, stop) =>
            AppendAsync(context, held, expectedHead, text, NameOf(cellId, cell), by, words, null, stop), stop);
    }

    /// <summary>Brings back the content of an older revision as a new one that names it. Nothing in between is lost.</summary>
    public Task<SaveOutcome> RestoreAsync(string cellId, int expectedHead, int number, Stamp by, string words, CancellationToken stop = default)
    {
        if (Inputs.OfStamp(by, words) is { } no) return Task.FromResult<SaveOutcome>(new SaveOutcome.Refused(no.Problem, no.Remedy));
        return WriteAsync(cellId, new SaveOutcome.NotFound(), async (context, held, stop) =>
        {
            if (StoredOf(await RowAsync(context, cellId, number, stop)) is not { } old) return new SaveOutcome.NotFound();
            string name = old.Read().Cell is { } cell ? NameOf(cellId, cell) : held.Name;
            return await AppendAsync(context, held, expectedHead, old.Text, name, by, words, number, stop);
        }, stop);
    }

    /// <summary>Compares two revisions field by field; null where one is not there, or was written by a later program.</summary>
    public async Task<Difference?> CompareAsync(string cellId, int from, int to, CancellationToken stop = default)
    {
        var before = await RevisionAsync(cellId, from, stop);
        var after = await RevisionAsync(cellId, to, stop);
        return before?.Read().Cell is { } a && after?.Read().Cell is { } b
            ? new Difference(before.Revision, after.Revision, CellFields.Changes(a, b))
            : null;
    }

    /// <summary>Runs one transaction that holds a cell; what it wrote counts only when the outcome has been returned.</summary>
    private Task<T> WriteAsync<T>(string cellId, T notFound, Func<JobContext, CellRow, CancellationToken, Task<T>> work, CancellationToken stop) =>
        RunAsync(async (context, stop) =>
        {
            await using var transaction = await context.Database.BeginTransactionAsync(stop);
            var cells = context is PostgresJobContext
                ? context.Cells.FromSql($"SELECT * FROM cells WHERE id = {cellId} FOR UPDATE")
                : context.Cells.Where(c => c.Id == cellId);
            if (await cells.SingleOrDefaultAsync(stop) is not { } held) return notFound;
            var outcome = await work(context, held, stop);
            await context.SaveChangesAsync(stop);
            await transaction.CommitAsync(stop);
            return outcome;
        }, stop);

    /// <summary>Appends a revision to a cell that is held.</summary>
    private static async Task<SaveOutcome> AppendAsync(
        JobContext context, CellRow held, int expectedHead, string text, string name, Stamp by, string words, int? restores, CancellationToken stop)
    {
        var head = (await RowAsync(context, held.Id, held.Head, stop))!;
        if (held.Head != expectedHead) return new SaveOutcome.Conflict(RevisionOf(head));
        if (head.Text == text) return new SaveOutcome.Unchanged(RevisionOf(head));
        var row = Row(held.Id, held.Head + 1, head.Hash, text, by, words, restores);
        context.Revisions.Add(row);
        held.Head = row.Number;
        held.Name = name;
        return new SaveOutcome.Saved(RevisionOf(row));
    }

    private static RevisionRow Row(string cellId, int number, string parentHash, string text, Stamp by, string words, int? restores) => new()
    {
        CellId = cellId,
        Number = number,
        Hash = Inputs.Hash(text),
        ParentHash = parentHash,
        Text = text,
        Person = by.Person,
        Ticks = by.When.UtcTicks,
        Words = words,
        Restores = restores,
    };

    private static string NameOf(string cellId, Cell cell) => string.IsNullOrWhiteSpace(cell.Name) ? cellId : cell.Name;
}
