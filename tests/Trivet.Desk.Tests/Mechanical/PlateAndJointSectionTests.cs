using Bunit;
using Microsoft.Extensions.DependencyInjection;
using Trivet.Assessment;
using Trivet.Cells;
using Trivet.Desk.Components.Mechanical;
using Trivet.Desk.Sessions;
using Trivet.Files;
using Trivet.Store;

namespace Trivet.Desk.Mechanical;

public sealed class PlateAndJointSectionTests : BunitContext, IAsyncLifetime
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
    public async Task The_drawing_follows_a_field_as_it_changes_and_a_clocking_is_taken()
    {
        var section = await ShowAsync(Sample());
        string before = section.Find("[data-plate=adapter] .svg").InnerHtml;
        section.Find("[data-field='/plates/adapter/thickness']").Change("15 mm");
        section.WaitForAssertion(() => Assert.Equal(0.015, _job.Session!.Cell.Plates["adapter"].Thickness), TimeSpan.FromMinutes(1));
        section.Render();
        Assert.NotEqual(before, section.Find("[data-plate=adapter] .svg").InnerHtml);
        Assert.Contains("× 15 mm", section.Find(".facts").TextContent, StringComparison.Ordinal);
        section.FindAll("[data-clockings] tbody button")[1].Click();
        section.WaitForAssertion(() => Assert.NotNull(_job.Session!.Cell.Plates["adapter"].Clocking), TimeSpan.FromMinutes(1));
        section.Render();
        Assert.Single(section.FindAll("[data-clockings] tbody tr"));
    }

    [Fact]
    public async Task Where_one_plate_can_not_do_it_the_rule_is_named_and_the_stack_can_be_taken()
    {
        var cell = Sample();
        // The rotary axis now has threads of its own under a face that covers them.
        cell = cell with { Interfaces = cell.Interfaces.SetItem("turn-flange", cell.Interfaces["turn-flange"] with { Tapped = true, ThreadDepth = 0.008, Grip = null, Circle = 0.030, Material = "steel" }) };
        var section = await ShowAsync(cell);
        Assert.Contains("No single plate", section.Find("[data-says]").TextContent, StringComparison.Ordinal);
        Assert.Equal(2, section.FindAll("figure.drawing").Count);
        section.Find("[data-take-stack]").Click();
        section.WaitForAssertion(() => Assert.Equal(2, _job.Session!.Cell.Plates["adapter"].Pieces), TimeSpan.FromMinutes(1));
    }

    /// <summary>A person sees the plate change as a value is typed: search and drawing together, many times over, the median.</summary>
    [Fact]
    public async Task Without_a_plate_or_joint_the_sections_lead_to_where_one_is_described()
    {
        var section = await ShowAsync(Sample() with { Plates = Cell.Empty.Plates, Joints = Cell.Empty.Joints });
        Assert.EndsWith("/description/plates", section.Find(".plates a").GetAttribute("href"), StringComparison.Ordinal);
        var joints = Render<JointSection>(p => p.Add(x => x.Session, _job.Session));
        Assert.EndsWith("/description/joints", joints.Find(".joints a").GetAttribute("href"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_torque_sheet_lists_the_joints_in_their_order_with_shares_of_opening_and_slipping()
    {
        await ShowAsync(Sample());
        var joints = Render<JointSection>(p => p.Add(x => x.Session, _job.Session));
        Assert.Equal(["mount", "plate-platform", "plate-turn"], joints.FindAll("[data-joint]").Select(r => r.GetAttribute("data-joint")));
        Assert.Contains("11 N m", joints.Find("[data-joint=mount]").TextContent, StringComparison.Ordinal);
        Assert.Contains("%", joints.Find("[data-joint=mount] td.number").TextContent, StringComparison.Ordinal);
    }

    private static Cell Sample() => OneCellJob.Sample("jar-lids");

    private async Task<IRenderedComponent<PlateSection>> ShowAsync(Cell cell)
    {
        await _job.OpenAsync(cell);
        return Render<PlateSection>(p => p.Add(x => x.Session, _job.Session));
    }
}
