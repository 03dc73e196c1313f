using Bunit;
using Microsoft.Extensions.DependencyInjection;
using Trivet.Cells;
using Trivet.Desk.Components.Procedures;
using Trivet.Files;
using Trivet.Files.Entries;
using Trivet.Journal;
using Trivet.Store;
using Trivet.Testing;

namespace Trivet.Desk.Procedures;

public sealed class ProcedurePanelTests : BunitContext, IAsyncLifetime
{
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(30);
    private readonly WritingDevice _tablet = new("tablet-1", cell: "lids");
    private OneCellJob _job = null!;

    public async ValueTask InitializeAsync()
    {
        JSInterop.Mode = JSRuntimeMode.Loose;
        Services.AddSingleton(TimeProvider.System);
        _job = await OneCellJob.StartAsync();
        Services.AddSingleton(_job.Store);
    }

    async ValueTask IAsyncDisposable.DisposeAsync()
    {
        await base.DisposeAsync();
        await _job.DisposeAsync();
    }

    [Fact]
    public async Task A_step_opens_to_all_it_says_and_speaks_the_language_that_is_chosen()
    {
        var panel = await PanelAsync("stop-chain");
        Assert.Contains("Each device alone", panel.Find("[data-step='stop-chain'].detail").TextContent, StringComparison.Ordinal);
        Assert.Equal(6, panel.FindAll("[data-step='stop-chain'] [data-table='asks'] tbody tr").Count);
        Assert.Equal("true", panel.Find("[data-step-link='stop-chain']").GetAttribute("aria-expanded"));
        Assert.Equal(["Shop", "Transport", "Site"], panel.FindAll("[data-place]").Select(p => p.GetAttribute("data-place")));

        await panel.Find("#procedure-language").ChangeAsync(new() { Value = "de" });
        Assert.Contains("Jedes Gerät allein", panel.Find("[data-step='stop-chain'].detail").TextContent, StringComparison.Ordinal);
        Assert.Equal("de", panel.Find("[data-place='Site']").GetAttribute("lang"));
    }

    [Fact]
    public async Task One_person_takes_longer_than_two()
    {
        var panel = await PanelAsync(null);
        string two = panel.Find("[role='status']").TextContent;
        await panel.Find("#procedure-people").ChangeAsync(new() { Value = "1" });
        Assert.NotEqual(two, panel.Find("[role='status']").TextContent);
        Assert.Empty(panel.FindAll(".detail"));
    }

    [Fact]
    public async Task The_cards_are_saved()
    {
        var panel = await PanelAsync(null);
        await panel.Find("[data-download='step-cards.pdf']").ClickAsync(new());
        Assert.Single(JSInterop.Invocations, i => i.Identifier == "trivet.save");
    }

    [Fact]
    public async Task Each_step_says_where_it_stands_as_entries_come_in()
    {
        var panel = await PanelAsync(null);
        panel.WaitForAssertion(() => Assert.Contains("Nothing has been recorded yet", panel.Find("[data-section='work']").TextContent, StringComparison.Ordinal), Patience);
        Assert.Empty(panel.FindAll("[data-standing]"));

        await TickAsync("stop-chain");
        panel.WaitForAssertion(() => Assert.NotEqual("Waiting", Standing(panel, "stop-chain")), Patience);
        Assert.Equal("Waiting", Standing(panel, "calibrate"));
        Assert.Contains("steps let the work go on", panel.Find("[data-section='work']").TextContent, StringComparison.Ordinal);

        await panel.Find("#procedure-language").ChangeAsync(new() { Value = "de" });
        Assert.Contains("Schritten geben die Arbeit frei", panel.Find("[data-section='work']").TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public async Task What_a_draft_would_make_stale_is_told_before_it_is_saved_and_after_it_the_step_is_stale()
    {
        var lids = OneCellJob.Sample("jar-lids");
        var (rests, field) = Trivet.Assessment.CellProcedure.Of(lids).Steps.SelectMany(s => s.Inputs.Select(i => (Step: s, Field: CellFields.Find(lids, i)))).First(x => x.Field is { Dimension: Dimension.Length, Si: > 0 });
        var panel = await PanelAsync(null);
        await TickAsync(rests.Id);
        panel.WaitForAssertion(() => Assert.NotEqual("Waiting", Standing(panel, rests.Id)), Patience);
        Assert.Empty(panel.FindAll("[data-costs]"));

        await _job.Session!.EditAsync(CellFields.SetSi(lids, field!.Pointer, field.Si!.Value + 0.001), "longer");
        panel.WaitForAssertion(() => Assert.Equal("1", panel.Find("[data-costs]").GetAttribute("data-costs")), Patience);
        Assert.Contains("If this draft is saved", panel.Find("[data-costs]").TextContent, StringComparison.Ordinal);
        Assert.NotEqual("Stale", Standing(panel, rests.Id));
        var revisions = Render<DraftCost>(p => p.Add(x => x.Session, _job.Session));
        revisions.WaitForAssertion(() => Assert.Equal("1", revisions.Find("[data-costs]").GetAttribute("data-costs")), Patience);

        Assert.IsType<SaveOutcome.Saved>(await _job.Session.SaveAsync("longer"));
        panel.WaitForAssertion(() => Assert.Equal("Stale", Standing(panel, rests.Id)), Patience);
        Assert.Empty(panel.FindAll("[data-costs]"));
        Assert.Contains("was", panel.Find($"[data-why='{rests.Id}']").TextContent, StringComparison.Ordinal);
    }

    private static string? Standing(IRenderedComponent<ProcedurePanel> panel, string step) => panel.Find($"[data-step-link='{step}'] .standing").GetAttribute("data-standing");

    private async Task TickAsync(string step)
    {
        var kept = _tablet.Write(new Ticked(), step, revision: CellFile.Hash(_job.Session!.Cell));
        await _job.Store.AppendAsync([new Arrival(EntryText.Of(kept.Entry), kept.Hash)], WritingDevice.Noon.AddHours(1));
    }

    private async Task<IRenderedComponent<ProcedurePanel>> PanelAsync(string? open)
    {
        await _job.OpenAsync(OneCellJob.Sample("jar-lids"));
        return Render<ProcedurePanel>(p => p.Add(x => x.Session, _job.Session).Add(x => x.Open, open));
    }
}
