using Microsoft.Data.Sqlite;
using Microsoft.EntityFrameworkCore;
using Npgsql;
using Trivet.Store.Rows;

namespace Trivet.Store.Tests;

public sealed class OpeningTests(Databases databases)
{
    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Theory, OnBoth]
    public async Task The_migrations_say_what_the_model_says(Database database)
    {
        await using var job = await databases.NewJobAsync(database);
        await using var context = Opening.Connect(job.Location)();
        Assert.False(context.Database.HasPendingModelChanges());
    }

    [Theory, OnBoth]
    public async Task Many_may_open_an_empty_job_at_once(Database database)
    {
        await using var job = await databases.NewJobAsync(database);
        var stores = await Task.WhenAll(Enumerable.Range(0, 6).Select(_ => job.OpenAsync()));
        await Task.WhenAll(stores.Select((store, i) => store.CreateAsync($"cell-{i}", $"cell {i}")));
        Assert.Equal(6, (await stores[0].CellsAsync(Stop)).Length);
    }

    [Theory, OnBoth]
    public async Task A_job_of_a_later_program_is_refused_and_left_alone(Database database)
    {
        await using var job = await databases.NewJobAsync(database);
        await (await job.OpenAsync()).CreateAsync("jar-lids", "one");
        await using (var context = Opening.Connect(job.Location)())
            await context.Database.ExecuteSqlAsync(
                $"INSERT INTO \"__EFMigrationsHistory\" (\"MigrationId\", \"ProductVersion\") VALUES ('29990101000000_Later', '99.0.0')", Stop);

        var outcome = await JobStore.OpenAsync(job.Location, Stop);

        Assert.Equal(["29990101000000_Later"], Assert.IsType<OpenOutcome.TooNew>(outcome).Unknown);
    }

    [Theory, OnBoth]
    public async Task A_text_that_was_tampered_with_is_found_and_not_shown(Database database)
    {
        await using var job = await databases.NewJobAsync(database);
        var store = await job.OpenAsync();
        await store.CreateAsync("jar-lids", "one");
        await using (var context = Opening.Connect(job.Location)())
            await context.Database.ExecuteSqlAsync($"UPDATE revisions SET text = 'other' WHERE number = 1", Stop);

        Assert.Contains("revision 1", Assert.Single(await store.CheckAsync(Stop)), StringComparison.Ordinal);
        await Assert.ThrowsAsync<StoreFailedException>(() => store.HeadAsync("jar-lids", Stop));
    }

    [Fact]
    public async Task Sqlite_writes_ahead_and_syncs_at_each_commit()
    {
        await using var job = await databases.NewJobAsync(Database.Sqlite);
        await job.OpenAsync();
        await using var context = Opening.Connect(job.Location)();

        // Values as SQLite documents them: synchronous 2 is FULL (sqlite.org, "PRAGMA Statements").
        Assert.Equal("wal", await Pragma("journal_mode"));
        Assert.Equal("2", await Pragma("synchronous"));
        Assert.Equal("10000", await Pragma("busy_timeout"));
        Assert.Equal("1", await Pragma("foreign_keys"));

        async Task<string> Pragma(string name)
        {
            await context.Database.OpenConnectionAsync(Stop);
            await using var command = context.Database.GetDbConnection().CreateCommand();
            command.CommandText = $"PRAGMA {name}";
            return Convert.ToString(await command.ExecuteScalarAsync(Stop), System.Globalization.CultureInfo.InvariantCulture)!;
        }
    }

    [Fact]
    public async Task What_is_no_job_folder_is_refused_with_a_way_out()
    {
        string folder = Directory.CreateTempSubdirectory("trivet-store-").FullName;
        var missing = await JobStore.OpenAsync(new JobLocation.Folder(Path.Combine(folder, "none")), Stop);
        Assert.Contains("no folder", Assert.IsType<OpenOutcome.Refused>(missing).Problem, StringComparison.Ordinal);

        await File.WriteAllTextAsync(Path.Combine(folder, JobLocation.Folder.FileName), new string('x', 5000), Stop);
        var other = await JobStore.OpenAsync(new JobLocation.Folder(folder), Stop);
        Assert.Contains("not a job store", Assert.IsType<OpenOutcome.Refused>(other).Problem, StringComparison.Ordinal);
        SqliteConnection.ClearAllPools();
        Directory.Delete(folder, recursive: true);
    }

    [Fact]
    public async Task What_is_no_database_is_refused_without_telling_the_password()
    {
        var unreadable = await JobStore.OpenAsync(new JobLocation.Postgres("Host=localhost;Sesame=secret"), Stop);
        Assert.DoesNotContain("secret", Assert.IsType<OpenOutcome.Refused>(unreadable).ToString(), StringComparison.Ordinal);

        string server = await databases.ServerAsync();
        var absent = new JobLocation.Postgres(new NpgsqlConnectionStringBuilder(server) { Database = "absent" }.ConnectionString);
        Assert.Contains("no database", Assert.IsType<OpenOutcome.Refused>(await JobStore.OpenAsync(absent, Stop)).Problem, StringComparison.Ordinal);

        var wrong = new NpgsqlConnectionStringBuilder(server) { Password = "sesame" };
        var refused = Assert.IsType<OpenOutcome.Refused>(await JobStore.OpenAsync(new JobLocation.Postgres(wrong.ConnectionString), Stop));
        Assert.DoesNotContain("sesame", refused.ToString(), StringComparison.Ordinal);
        Assert.DoesNotContain("sesame", new JobLocation.Postgres(wrong.ConnectionString).ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_role_that_may_only_work_with_the_rows_is_enough()
    {
        await using var job = await databases.NewJobAsync(Database.Postgres);
        string owner = ((JobLocation.Postgres)job.Location).ConnectionString, role = $"clerk_{Guid.NewGuid():n}";
        await Databases.ExecuteAsync(owner, $"CREATE ROLE {role} LOGIN PASSWORD 'clerk'");
        var clerk = new JobLocation.Postgres(new NpgsqlConnectionStringBuilder(owner) { Username = role, Password = "clerk" }.ConnectionString);

        Assert.Contains("may not", Assert.IsType<OpenOutcome.Refused>(await JobStore.OpenAsync(clerk, Stop)).Problem, StringComparison.Ordinal);

        await job.OpenAsync();
        // The rights docs name for a role that works with a job: saved revisions can be read and added, never changed.
        await Databases.ExecuteAsync(owner, $"""
            GRANT SELECT ON "__EFMigrationsHistory" TO {role};
            GRANT SELECT, INSERT ON revisions, entries, receipts TO {role};
            GRANT SELECT, INSERT, UPDATE (content) ON photographs TO {role};
            GRANT SELECT, INSERT, UPDATE ON cells, drafts, exports, persons, devices TO {role};
            GRANT SELECT, INSERT, DELETE ON edits TO {role};
            """);
        await using (var store = Assert.IsType<OpenOutcome.Opened>(await JobStore.OpenAsync(clerk, Stop)).Store)
        {
            await store.CreateAsync("jar-lids", "one");
            var draft = await store.EditAsync((await store.DraftAsync("jar-lids", "ada", Stop))!, "two");
            Assert.IsType<SaveOutcome.Saved>(await store.SaveDraftAsync(draft, Invented.Noon, "", Stop));
            await store.ExportAsync("jar-lids", 2, Path.Combine(job.Folder, "jar-lids.json"), Stop);
            await store.AddPersonAsync("eve", "Eve", ["look"], "hash", Invented.Noon, Stop);
            Assert.IsType<PinAttempt.Allowed>(await store.TryPinAsync("eve", Invented.Noon, Stop));
            Assert.IsType<AccessOutcome.Kept>(await store.AddDeviceAsync(new("d1", "tablet", "ada", Invented.Noon, null), "hash", Stop));
            Assert.IsType<AccessOutcome.Kept>(await store.EndDeviceAsync("d1", Invented.Noon, Stop));
            Assert.Empty(await store.CheckAsync(Stop));
        }
        await Databases.ExecuteAsync(owner, $"DROP OWNED BY {role}; DROP ROLE {role}");
    }

    [Fact]
    public void A_place_is_read_from_what_a_person_types()
    {
        Assert.IsType<JobLocation.Postgres>(JobLocation.Parse("Host=server;Database=cells;Username=ada"));
        Assert.Equal(new JobLocation.Folder(Path.GetFullPath("jobs")), JobLocation.Parse("jobs"));
    }
}
