using System.Text;
using Bunit;
using Microsoft.Extensions.DependencyInjection;
using Trivet.Desk.Components.Journals;
using Trivet.Files.Entries;
using Trivet.Journal;
using Trivet.Store;
using Trivet.Testing;
using Trivet.Views.Words;

namespace Trivet.Desk.Journals;

public sealed class JournalPanelTests : BunitContext, IAsyncLifetime
{
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(30);
    private readonly WritingDevice _tablet = new("tablet-1", cell: "lids"), _desk = new("desk-2", "ben", "lids");
    private OneCellJob _job = null!;

    public async ValueTask InitializeAsync()
    {
        JSInterop.Mode = JSRuntimeMode.Loose;
        Services.AddSingleton(TimeProvider.System);
        _job = await OneCellJob.StartAsync();
        Services.AddSingleton(_job.Store);
        await _job.OpenAsync(Cells.Cell.Empty);
    }

    async ValueTask IAsyncDisposable.DisposeAsync()
    {
        await base.DisposeAsync();
        await _job.DisposeAsync();
    }

    [Fact]
    public async Task Entries_come_in_by_themselves_the_newest_first_and_the_chains_are_looked_through()
    {
        var panel = Panel();
        Assert.Contains("Nothing has been recorded yet", panel.Markup, StringComparison.Ordinal);

        await SendAsync(_tablet.Write(new Measured("60 Ω", "Ω", 60, 1), "bus-ohms", "ohms"), _desk.Write(new Differs("four <b>screws"), "joint:head"));
        panel.WaitForAssertion(() => Assert.Equal(2, panel.FindAll("tbody tr").Count), Patience);
        Assert.Contains("four <b>screws", panel.FindAll("tbody tr")[0].TextContent, StringComparison.Ordinal);
        string head = (await _job.Store.JournalHeadAsync(Xunit.TestContext.Current.CancellationToken))!.Hash;
        Assert.Contains(head, panel.Markup, StringComparison.Ordinal);
        panel.WaitForAssertion(() => Assert.NotNull(panel.Find("[data-state='sound']")), Patience);
        // A cell without a robot has a procedure that knows of neither step.
        panel.WaitForAssertion(() => Assert.Contains("a step that the procedure does not have", panel.Markup, StringComparison.Ordinal), Patience);
    }

    [Fact]
    public async Task One_step_person_or_device_is_shown_alone_and_what_is_missing_is_told()
    {
        Kept first = _tablet.Write(new Begun(), "bus-ohms");
        _tablet.Write(new Ticked(), "bus-ohms");
        await SendAsync(first, _tablet.Write(new Ticked(), "rod:a"), _desk.Write(new Begun(), "rod:a"));
        var panel = Panel("rod:a");
        Assert.Equal(2, panel.FindAll("tbody tr").Count);
        Assert.Contains("tablet-1: entries 2 to 2 are not here", panel.Markup, StringComparison.Ordinal);

        await panel.FindAll("select:not(#journal-language)")[1].ChangeAsync(new() { Value = "ben" });
        Assert.Single(panel.FindAll("tbody tr"));
        await panel.FindAll("select:not(#journal-language)")[0].ChangeAsync(new() { Value = "bus-ohms" });
        Assert.Contains("No entry fits", panel.Markup, StringComparison.Ordinal);
    }

    [Fact]
    public async Task It_speaks_the_language_that_is_chosen_and_so_do_the_other_sheets_of_the_work()
    {
        await SendAsync(_tablet.Write(new Begun(), "bus-ohms"));
        var panel = Panel();
        await panel.Find("#journal-language").ChangeAsync(new() { Value = "de" });
        Assert.Equal("de", panel.Find(".journal").GetAttribute("lang"));
        Assert.Contains(GermanJournal.Words.Title, panel.Find("h2").TextContent, StringComparison.Ordinal);
        Assert.Equal("de", _job.Session!.Language);
    }

    [Fact]
    public async Task The_record_to_be_signed_is_saved()
    {
        await SendAsync(_tablet.Write(new Begun(), "bus-ohms"));
        var panel = Panel();
        await panel.Find("[data-download='record.pdf']").ClickAsync(new());
        panel.WaitForAssertion(() => Assert.Equal("lids-record.pdf", Assert.Single(JSInterop.Invocations["trivet.save"]).Arguments[0]), Patience);
    }

    private IRenderedComponent<JournalPanel> Panel(string? step = null)
    {
        var panel = Render<JournalPanel>(p => p.Add(x => x.Session, _job.Session).Add(x => x.Step, step));
        // Looked through once, it draws itself again only when something comes.
        panel.WaitForAssertion(() => panel.Find("[data-state='sound']"), Patience);
        return panel;
    }

    private async Task SendAsync(params Kept[] entries) =>
        await _job.Store.AppendAsync([.. entries.Select(k => new Arrival(EntryText.Of(k.Entry), k.Hash))], WritingDevice.Noon.AddHours(1));
}
