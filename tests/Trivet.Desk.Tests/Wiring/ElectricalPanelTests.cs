using Bunit;
using Microsoft.Extensions.DependencyInjection;
using Trivet.Cells;
using Trivet.Desk.Components.Wiring;

namespace Trivet.Desk.Wiring;

public sealed class ElectricalPanelTests : BunitContext, IAsyncLifetime
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
    public async Task Every_matter_stands_with_its_tables()
    {
        var panel = await PanelAsync("axis-b");
        foreach (string section in (string[])["order", "heat", "supplies", "branches", "motor-supply", "bus"]) Assert.NotNull(panel.Find($"[data-section='{section}']"));
        foreach (string table in (string[])["rail-rules", "heat-by-module", "sources", "consumers", "branches", "inrush", "stops"]) Assert.NotEmpty(panel.FindAll($"[data-table='{table}'] tbody tr"));
        Assert.Contains("12, keep", panel.Find("[data-module='axis-b']").TextContent, StringComparison.Ordinal);
        Assert.Equal(9, panel.FindAll(".strip svg a").Count);
    }

    [Fact]
    public async Task One_more_like_an_axis_is_one_edit_and_the_plan_takes_it_in_with_another()
    {
        var panel = await PanelAsync("axis-turn");
        await panel.Find("[data-action-one-more]").ClickAsync(new());
        panel.WaitForAssertion(() => Assert.Contains("axis-turn-2", _job.Session!.Cell.Cabinet.Modules.Keys), TimeSpan.FromSeconds(30));
        panel.WaitForAssertion(() => Assert.Contains("change to 22", panel.Find("[data-addresses]").TextContent, StringComparison.Ordinal), TimeSpan.FromSeconds(30));
        await panel.Find("[data-action-addresses]").ClickAsync(new());
        panel.WaitForAssertion(() => Assert.Equal((8, 22), (_job.Session!.Cell.Cabinet.Modules["axis-turn-2"].Order ?? 0, _job.Session!.Cell.Cabinet.Modules["axis-turn-2"].Address ?? 0)), TimeSpan.FromSeconds(30));
    }

    /// <summary>Channels that are missing or taken twice are planned, and taken as one edit; the button is there only while something changes.</summary>
    [Fact]
    public async Task Planned_channels_are_taken_as_one_edit()
    {
        var cell = OneCellJob.Sample("jar-lids");
        Assert.Empty((await PanelAsync(null)).FindAll("[data-action-channels]"));
        await _job.Session!.EditAsync(cell with { Io = cell.Io with { Signals = cell.Io.Signals.SetItem("part-held", cell.Io.Signals["part-held"] with { Channel = 1 }) } }, "a channel twice");
        var panel = Render<WiringPanel>(p => p.Add(x => x.Session, _job.Session));
        Assert.Contains("1", panel.Find("[data-action-channels]").ParentElement!.TextContent, StringComparison.Ordinal);
        await panel.Find("[data-action-channels]").ClickAsync(new());
        panel.WaitForAssertion(() => Assert.Equal(0, Trivet.Views.Cabling.SignalSections.AsPlanned(_job.Session!.Cell).Changes), TimeSpan.FromSeconds(30));
        var used = _job.Session!.Cell.Io.Signals.Values.Where(s => s.Bank == "inputs").Select(s => s.Channel).ToArray();
        Assert.Equal(used.Length, used.Distinct().Count());
        panel.Render();
        Assert.Empty(panel.FindAll("[data-action-channels]"));
    }

    private async Task<IRenderedComponent<WiringPanel>> PanelAsync(string? module)
    {
        await _job.OpenAsync(OneCellJob.Sample("jar-lids"));
        var panel = Render<WiringPanel>(p => p.Add(x => x.Session, _job.Session).Add(x => x.Module, module));
        return panel;
    }
}
