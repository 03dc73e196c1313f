using System.Diagnostics;
using Microsoft.Data.Sqlite;
using Npgsql;
using Trivet.Files.Entries;
using Trivet.Journal;
using Trivet.Testing;

namespace Trivet.Store.Tests;

/// <summary>
/// The drill of docs/team-use.md: a job is backed up while others go on writing, brought back into a place of its own, opened and looked through by the store's own
/// check; everything acknowledged before the backup began is there. On PostgreSQL with its own programs, on SQLite with its own statement.
/// </summary>
public sealed class RestoreTests(Databases databases)
{
    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Theory, OnBoth]
    public async Task A_backup_taken_while_others_write_comes_back_whole(Database database)
    {
        await using var job = await databases.NewJobAsync(database);
        var store = await job.OpenAsync();
        await store.CreateAsync("jar-lids", "one");
        await store.SaveAsync("jar-lids", 1, "two");
        var draft = await store.EditAsync((await store.DraftAsync("jar-lids", "ada", Stop))!, "three");
        await store.AddPersonAsync("eve", "Eve", ["record"], "hash of a PIN", Invented.Noon, Stop);
        await store.AddDeviceAsync(new("d1", "tablet", "ada", Invented.Noon, null), "hash of a key", Stop);
        await store.AddPhotographAsync([0xFF, 0xD8, 0xFF, 1, 2, 3], Invented.By("ada"), Stop);
        var device = new WritingDevice("tablet-1");
        for (int i = 0; i < 20; i++) await AppendAsync(store, device.Write(new Counted(i)));
        var before = await store.JournalAsync(0, Stop);

        using var enough = CancellationTokenSource.CreateLinkedTokenSource(Stop);
        var writing = Task.Run(async () =>
        {
            var other = new WritingDevice("tablet-2");
            for (int i = 0; !enough.IsCancellationRequested; i++) await AppendAsync(store, other.Write(new Counted(i)));
        }, Stop);
        await using var copy = await BackUpAndRestoreAsync(job, database);
        await enough.CancelAsync();
        await writing;

        var restored = await copy.OpenAsync();
        Assert.Empty(await restored.CheckAsync(Stop));
        Assert.Equal((await store.RevisionsAsync("jar-lids", Stop)).AsEnumerable(), await restored.RevisionsAsync("jar-lids", Stop));
        Assert.Equal((await store.HeadAsync("jar-lids", Stop))!.Text, (await restored.HeadAsync("jar-lids", Stop))!.Text);
        Assert.Equal(draft.Text, (await restored.DraftAsync("jar-lids", "ada", Stop))!.Text);
        Assert.Equal("eve", Assert.Single(await restored.PersonsAsync(Stop)).Id);
        Assert.Equal("hash of a key", (await restored.DeviceKeyAsync("d1", Stop))?.KeyHash);
        var journal = await restored.JournalAsync(0, Stop);
        Assert.Equal(before.Lines.Select(l => l.Text), journal.Lines.Take(before.Lines.Length).Select(l => l.Text));
        Assert.True((await store.JournalAsync(0, Stop)).Lines.Length > before.Lines.Length, "nobody wrote during the backup");
        // It is a job to work on, not only to look at.
        await AppendAsync(restored, device.Write(new Ticked()));
        await restored.SaveAsync("jar-lids", 2, "after the restore");
        Assert.Empty(await restored.CheckAsync(Stop));
    }

    private static async Task AppendAsync(JobStore store, Kept kept) =>
        Assert.IsType<AppendOutcome.Received>(Assert.Single(await store.AppendAsync([new Arrival(EntryText.Of(kept.Entry), kept.Hash)], Invented.Noon, CancellationToken.None)));

    private async Task<TestJob> BackUpAndRestoreAsync(TestJob job, Database database)
    {
        var copy = await databases.NewJobAsync(database);
        if (job.Location is JobLocation.Folder folder)
        {
            await using var connection = new SqliteConnection(new SqliteConnectionStringBuilder { DataSource = Path.Combine(folder.Path, JobLocation.Folder.FileName), Pooling = false }.ConnectionString);
            await connection.OpenAsync(Stop);
            await using var command = connection.CreateCommand();
            command.CommandText = "VACUUM INTO $to";
            command.Parameters.AddWithValue("$to", Path.Combine(copy.Folder, JobLocation.Folder.FileName));
            command.CommandTimeout = 60;
            await command.ExecuteNonQueryAsync(Stop);
            return copy;
        }

        string dump = Path.Combine(job.Folder, "job.dump");
        var from = new NpgsqlConnectionStringBuilder(((JobLocation.Postgres)job.Location).ConnectionString);
        var to = new NpgsqlConnectionStringBuilder(((JobLocation.Postgres)copy.Location).ConnectionString);
        await RunAsync("pg_dump", from, "--format=custom", "--file", dump, "--dbname", from.Database!);
        await RunAsync("pg_restore", to, "--exit-on-error", "--no-owner", "--dbname", to.Database!, dump);
        return copy;
    }

    private static async Task RunAsync(string program, NpgsqlConnectionStringBuilder server, params string[] arguments)
    {
        string? path = PostgresServer.Program(program);
        Assert.SkipWhen(path is null, $"{program} is not installed (Debian: postgresql-client).");
        var start = new ProcessStartInfo(path, ["--host", server.Host!, "--port", $"{server.Port}", "--username", server.Username!, "--no-password", .. arguments]) { RedirectStandardError = true, WorkingDirectory = "/" };
        start.Environment["PGPASSWORD"] = server.Password;
        using var process = Process.Start(start)!;
        string said = await process.StandardError.ReadToEndAsync(Stop);
        await process.WaitForExitAsync(Stop);
        Assert.True(process.ExitCode == 0, $"{program}: {said}");
    }
}
