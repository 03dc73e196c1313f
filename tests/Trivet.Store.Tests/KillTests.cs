using System.Globalization;
using Trivet.Testing;

namespace Trivet.Store.Tests;

/// <summary>
/// A process that edits and saves is ended by the system (SIGKILL) in the middle of it, again and again on one job. How far it came
/// differs from run to run; that nothing acknowledged is missing may not.
/// </summary>
public sealed class KillTests(Databases databases)
{
    private static readonly int Rounds = Effort.Cases(5);

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Theory, OnBoth]
    public async Task Killed_while_saving_nothing_acknowledged_is_lost_and_the_next_start_is_clean(Database database)
    {
        await using var job = await databases.NewJobAsync(database);
        var random = new Random(20300506);
        var said = new List<string>();
        for (int round = 0; round < Rounds; round++)
        {
            int lines = random.Next(1, 40), milliseconds = random.Next(0, 25);
            await RunAndEndAsync(job, said, async saver =>
            {
                for (int line = 0; line < lines; line++) await saver.ReadAsync();
                await Task.Delay(milliseconds, Stop);
            });
            await AssertKeptAsync(job, said);
        }
    }

    [Theory, OnBoth]
    public async Task Killed_while_opening_an_empty_job_the_next_start_is_clean(Database database)
    {
        var random = new Random(20300507);
        for (int round = 0; round < Rounds; round++)
        {
            await using var job = await databases.NewJobAsync(database);
            int milliseconds = random.Next(100, 900);
            var said = new List<string>();
            await RunAndEndAsync(job, said, _ => Task.Delay(milliseconds, Stop));
            await using var store = await job.OpenAsync();
            Assert.Empty(await store.CheckAsync(Stop));
        }
    }

    [Fact]
    public async Task When_the_database_server_goes_down_nothing_acknowledged_is_lost()
    {
        // A server of its own: the other tests go on using theirs.
        var (server, reason) = await PostgresServer.StartAsync();
        if (server is null) Assert.Skip(reason);
        await using (server)
        {
            await using var job = new TestJob(new JobLocation.Postgres(server.ConnectionString.Replace("Database=postgres", "Database=job", StringComparison.Ordinal)), server.ConnectionString);
            await Databases.ExecuteAsync(server.ConnectionString, "CREATE DATABASE job");
            var said = new List<string>();
            await RunAndEndAsync(job, said, async saver =>
            {
                for (int line = 0; line < 30; line++) await saver.ReadAsync();
                await server.CrashAndRestartAsync();
            });
            await AssertKeptAsync(job, said);
        }
    }

    private static async Task RunAndEndAsync(TestJob job, List<string> said, Func<SavingProcess, Task> until)
    {
        int number = said.Select(l => l.Split(' ')).Where(w => w[0] == "edit").Select(w => Number(w[1])).DefaultIfEmpty(0).Max();
        using var saver = new SavingProcess(job.Location, [number.ToString(CultureInfo.InvariantCulture)], said);
        await until(saver);
        await saver.EndAsync();
    }

    private static async Task AssertKeptAsync(TestJob job, List<string> said)
    {
        await using var store = await job.OpenAsync();
        Assert.Empty(await store.CheckAsync(Stop));

        var revisions = await store.RevisionsAsync("saved", Stop);
        foreach (string[] words in said.Select(l => l.Split(' ')).Where(w => w[0] == "saved"))
        {
            var stored = await store.RevisionAsync("saved", Number(words[1]), Stop);
            Assert.Equal((words[2], $"edit {words[3]}"), (stored?.Revision.Hash, stored?.Revision.Words));
        }

        // The last edit acknowledged is in the draft, or in a revision that was saved but not acknowledged any more.
        if (said.LastOrDefault(l => l.StartsWith("edit ", StringComparison.Ordinal)) is { } edit)
        {
            var draft = (await store.DraftAsync("saved", "saver", Stop))!;
            Assert.Contains(edit, revisions.Select(r => r.Words).Concat(draft.Edits.Select(e => e.Words)));
        }
    }

    private static int Number(string word) => int.Parse(word, CultureInfo.InvariantCulture);
}
