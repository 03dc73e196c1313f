using System.Collections.Immutable;
using System.Text;
using Microsoft.EntityFrameworkCore;
using Trivet.Files.Entries;
using Trivet.Journal;
using Trivet.Store.Rows;
using Trivet.Testing;

namespace Trivet.Store.Tests;

public sealed class JournalTests(Databases databases)
{
    private static readonly DateTimeOffset Later = Invented.Noon.AddHours(1);

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Theory, OnBoth]
    public async Task Every_kind_of_entry_comes_back_as_it_was_sent(Database database)
    {
        await using var job = await databases.NewJobAsync(database);
        var store = await job.OpenAsync();
        var device = new WritingDevice("tablet-1");
        Kept[] sent = [.. WritingDevice.EveryKind.Select(s => device.Write(s, "limit-switch:a"))];

        var received = await ReceivedAsync(store, sent);
        var journal = await (await job.OpenAsync()).JournalAsync(0, Stop);

        Assert.Equal(sent.Select(k => EntryText.Of(k.Entry)), journal.Lines.Select(l => l.Text));
        Assert.Equal(received.Select(r => r.Receipt), journal.Lines.Select(l => l.Kept.Receipt));
        Assert.Equal(Enumerable.Range(1, sent.Length), received.Select(r => (int)r.Receipt.Number));
        Assert.Equal(["", .. received.SkipLast(1).Select(r => r.ReceiptHash)], received.Select(r => r.Receipt.Previous));
        Assert.Equal(new JournalHead(sent.Length, received[^1].ReceiptHash), journal.Head);
        Assert.Empty(journal.Damaged);
        Assert.Empty(await store.CheckAsync(Stop));
        Assert.Equal(journal.Lines[3..].Select(l => l.Text), (await store.JournalAsync(3, Stop)).Lines.Select(l => l.Text));
    }

    [Theory, OnBoth]
    public async Task Sent_twice_it_is_kept_once_and_has_the_same_receipt(Database database)
    {
        await using var job = await databases.NewJobAsync(database);
        var store = await job.OpenAsync();
        var device = new WritingDevice("tablet-1");
        Kept first = device.Write(new Begun()), second = device.Write(new Ticked());

        var once = await ReceivedAsync(store, first, second);
        var again = await ReceivedAsync(await job.OpenAsync(), second, first, second);
        Kept third = device.Write(new Ticked());
        var twiceInOne = await ReceivedAsync(store, third, third);

        Assert.Equal([once[1] with { Again = true }, once[0] with { Again = true }, once[1] with { Again = true }], again);
        Assert.Equal([false, true], twiceInOne.Select(r => r.Again));
        Assert.Equal(twiceInOne[0].Receipt, twiceInOne[1].Receipt);
        Assert.Equal(3, (await store.JournalAsync(0, Stop)).Lines.Length);
    }

    [Theory, OnBoth]
    public async Task Only_what_is_damaged_is_refused_and_keeps_nothing_else_out(Database database)
    {
        await using var job = await databases.NewJobAsync(database);
        var store = await job.OpenAsync();
        var device = new WritingDevice("tablet-1");
        var sound = device.Write(new Written("66 ohms"));
        string text = EntryText.Of(sound.Entry);

        var outcomes = await store.AppendAsync(
            [
                new Arrival(text.Replace("66", "60", StringComparison.Ordinal), sound.Hash),
                new Arrival(text[..^1]),
                new Arrival(new string('{', EntryText.Largest + 1)),
                new Arrival(EntryText.Of(new Receipt(1, sound.Hash, "", 0))),
                new Arrival(text, sound.Hash),
            ], Later, Stop);

        Assert.Equal([true, true, true, true, false], outcomes.Select(o => o is AppendOutcome.Damaged { Problem.Length: > 0, Remedy.Length: > 0 }));
        Assert.Equal(sound.Hash, Assert.Single((await store.JournalAsync(0, Stop)).Lines).Kept.Hash);
    }

    [Theory, OnBoth]
    public async Task What_does_not_fit_together_is_kept_and_shown(Database database)
    {
        await using var job = await databases.NewJobAsync(database);
        var store = await job.OpenAsync();
        WritingDevice device = new("tablet-1"), copy = new("tablet-1");
        Kept first = device.Write(new Counted(1)), other = copy.Write(new Counted(2)), lost = device.Write(new Counted(3));
        device.Now = WritingDevice.Noon.AddHours(-1);
        Kept third = device.Write(new Counted(4), "no-such-step:x"), fourth = device.Write(new Released(lost.Hash));
        device.Now = WritingDevice.Noon.AddHours(-2);
        var fifth = device.Write(new Ticked());

        await ReceivedAsync(store, first, other, third, fourth, fifth);

        var journal = await store.JournalAsync(0, Stop);
        Assert.Equal(5, journal.Lines.Length);
        Assert.Equal(
            [MismatchKind.Fork, MismatchKind.Gap, MismatchKind.ClockBack, MismatchKind.NamesNothing],
            Mismatches.Of([.. journal.Lines.Select(l => l.Kept)]).Select(m => m.Kind));
        Assert.Empty(await store.CheckAsync(Stop));

        // What was missing comes later: the gap is closed, the clock's jump is seen where it happened.
        await ReceivedAsync(store, lost);
        Assert.Equal(
            [MismatchKind.Fork, MismatchKind.ClockBack, MismatchKind.ClockBack],
            Mismatches.Of([.. (await store.JournalAsync(0, Stop)).Lines.Select(l => l.Kept)]).Select(m => m.Kind));
    }

    [Theory, OnBoth]
    public async Task Two_devices_at_once_through_two_programs_make_one_chain(Database database)
    {
        await using var job = await databases.NewJobAsync(database);
        JobStore[] stores = [await job.OpenAsync(), await job.OpenAsync()];
        WritingDevice[] devices = [new("tablet-1"), new("desk-2")];

        await Task.WhenAll(devices.Select((device, i) => Task.Run(async () =>
        {
            for (int n = 0; n < 25; n++) await ReceivedAsync(stores[i], device.Write(new Counted(n)), device.Write(new Ticked()));
        }, Stop)));

        var journal = await stores[0].JournalAsync(0, Stop);
        Assert.Equal(100, journal.Lines.Length);
        Assert.Empty(await stores[0].CheckAsync(Stop));
        Assert.Empty(Mismatches.Of([.. journal.Lines.Select(l => l.Kept)]));
        foreach (var device in devices)
            Assert.Equal(Enumerable.Range(1, 50), journal.Lines.Where(l => l.Kept.Entry.Device == device.Id).Select(l => (int)l.Kept.Entry.Sequence));
    }

    [Theory, OnBoth]
    public async Task Several_who_write_for_one_device_make_one_chain(Database database)
    {
        await using var job = await databases.NewJobAsync(database);
        JobStore[] stores = [await job.OpenAsync(), await job.OpenAsync()];
        var entry = new WritingDevice("desk").Write(new Ticked()).Entry;

        await Task.WhenAll(Enumerable.Range(0, 30).Select(i => stores[i % 2].RecordAsync(entry with { Note = $"{i}" }, Later, Stop)));

        var journal = await stores[0].JournalAsync(0, Stop);
        Assert.Equal(Enumerable.Range(1, 30), journal.Lines.Select(l => (int)l.Kept.Entry.Sequence));
        Assert.Empty(Mismatches.Of([.. journal.Lines.Select(l => l.Kept)]));
        Assert.IsType<AppendOutcome.Damaged>(await stores[0].RecordAsync(entry with { Note = new string('n', 9000) }, Later, Stop));
    }

    [Theory, OnBoth]
    public async Task More_than_one_transaction_takes_is_received_whole(Database database)
    {
        await using var job = await databases.NewJobAsync(database);
        var store = await job.OpenAsync();
        var device = new WritingDevice("tablet-1");
        Kept[] sent = [.. Enumerable.Range(0, 1201).Select(i => device.Write(new Counted(i)))];
        Assert.Equal(1201, (await ReceivedAsync(store, sent))[^1].Receipt.Number);
        Assert.Empty(await store.CheckAsync(Stop));
    }

    [Theory, OnBoth]
    public async Task A_word_changed_in_the_database_is_found_and_not_shown(Database database)
    {
        await using var job = await databases.NewJobAsync(database);
        var store = await job.OpenAsync();
        var device = new WritingDevice("tablet-1");
        var sent = await ReceivedAsync(store, device.Write(new Written("66 ohms")), device.Write(new Ticked()));
        await using (var context = Opening.Connect(job.Location)())
            await context.Database.ExecuteSqlAsync($"UPDATE entries SET text = replace(text, '66', '60') WHERE sequence = 1", Stop);

        Assert.Contains("entry 1 of tablet-1", Assert.Single(await store.CheckAsync(Stop)), StringComparison.Ordinal);
        var journal = await store.JournalAsync(0, Stop);
        Assert.Equal(sent[0].Receipt, Assert.Single(journal.Damaged));
        Assert.Equal(2, Assert.Single(journal.Lines).Kept.Entry.Sequence);
        Assert.Equal(3, journal.Export().SelectMany(l => l.Split('\n')).Count());
    }

    [Theory, OnBoth]
    public async Task Rewriting_a_receipt_and_its_entry_breaks_the_chain_behind_it(Database database)
    {
        await using var job = await databases.NewJobAsync(database);
        var store = await job.OpenAsync();
        var device = new WritingDevice("tablet-1");
        var sent = await ReceivedAsync(store, device.Write(new Counted(1)), device.Write(new Counted(2)), device.Write(new Counted(3)));
        var forged = new Receipt(2, sent[1].Receipt.Entry, sent[1].Receipt.Previous, sent[1].Receipt.Ticks + 1);
        string hash = EntryText.Hash(EntryText.Of(forged));
        await using (var context = Opening.Connect(job.Location)())
            await context.Database.ExecuteSqlAsync($"UPDATE receipts SET ticks = {forged.Ticks}, hash = {hash} WHERE number = 2", Stop);

        Assert.Contains("receipt 3 does not follow", Assert.Single(await store.CheckAsync(Stop)), StringComparison.Ordinal);
    }

    [Theory, OnBoth]
    public async Task A_photograph_is_kept_once_and_may_be_erased_leaving_hash_and_reason(Database database)
    {
        await using var job = await databases.NewJobAsync(database);
        var store = await job.OpenAsync();
        byte[] content = Encoding.ASCII.GetBytes("a photograph of the invented cabinet, long enough to be looked for in the file");
        var device = new WritingDevice("tablet-1");

        string hash = Assert.IsType<PhotographOutcome.Stored>(await store.AddPhotographAsync(content, Invented.By("ada"), Stop)).Hash;
        Assert.Equal(new(hash, Again: true), Assert.IsType<PhotographOutcome.Stored>(await store.AddPhotographAsync(content, Invented.By("bob", 5), Stop)));
        byte[] other = Encoding.ASCII.GetBytes("another one");
        string otherHash = Assert.IsType<PhotographOutcome.Stored>(await store.AddPhotographAsync(other, Invented.By("ada"), Stop)).Hash;
        Assert.Equal(new[] { hash, otherHash }.Order(StringComparer.Ordinal), await store.PhotographsAsync(Stop));
        var stored = (await store.PhotographAsync(hash, Stop))!;
        Assert.Equal(content, stored.Content);
        Assert.Equal(Invented.By("ada"), stored.By);
        Assert.Empty(await store.CheckAsync(Stop));
        if (database == Database.Sqlite) Assert.True(await InFilesAsync(job.Folder, content));

        await ReceivedAsync(store, device.Write(new Photographed(hash)), device.Write(new Erased(hash, "shows a person")));

        Assert.Null((await store.PhotographAsync(hash, Stop))!.Content);
        Assert.Equal([otherHash], await store.PhotographsAsync(Stop));
        Assert.IsType<PhotographOutcome.WasErased>(await store.AddPhotographAsync(content, Invented.By("bob"), Stop));
        Assert.Empty(await store.CheckAsync(Stop));
        // The file itself no longer holds the bytes: neither a free page nor the log.
        if (database == Database.Sqlite) Assert.False(await InFilesAsync(job.Folder, content));

        string unseen = new('e', 64);
        await ReceivedAsync(store, device.Write(new Erased(unseen, "sent by mistake")));
        Assert.Null((await store.PhotographAsync(unseen, Stop))!.Content);
        Assert.Null(await store.PhotographAsync(new string('f', 64), Stop));
        Assert.IsType<PhotographOutcome.Refused>(await store.AddPhotographAsync(new byte[JobStore.LargestPhotograph + 1], Invented.By("ada"), Stop));
    }

    [Theory, OnBoth]
    public async Task A_journal_travels_with_its_photographs_and_what_was_erased_is_not_brought_back(Database database)
    {
        await using var job = await databases.NewJobAsync(database);
        await using var other = await databases.NewJobAsync(database);
        JobStore store = await job.OpenAsync(), target = await other.OpenAsync();
        byte[][] pictures = [Picture("baseline"), Picture("progressive"), Picture("grey")];
        var hashes = new List<string>();
        foreach (byte[] picture in pictures) hashes.Add(Assert.IsType<PhotographOutcome.Stored>(await store.AddPhotographAsync(picture, Invented.By("ada"), Stop)).Hash);
        var device = new WritingDevice("tablet-1");
        await ReceivedAsync(store, [.. hashes.Select(h => device.Write(new Photographed(h)))]);
        string all = await WrittenAsync(store);
        Assert.Equal((3, 0, 3, 0, 0), await TakenAsync(target, all));
        Assert.Equal((0, 3, 0, 3, 0), await TakenAsync(target, all));
        for (int i = 0; i < 3; i++) Assert.Equal(pictures[i], (await target.PhotographAsync(hashes[i], Stop))!.Content);
        Assert.Equal("bob", (await target.PhotographAsync(hashes[0], Stop))!.By.Person);
        Assert.Equal(all.Split('\n')[^4..], (await WrittenAsync(target)).Split('\n')[^4..]);

        // Erased where it comes from: it is in no export, and the entry erases it here too. The older file does not bring it back.
        await ReceivedAsync(store, device.Write(new Erased(hashes[0], "shows a person")));
        string later = await WrittenAsync(store);
        Assert.DoesNotContain(later.Split('\n'), l => PhotographText.IsOne(l) && l.Contains(hashes[0], StringComparison.Ordinal));
        Assert.Equal((1, 3, 0, 2, 0), await TakenAsync(target, later));
        Assert.Equal((0, 3, 0, 2, 1), await TakenAsync(target, all));
        Assert.Null((await target.PhotographAsync(hashes[0], Stop))!.Content);

        // However the lines of one file are ordered, and without photographs as files were written before.
        await using var third = await databases.NewJobAsync(database);
        string backwards = string.Join('\n', (later + all.Split('\n').First(l => PhotographText.IsOne(l) && l.Contains(hashes[0], StringComparison.Ordinal))).Split('\n').Reverse());
        await TakenAsync(await third.OpenAsync(), backwards);
        Assert.Equal(hashes[1..].Order(StringComparer.Ordinal), await (await third.OpenAsync()).PhotographsAsync(Stop));
        await using var fourth = await databases.NewJobAsync(database);
        Assert.Equal((4, 0, 0, 0, 0), await TakenAsync(await fourth.OpenAsync(), string.Join('\n', later.Split('\n').Where(l => !PhotographText.IsOne(l)))));
        Assert.Empty(await target.CheckAsync(Stop));
    }

    [Theory, OnBoth]
    public async Task A_photograph_damaged_in_the_store_is_left_out_and_keeps_no_other_out(Database database)
    {
        await using var job = await databases.NewJobAsync(database);
        var store = await job.OpenAsync();
        string hash = Assert.IsType<PhotographOutcome.Stored>(await store.AddPhotographAsync([1, 2, 3], Invented.By("ada"), Stop)).Hash;
        await store.AddPhotographAsync([4, 5, 6], Invented.By("ada"), Stop);
        byte[] changed = [1, 2, 4];
        await using (var context = Opening.Connect(job.Location)())
            await context.Database.ExecuteSqlAsync($"UPDATE photographs SET content = {changed} WHERE hash = {hash}", Stop);
        var text = new StringWriter();
        var written = await store.WriteJournalAsync(text, Stop);
        Assert.Equal(1, written.Photographs);
        Assert.Contains(hash, Assert.Single(written.Failures), StringComparison.Ordinal);
        Assert.Single(text.ToString().TrimEnd().Split('\n'));
    }

    private static byte[] Picture(string name) => File.ReadAllBytes(ReferenceData.Path(Path.Combine("pictures", name + ".jpg")));

    private static async Task<string> WrittenAsync(JobStore store)
    {
        var text = new StringWriter();
        Assert.Empty((await store.WriteJournalAsync(text, Stop)).Failures);
        return text.ToString();
    }

    private static async Task<(int, int, int, int, int)> TakenAsync(JobStore store, string text)
    {
        var taken = await store.TakeJournalAsync(new StringReader(text), "journal.jsonl", new("bob", Later), Stop);
        Assert.Empty(taken.Errors);
        return (taken.Entries, taken.EntriesAgain, taken.Photographs, taken.PhotographsAgain, taken.PhotographsErased);
    }

    private static async Task<bool> InFilesAsync(string folder, byte[] content)
    {
        foreach (string file in Directory.EnumerateFiles(folder, "job.sqlite*"))
        {
            await using var open = new FileStream(file, FileMode.Open, FileAccess.Read, FileShare.ReadWrite | FileShare.Delete);
            byte[] all = new byte[open.Length];
            await open.ReadExactlyAsync(all, Stop);
            if (all.AsSpan().IndexOf(content) >= 0) return true;
        }
        return false;
    }

    private static async Task<ImmutableArray<AppendOutcome.Received>> ReceivedAsync(JobStore store, params Kept[] sent) =>
        [.. (await store.AppendAsync([.. sent.Select(k => new Arrival(EntryText.Of(k.Entry), k.Hash))], Later, Stop)).Select(o => Assert.IsType<AppendOutcome.Received>(o))];
}
