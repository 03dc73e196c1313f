using System.Net;
using Trivet.Desk.Access;
using Trivet.Files.Entries;
using Trivet.Journal;
using Trivet.Store;
using Trivet.Testing;

namespace Trivet.Desk.Sync;

/// <summary>The journal as a file from the desk: what the command line writes, and only for who works with the sheets.</summary>
public sealed class JournalDownloadTests : IAsyncLifetime
{
    private NetworkDesk _desk = null!;

    private static CancellationToken Stop => Xunit.TestContext.Current.CancellationToken;

    public async ValueTask InitializeAsync() => _desk = await NetworkDesk.StartAsync();

    public ValueTask DisposeAsync() => _desk.DisposeAsync();

    [Fact]
    public async Task It_is_the_file_that_the_store_writes_with_its_photographs()
    {
        var tablet = new WritingDevice("tablet-1", cell: "lids");
        Kept[] entries = [tablet.Write(new Begun(), "bus-ohms"), tablet.Write(new Written("ä"), "bus-ohms", "serial")];
        await _desk.Store.AppendAsync([.. entries.Select(k => new Arrival(EntryText.Of(k.Entry), k.Hash))], WritingDevice.Noon, Stop);
        byte[] picture = await File.ReadAllBytesAsync(ReferenceData.Path(Path.Combine("pictures", "progressive.jpg")), Stop);
        Assert.IsType<PhotographOutcome.Stored>(await _desk.Store.AddPhotographAsync(picture, new Stamp("ada", WritingDevice.Noon), Stop));

        var designer = await _desk.SignedInAsync("dora", Role.Design);
        using var answer = await designer.GetAsync("journal/journal.jsonl", Stop);
        Assert.Equal("journal.jsonl", answer.Content.Headers.ContentDisposition?.FileName);
        string text = await answer.Content.ReadAsStringAsync(Stop);
        using var written = new StringWriter();
        await _desk.Store.WriteJournalAsync(written, Stop);
        Assert.Equal(written.ToString(), text);
        var lines = JournalFile.Lines(new StringReader(text), "journal.jsonl").ToArray();
        Assert.Equal([typeof(JournalFileLine.OfEntry), typeof(JournalFileLine.OfEntry), typeof(JournalFileLine.OfPhotograph)], lines.Select(l => l.GetType()));

        var recorder = await _desk.SignedInAsync("eve", Role.Look, Role.Record);
        using var refused = await recorder.GetAsync("journal/journal.jsonl", Stop);
        Assert.NotEqual(HttpStatusCode.OK, refused.StatusCode);
    }
}
