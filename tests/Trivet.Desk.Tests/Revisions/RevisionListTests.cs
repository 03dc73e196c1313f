using Bunit;
using Microsoft.Extensions.DependencyInjection;
using Trivet.Cells;
using Trivet.Desk.Access;
using Trivet.Desk.Components.Revisions;
using Trivet.Files;
using Trivet.Files.Entries;
using Trivet.Journal;
using Trivet.Store;
using Trivet.Testing;

namespace Trivet.Desk.Revisions;

public sealed class RevisionListTests : BunitContext, IAsyncLifetime
{
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(30);
    private readonly WritingDevice _tablet = new("tablet-1", cell: "lids");
    private OneCellJob _job = null!;

    public async ValueTask InitializeAsync()
    {
        JSInterop.Mode = JSRuntimeMode.Loose;
        Services.AddSingleton(TimeProvider.System);
        Services.AddSingleton(new Acting { Person = "ada", AtTheMachine = true });
        _job = await OneCellJob.StartAsync();
        Services.AddSingleton(_job.Store);
    }

    async ValueTask IAsyncDisposable.DisposeAsync()
    {
        await base.DisposeAsync();
        await _job.DisposeAsync();
    }

    [Fact]
    public async Task A_restore_that_would_have_work_done_again_asks_first_and_tells_which()
    {
        var lids = OneCellJob.Sample("jar-lids");
        var (rests, field) = Trivet.Assessment.CellProcedure.Of(lids).Steps.SelectMany(s => s.Inputs.Select(i => (Step: s, Field: CellFields.Find(lids, i)))).First(x => x.Field is { Dimension: Dimension.Length, Si: > 0 });
        await _job.OpenAsync(lids);
        await _job.Session!.EditAsync(CellFields.SetSi(lids, field!.Pointer, field.Si!.Value + 0.001), "longer");
        Assert.IsType<SaveOutcome.Saved>(await _job.Session.SaveAsync("longer"));
        var list = Render<RevisionList>(p => p.Add(x => x.Session, _job.Session));

        // Nothing is recorded yet: nobody need be asked.
        await RestoreAsync(list, 1);
        list.WaitForAssertion(() => Assert.Contains("Saved as revision 3.", list.Markup, StringComparison.Ordinal), Patience);
        await RestoreAsync(list, 2);
        list.WaitForAssertion(() => Assert.Contains("Saved as revision 4.", list.Markup, StringComparison.Ordinal), Patience);

        var kept = _tablet.Write(new Ticked(), rests.Id, revision: CellFile.Hash(_job.Session.Cell));
        await _job.Store.AppendAsync([new Arrival(EntryText.Of(kept.Entry), kept.Hash)], WritingDevice.Noon.AddHours(1), Xunit.TestContext.Current.CancellationToken);
        await RestoreAsync(list, 1);
        list.WaitForAssertion(() => Assert.Equal("1", list.Find(".asked").GetAttribute("data-asked")), Patience);
        Assert.Contains("To be done again: 1", list.Find(".asked").TextContent, StringComparison.Ordinal);
        Assert.Equal(4, (await _job.Store.HeadAsync("lids", Xunit.TestContext.Current.CancellationToken))!.Revision.Number);

        await list.FindAll(".asked button")[1].ClickAsync(new());
        Assert.Empty(list.FindAll(".asked"));
        await RestoreAsync(list, 1);
        list.WaitForAssertion(() => Assert.Single(list.FindAll(".asked")), Patience);
        await list.FindAll(".asked button")[0].ClickAsync(new());
        list.WaitForAssertion(() => Assert.Contains("Saved as revision 5.", list.Markup, StringComparison.Ordinal), Patience);
        Assert.Empty(list.FindAll(".asked"));
    }

    private static async Task RestoreAsync(IRenderedComponent<RevisionList> list, int number)
    {
        string words = $"Restore revision {number}";
        list.WaitForState(() => list.FindAll("button").Any(b => b.TextContent == words), Patience);
        await list.FindAll("button").Single(b => b.TextContent == words).ClickAsync(new());
    }
}
