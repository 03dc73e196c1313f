using Bunit;
using Microsoft.Extensions.DependencyInjection;
using Trivet.Desk.Components.Wiring;
using Trivet.Views.Stopping;

namespace Trivet.Desk.Wiring;

public sealed class StopSectionTests : BunitContext, IAsyncLifetime
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
    public async Task Functions_stand_with_the_graph_that_names_each_at_its_level()
    {
        await _job.OpenAsync(OneCellJob.Sample("jar-lids"));
        var section = Render<StopSection>(p => p.Add(x => x.Session, _job.Session!).Add(x => x.Section, StopSections.Of(_job.Session!.Cell)[0]));
        Assert.Equal(_job.Session!.Cell.Stopping.Functions.Count, section.FindAll("[data-table='safety-functions'] tbody tr").Count);
        Assert.Contains("sinks until the brake holds", section.Find("[data-table='what-falls']").TextContent, StringComparison.Ordinal);
        string svg = section.Find("figure.risk-graph").InnerHtml;
        foreach (var function in _job.Session.Cell.Stopping.Functions.Values) Assert.Contains(function.Name!, svg, StringComparison.Ordinal);
        Assert.Contains("never a substitute", section.Markup, StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_register_goes_out_as_pdf()
    {
        await _job.OpenAsync(OneCellJob.Sample("jar-lids"));
        var section = Render<StopSection>(p => p.Add(x => x.Session, _job.Session!).Add(x => x.Section, HazardSections.Of(_job.Session!.Cell)[0]));
        Assert.Equal(_job.Session!.Cell.Hazards.Count, section.FindAll("[data-table='hazards'] tbody tr").Count);
        await section.Find("[data-download='hazard-register.pdf']").ClickAsync(new());
        var save = Assert.Single(JSInterop.Invocations, i => i.Identifier == "trivet.save");
        Assert.Equal("%PDF", System.Text.Encoding.ASCII.GetString((byte[])save.Arguments[2]!, 0, 4));
    }
}
