using System.Globalization;
using Trivet.Files.Entries;
using Trivet.Journal;
using Trivet.Testing;

namespace Trivet.Store.Tests;

/// <summary>
/// What was acknowledged is there after the process was ended, after the log was cut, after the disk was full. docs/reliability.md says what
/// was counted, and by which command.
/// </summary>
public sealed class JournalLossTests(Databases databases, ITestOutputHelper told)
{
    private static readonly int Rounds = Effort.Cases(5);

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Theory, OnBoth]
    public async Task Killed_under_load_every_receipt_given_is_found(Database database)
    {
        await using var job = await databases.NewJobAsync(database);
        var random = new Random(20300508);
        var said = new List<string>();
        long found = 0;
        for (int round = 0; round < Rounds; round++)
        {
            int lines = random.Next(1, 400), milliseconds = random.Next(0, 25);
            string devices = string.Join(',', Enumerable.Range(0, 4).Select(d => $"round-{round}-device-{d}"));
            using var saver = new SavingProcess(job.Location, [devices, "journal"], said);
            for (int line = 0; line < lines; line++) await saver.ReadAsync();
            await Task.Delay(milliseconds, Stop);
            await saver.EndAsync();
            found = await AssertFoundAsync(job, said);
        }
        told.WriteLine($"{Rounds} times ended; {Receipts(said).Count} confirmed, {found} found, 0 missing.");
    }

    [Fact]
    public async Task Wherever_the_write_ahead_log_is_cut_all_that_was_in_it_by_then_is_found()
    {
        await using var job = await databases.NewJobAsync(Database.Sqlite);
        var store = await job.OpenAsync();
        WritingDevice[] devices = [new("tablet-1"), new("desk-2")];
        string file = Path.Combine(job.Folder, JobLocation.Folder.FileName);
        var acknowledged = new List<(long Log, int Entries)> { (new FileInfo(file + "-wal").Length, 0) };
        for (int i = 0; i < 12; i++)
        {
            await store.AppendAsync([Arrival(devices[i % 2].Write(new Counted(i))), Arrival(devices[i % 2].Write(new Ticked()))], Invented.Noon, Stop);
            acknowledged.Add((new FileInfo(file + "-wal").Length, 2 * (i + 1)));
        }
        byte[] database = await ReadAsync(file), log = await ReadAsync(file + "-wal");
        Assert.Equal(acknowledged[^1].Log, log.Length);

        int cuts = 0;
        for (int cut = 0; cut <= log.Length; cut += 512)
        {
            var copy = Directory.CreateTempSubdirectory("trivet-store-");
            string cutFile = Path.Combine(copy.FullName, JobLocation.Folder.FileName);
            await File.WriteAllBytesAsync(cutFile, database, Stop);
            await File.WriteAllBytesAsync(cutFile + "-wal", log[..cut], Stop);
            await using (var reopened = Assert.IsType<OpenOutcome.Opened>(await JobStore.OpenAsync(new JobLocation.Folder(copy.FullName), Stop)).Store)
            {
                Assert.Empty(await reopened.CheckAsync(Stop));
                var lines = (await reopened.JournalAsync(0, Stop)).Lines;
                int expected = acknowledged.Where(a => a.Log <= cut).Select(a => a.Entries).DefaultIfEmpty(0).Max();
                Assert.Equal(expected, lines.Length);
                Assert.Equal(Enumerable.Range(1, expected), lines.Select(l => (int)l.Kept.Receipt!.Number));
                // And it goes on: what the device still has is received.
                Assert.IsType<AppendOutcome.Received>(Assert.Single(await reopened.AppendAsync([Arrival(new WritingDevice("third").Write(new Begun()))], Invented.Noon, Stop)));
            }
            copy.Delete(true);
            cuts++;
        }
        told.WriteLine($"{cuts} cuts of a log of {log.Length} bytes; each store opened sound with all that was acknowledged within the log.");
    }

    [Fact]
    public async Task On_a_full_disk_nothing_acknowledged_is_lost_and_it_goes_on_when_there_is_room()
    {
        await using var job = await databases.NewJobAsync(Database.Sqlite);
        await (await job.OpenAsync()).DisposeAsync();
        var said = new List<string>();
        using (var saver = new SavingProcess(job.Location, ["tablet-1,desk-2", "journal"], said, largestFile: 512 * 1024))
        {
            while (said.Count(l => l == "failed") < 6) await saver.ReadAsync();
            await saver.EndAsync();
        }
        Assert.NotEmpty(Receipts(said));
        long before = await AssertFoundAsync(job, said);

        using (var saver = new SavingProcess(job.Location, ["tablet-3", "journal"], said))
        {
            for (int line = 0; line < 40; line++) await saver.ReadAsync();
            await saver.EndAsync();
        }
        long after = await AssertFoundAsync(job, said);
        Assert.True(after > before);
        told.WriteLine($"full after {before} entries found; {Receipts(said).Count} confirmed in all, {after} found, 0 missing.");
    }

    [Fact]
    public async Task When_the_database_server_goes_down_every_receipt_given_is_found()
    {
        var (server, reason) = await PostgresServer.StartAsync();
        if (server is null) Assert.Skip(reason);
        await using (server)
        {
            await using var job = new TestJob(new JobLocation.Postgres(server.ConnectionString.Replace("Database=postgres", "Database=job", StringComparison.Ordinal)), server.ConnectionString);
            await Databases.ExecuteAsync(server.ConnectionString, "CREATE DATABASE job");
            var said = new List<string>();
            using (var saver = new SavingProcess(job.Location, ["tablet-1,desk-2", "journal"], said))
            {
                for (int line = 0; line < 60; line++) await saver.ReadAsync();
                await server.CrashAndRestartAsync();
                int failed = said.Count;
                while (said.Skip(failed).Count(l => l.StartsWith("received", StringComparison.Ordinal)) < 20) await saver.ReadAsync();
                await saver.EndAsync();
            }
            long found = await AssertFoundAsync(job, said);
            told.WriteLine($"{Receipts(said).Count} confirmed, {found} found, 0 missing.");
        }
    }

    /// <summary>Every receipt that was said is in the store as it was said, and the store is sound.</summary>
    /// <returns>How many entries are there.</returns>
    private static async Task<long> AssertFoundAsync(TestJob job, List<string> said)
    {
        await using var store = await job.OpenAsync();
        Assert.Empty(await store.CheckAsync(Stop));
        var lines = (await store.JournalAsync(0, Stop)).Lines;
        var found = lines.Select(l => (l.Kept.Hash, l.Kept.Receipt!.Number, l.Kept.ReceiptHash)).ToHashSet();
        Assert.DoesNotContain(Receipts(said), r => !found.Contains(r));
        Assert.DoesNotContain(Mismatches.Of([.. lines.Select(l => l.Kept)]), m => m.Kind is not MismatchKind.ClockAhead);
        return lines.Length;
    }

    private static List<(string Entry, long Number, string Hash)> Receipts(IEnumerable<string> said) =>
    [
        .. said.Select(l => l.Split(' ')).Where(w => w is ["received", _, _, _]).Select(w => (w[1], long.Parse(w[2], CultureInfo.InvariantCulture), w[3])),
    ];

    private static Arrival Arrival(Kept kept) => new(EntryText.Of(kept.Entry), kept.Hash);

    private static async Task<byte[]> ReadAsync(string file)
    {
        await using var open = new FileStream(file, FileMode.Open, FileAccess.Read, FileShare.ReadWrite | FileShare.Delete);
        byte[] all = new byte[open.Length];
        await open.ReadExactlyAsync(all, Stop);
        return all;
    }
}
