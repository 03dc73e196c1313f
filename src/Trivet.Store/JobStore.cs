using System.Collections.Immutable;
using System.Data.Common;
using Microsoft.Data.Sqlite;
using Microsoft.EntityFrameworkCore;
using Npgsql;
using Trivet.Cells;
using Trivet.Store.Rows;

namespace Trivet.Store;

/// <summary>
/// A job: its cells with all their revisions, and the drafts of those who edit them. In a job folder this is the truth; files are
/// import and export. Whatever a call acknowledged survives the end of the process at any moment. Safe for concurrent use, also by
/// several programs at once; every change names the state it was made on and is refused, as a value, where that has moved.
/// </summary>
public sealed partial class JobStore : IAsyncDisposable
{
    private readonly Func<JobContext> _connect;

    private JobStore(JobLocation location, Func<JobContext> connect)
    {
        Location = location;
        _connect = connect;
    }

    public JobLocation Location { get; }

    /// <summary>Opens a job and brings its tables up to date. An empty folder or database becomes an empty job.</summary>
    public static async Task<OpenOutcome> OpenAsync(JobLocation location, CancellationToken stop = default)
    {
        if (location is JobLocation.Folder { Path: var path } && !Directory.Exists(path))
            return new OpenOutcome.Refused($"There is no folder {path}.", "Make the folder first, or name one that exists.");
        try
        {
            var store = new JobStore(location, Opening.Connect(location));
            var unknown = await store.RunAsync(Opening.MigrateAsync, stop);
            return unknown.Count > 0 ? new OpenOutcome.TooNew(unknown) : new OpenOutcome.Opened(store);
        }
        catch (StoreFailedException failure)
        {
            return Refusal(location, failure);
        }
        catch (ArgumentException) when (location is JobLocation.Postgres)
        {
            return new OpenOutcome.Refused("The connection string cannot be read.", "Write it as Host=…;Database=…;Username=…;Password=….");
        }
    }

    /// <summary>The cells of the job, sorted by id.</summary>
    public Task<ImmutableArray<CellSummary>> CellsAsync(CancellationToken stop = default) => RunAsync(async (context, stop) =>
    {
        var heads = await (from cell in context.Cells
                           join revision in context.Revisions on new { CellId = cell.Id, Number = cell.Head } equals new { revision.CellId, revision.Number }
                           select new { cell.Name, revision.CellId, revision.Number, revision.Hash, revision.ParentHash, revision.Person, revision.Ticks, revision.Words, revision.Restores })
            .ToListAsync(stop);
        var drafting = await (from draft in context.Drafts
                              where context.Edits.Any(e => e.CellId == draft.CellId && e.Person == draft.Person && e.Number == draft.Cursor)
                              select new { draft.CellId, draft.Person })
            .ToListAsync(stop);
        var byCell = drafting.ToLookup(d => d.CellId, d => d.Person);
        return heads.OrderBy(h => h.CellId, StringComparer.Ordinal).Select(h => new CellSummary(
            h.CellId, h.Name,
            new Revision(h.CellId, h.Number, h.Hash, h.ParentHash, StampOf(h.Person, h.Ticks), h.Words, h.Restores),
            [.. byCell[h.CellId].Order(StringComparer.Ordinal)])).ToImmutableArray();
    }, stop);

    /// <summary>The newest revision of a cell with its text; null where there is no such cell.</summary>
    public Task<StoredCell?> HeadAsync(string cellId, CancellationToken stop = default) => RunAsync(async (context, stop) =>
        StoredOf(await HeadRowAsync(context, cellId, stop)), stop);

    /// <summary>One revision with its text; null where there is none of that number.</summary>
    public Task<StoredCell?> RevisionAsync(string cellId, int number, CancellationToken stop = default) => RunAsync(async (context, stop) =>
        StoredOf(await RowAsync(context, cellId, number, stop)), stop);

    /// <summary>All revisions of a cell, newest first, without their texts; empty where there is no such cell.</summary>
    public Task<ImmutableArray<Revision>> RevisionsAsync(string cellId, CancellationToken stop = default) => RunAsync(async (context, stop) =>
    {
        var rows = await context.Revisions.Where(r => r.CellId == cellId).OrderByDescending(r => r.Number)
            .Select(r => new { r.CellId, r.Number, r.Hash, r.ParentHash, r.Person, r.Ticks, r.Words, r.Restores }).ToListAsync(stop);
        return rows.Select(r => new Revision(r.CellId, r.Number, r.Hash, r.ParentHash, StampOf(r.Person, r.Ticks), r.Words, r.Restores)).ToImmutableArray();
    }, stop);

    /// <summary>A cell as its revisions of certain hashes describe it: what entries of the journal were done against. One that is not there or can not be read is left out.</summary>
    public Task<ImmutableDictionary<string, Cell>> CellsOfAsync(string cellId, IEnumerable<string> hashes, CancellationToken stop = default)
    {
        string[] wanted = [.. hashes.Distinct()];
        return RunAsync(async (context, stop) =>
        {
            var rows = await context.Revisions.AsNoTracking().Where(r => r.CellId == cellId && wanted.Contains(r.Hash)).OrderBy(r => r.Number).ToListAsync(stop);
            return rows.DistinctBy(r => r.Hash).Select(r => (r.Hash, StoredOf(r)!.Read().Cell)).Where(r => r.Cell is not null).ToImmutableDictionary(r => r.Hash, r => r.Cell!, StringComparer.Ordinal);
        }, stop);
    }

    /// <summary>The whole journal of the job, with one cell as its revisions describe it that entries about it were done against: what tells where the work at it stands.</summary>
    public async Task<(JournalPart Journal, ImmutableDictionary<string, Cell> Revisions)> JournalOfAsync(string cellId, CancellationToken stop = default)
    {
        var journal = await JournalAsync(0, stop);
        return (journal, await CellsOfAsync(cellId, journal.Lines.Select(l => l.Kept.Entry).Where(e => e.Cell == cellId).Select(e => e.Revision), stop));
    }

    /// <summary>Lets go of the database's files and connections.</summary>
    public ValueTask DisposeAsync()
    {
        using var context = _connect();
        switch (context.Database.GetDbConnection())
        {
            case SqliteConnection sqlite: SqliteConnection.ClearPool(sqlite); break;
            case NpgsqlConnection npgsql: NpgsqlConnection.ClearPool(npgsql); break;
        }
        return ValueTask.CompletedTask;
    }

    /// <summary>Runs one piece of work on a connection of its own. SQLite's calls block, so they leave the caller's thread.</summary>
    private async Task<T> RunAsync<T>(Func<JobContext, CancellationToken, Task<T>> work, CancellationToken stop)
    {
        try
        {
            return Location is JobLocation.Folder ? await Task.Run(OnOneConnection, stop) : await OnOneConnection();
        }
        catch (Exception e) when (Database(e) is { } cause)
        {
            throw new StoreFailedException($"The store at {Location} failed: {cause.Message}", cause);
        }

        async Task<T> OnOneConnection()
        {
            await using var context = _connect();
            return await work(context, stop);
        }
    }

    /// <summary>The failure of the database behind an exception; null where it is something else, our own mistake.</summary>
    private static DbException? Database(Exception e) => e switch
    {
        DbException cause => cause,
        DbUpdateException { InnerException: DbException cause } => cause,
        InvalidOperationException { InnerException: DbException cause } => cause,
        _ => null,
    };

    private static OpenOutcome.Refused Refusal(JobLocation location, StoreFailedException failure) => failure.InnerException switch
    {
        SqliteException { SqliteErrorCode: 26 } => new($"{JobLocation.Folder.FileName} in {location} is not a job store.",
            "Move that file away, or name another folder."),
        SqliteException { SqliteErrorCode: 11 } => new($"The job store in {location} is damaged.", "Bring it back from a backup; keep the damaged file."),
        SqliteException { SqliteErrorCode: 8 or 14 } => new($"The job store in {location} may not be written.",
            "Give yourself the right to write the folder and the files in it."),
        SqliteException { SqliteErrorCode: 5 or 6 } => new($"Another program holds the job store in {location}.", "Close it and open again."),
        PostgresException { SqlState: PostgresErrorCodes.InsufficientPrivilege } => new("The database's tables are not up to date and this role may not change them.",
            "Open the job once with the role that owns the database."),
        PostgresException { SqlState: PostgresErrorCodes.InvalidCatalogName } => new($"There is no database {location}.", "Create the database first."),
        PostgresException { SqlState: PostgresErrorCodes.InvalidPassword or PostgresErrorCodes.InvalidAuthorizationSpecification } =>
            new($"The database {location} refuses this user or password.", "Mend the connection string."),
        var cause => new($"{location} cannot be opened: {cause?.Message}", "See that the place is there and can be reached."),
    };

    private static Stamp StampOf(string person, long ticks) => new(person, new DateTimeOffset(ticks, TimeSpan.Zero));

    private static Task<RevisionRow?> RowAsync(JobContext context, string cellId, int number, CancellationToken stop) =>
        context.Revisions.AsNoTracking().SingleOrDefaultAsync(r => r.CellId == cellId && r.Number == number, stop);

    private static Task<RevisionRow?> HeadRowAsync(JobContext context, string cellId, CancellationToken stop) =>
        context.Revisions.AsNoTracking().SingleOrDefaultAsync(
            r => r.CellId == cellId && context.Cells.Any(c => c.Id == cellId && c.Head == r.Number), stop);

    private static StoredCell? StoredOf(RevisionRow? row) => row is null ? null : new StoredCell(RevisionOf(row), Sound(row).Text);

    private static Revision RevisionOf(RevisionRow row) =>
        new(row.CellId, row.Number, row.Hash, row.ParentHash, StampOf(row.Person, row.Ticks), row.Words, row.Restores);

    /// <summary>A text that no longer has the hash it was saved under is not shown as if it were the cell.</summary>
    private static RevisionRow Sound(RevisionRow row) => Inputs.Hash(row.Text) == row.Hash
        ? row
        : throw new StoreFailedException($"Revision {row.Number} of {row.CellId} is damaged: its text does not have the hash it was saved under.");
}
