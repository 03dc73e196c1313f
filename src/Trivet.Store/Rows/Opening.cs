using System.Data;
using System.Data.Common;
using Microsoft.Data.Sqlite;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Diagnostics;
using Microsoft.EntityFrameworkCore.Infrastructure;
using Microsoft.EntityFrameworkCore.Migrations;
using Microsoft.EntityFrameworkCore.Storage;
using Npgsql;

namespace Trivet.Store.Rows;

/// <summary>Connects to either database so that what is acknowledged is on disk, and brings its tables to this program's model.</summary>
internal static class Opening
{
    /// <summary>Longest wait for another process that writes, seconds. A write takes milliseconds.</summary>
    private const int BusySeconds = 10;

    /// <summary>Key of the lock that lets one program at a time change the tables of a PostgreSQL database; any fixed number will do.</summary>
    private const long MigrationLock = 0x7472697665740001;

    public static Func<JobContext> Connect(JobLocation location)
    {
        if (location is JobLocation.Postgres postgres)
        {
            var parts = new NpgsqlConnectionStringBuilder(postgres.ConnectionString) { ApplicationName = "trivet" };
            // A server may be set to acknowledge before writing; this session is not.
            parts.Options = $"{parts.Options} -c synchronous_commit=on".Trim();
            var options = new DbContextOptionsBuilder<PostgresJobContext>().UseNpgsql(parts.ConnectionString).Options;
            return () => new PostgresJobContext(options);
        }
        else
        {
            var options = new DbContextOptionsBuilder<SqliteJobContext>()
                .UseSqlite(SqliteConnectionString((JobLocation.Folder)location))
                .AddInterceptors(new DurableSqlite())
                .Options;
            return () => new SqliteJobContext(options);
        }
    }

    public static string SqliteConnectionString(JobLocation.Folder folder) => new SqliteConnectionStringBuilder
    {
        DataSource = Path.Combine(folder.Path, JobLocation.Folder.FileName),
        ForeignKeys = true,
        DefaultTimeout = BusySeconds,
    }.ConnectionString;

    /// <summary>
    /// Brings the tables up to date in one transaction: killed at any moment, the database is as before or as after. The
    /// library's own migrating call takes a lock that a killed process leaves behind in SQLite, so the steps are run as a script here.
    /// </summary>
    /// <returns>The steps found that this program does not know; with any, nothing was changed.</returns>
    public static async Task<IReadOnlyList<string>> MigrateAsync(JobContext context, CancellationToken stop)
    {
        // Without pending steps only reading is needed, so that a role without the right to make tables can work.
        var unknown = await UnknownAsync(context, stop);
        if (unknown.Count > 0 || !(await context.Database.GetPendingMigrationsAsync(stop)).Any()) return unknown;

        // One program at a time looks and changes: SQLite's transaction lets one writer in, PostgreSQL's takes a lock until its end.
        await using var transaction = await context.Database.BeginTransactionAsync(stop);
        if (context is PostgresJobContext) await context.Database.ExecuteSqlAsync($"SELECT pg_advisory_xact_lock({MigrationLock})", stop);
        var applied = await HasHistoryAsync(context, stop) ? (await context.Database.GetAppliedMigrationsAsync(stop)).ToList() : [];
        if (applied.Count < context.Database.GetMigrations().Count()) await RunScriptAsync(context, applied.LastOrDefault(), stop);
        await transaction.CommitAsync(stop);
        return [];
    }

    /// <summary>PostgreSQL spoils a transaction in which a table is read that is not there, so it is asked for by name first.</summary>
    private static async Task<bool> HasHistoryAsync(JobContext context, CancellationToken stop) =>
        context is SqliteJobContext
        || await context.Database.SqlQuery<bool>($"""SELECT to_regclass('"__EFMigrationsHistory"') IS NOT NULL AS "Value" """).SingleAsync(stop);

    private static async Task RunScriptAsync(JobContext context, string? after, CancellationToken stop)
    {
        await using var command = context.Database.GetDbConnection().CreateCommand();
        command.Transaction = context.Database.CurrentTransaction!.GetDbTransaction();
#pragma warning disable CA2100 // The text is generated from this assembly's own migrations.
        command.CommandText = context.GetService<IMigrator>().GenerateScript(after, options: MigrationsSqlGenerationOptions.NoTransactions);
#pragma warning restore CA2100
        await command.ExecuteNonQueryAsync(stop);
    }

    /// <summary>Begins a transaction in which all reads see one moment, and which keeps no writer waiting.</summary>
    public static async Task<IDbContextTransaction> ReadOneMomentAsync(JobContext context, CancellationToken stop)
    {
        if (context is PostgresJobContext) return await context.Database.BeginTransactionAsync(IsolationLevel.RepeatableRead, stop);
        await context.Database.OpenConnectionAsync(stop);
        var sqlite = (SqliteConnection)context.Database.GetDbConnection();
        return (await context.Database.UseTransactionAsync(sqlite.BeginTransaction(deferred: true), stop))!;
    }

    private static async Task<IReadOnlyList<string>> UnknownAsync(JobContext context, CancellationToken stop) =>
        [.. (await context.Database.GetAppliedMigrationsAsync(stop)).Except(context.Database.GetMigrations())];

    /// <summary>What each connection to SQLite must be told, since only the journal mode is kept in the file.</summary>
    private sealed class DurableSqlite : DbConnectionInterceptor
    {
        // FULL syncs the log at each commit; fullfsync makes macOS flush the drive as well and is without effect elsewhere. With
        // secure_delete the bytes of an erased photograph are overwritten, not only let go.
        private static readonly string Settings =
            $"PRAGMA busy_timeout={BusySeconds * 1000}; PRAGMA journal_mode=WAL; PRAGMA synchronous=FULL; PRAGMA fullfsync=ON; PRAGMA secure_delete=ON;";

        public override void ConnectionOpened(DbConnection connection, ConnectionEndEventData eventData)
        {
            using var command = connection.CreateCommand();
#pragma warning disable CA2100 // Constants only.
            command.CommandText = Settings;
#pragma warning restore CA2100
            command.ExecuteNonQuery();
        }

        public override Task ConnectionOpenedAsync(DbConnection connection, ConnectionEndEventData eventData, CancellationToken cancellationToken = default)
        {
            ConnectionOpened(connection, eventData);
            return Task.CompletedTask;
        }
    }
}
