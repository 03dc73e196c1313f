using Bunit;
using Microsoft.Extensions.DependencyInjection;
using Trivet.Desk.Components.Procedures;

namespace Trivet.Desk.Procedures;

public sealed class ProcedurePanelTests : BunitContext, IAsyncLifetime
{
    private OneCellJob _job = null!;

    public async ValueTask InitializeAsync()
    {
        JSInterop.Mode = JSRuntimeMode.Loose;
        Services.AddSingleton(TimeProvider.System);
        _job = await OneCellJob.StartAsync();
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

    private async Task<IRenderedComponent<ProcedurePanel>> PanelAsync(string? open)
    {
        await _job.OpenAsync(OneCellJob.Sample("jar-lids"));
        return Render<ProcedurePanel>(p => p.Add(x => x.Session, _job.Session).Add(x => x.Open, open));
    }
}
