using System.Diagnostics;
using System.Globalization;
using Trivet.Files.Entries;
using Trivet.Journal;
using Trivet.Testing;

namespace Trivet.Store.Tests;

/// <summary>
/// How many entries are acknowledged in a second, as devices send them and as a file brings them. Time is told and never asserted; asserted is that
/// every one is there, once and in one chain. docs/reliability.md has what was measured.
/// </summary>
public sealed class JournalRateTests(Databases databases, ITestOutputHelper told)
{
    private static readonly int Each = Effort.Cases(10);

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Theory, OnBoth]
    public async Task Devices_that_send_at_once_are_all_acknowledged(Database database)
    {
        foreach (int devices in (int[])[1, 4, 16])
        {
            await using var job = await databases.NewJobAsync(database);
            var store = await job.OpenAsync();
            Arrival[][] sent = [.. Enumerable.Range(0, devices).Select(d => Chain($"tablet-{d}", Each))];
            await store.AppendAsync(Chain("first", 1), Invented.Noon, Stop);

            // A device sends the next entry when it has the receipt of the one before, as someone at a machine answers.
            var clock = Stopwatch.StartNew();
            await Task.WhenAll(sent.Select(chain => Task.Run(async () =>
            {
                foreach (var arrival in chain)
                    Assert.IsType<AppendOutcome.Received>(Assert.Single(await store.AppendAsync([arrival], Invented.Noon, Stop)));
            }, Stop)));
            Tell($"{database}, {devices} devices at once, one entry at a time", devices * Each, clock.Elapsed);
            await AssertWholeAsync(store, 1 + devices * Each);
        }
    }

    [Theory, OnBoth]
    public async Task A_file_is_taken_in_whole(Database database)
    {
        await using var job = await databases.NewJobAsync(database);
        var store = await job.OpenAsync();
        Arrival[] sent = Chain("tablet-1", 50 * Each);
        string file = string.Join('\n', sent.Select(a => a.Text));
        await store.AppendAsync(Chain("first", 1), Invented.Noon, Stop);

        var clock = Stopwatch.StartNew();
        Assert.Equal(sent.Length, (await store.TakeJournalAsync(new StringReader(file), "tablet.jsonl", Invented.By("ada"), Stop)).Entries);
        Tell($"{database}, from a file", sent.Length, clock.Elapsed);
        await AssertWholeAsync(store, 1 + sent.Length);
    }

    private static Arrival[] Chain(string device, int length)
    {
        var writing = new WritingDevice(device);
        return [.. Enumerable.Range(1, length).Select(i => writing.Write(new Measured($"{i} mm", "m", i / 1000.0, 0.001), "limit-switch:a", "gap")).Select(k => new Arrival(EntryText.Of(k.Entry), k.Hash))];
    }

    private static async Task AssertWholeAsync(JobStore store, int entries)
    {
        Assert.Empty(await store.CheckJournalAsync(Stop));
        var lines = (await store.JournalAsync(0, Stop)).Lines;
        Assert.Equal(entries, lines.Length);
        Assert.Empty(Mismatches.Of([.. lines.Select(l => l.Kept)]).Where(m => m.Kind is not MismatchKind.ClockAhead));
    }

    private void Tell(string what, int entries, TimeSpan took) =>
        told.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{what}: {entries} entries in {took.TotalSeconds:0.00} s, {entries / took.TotalSeconds:0} per second"));
}
