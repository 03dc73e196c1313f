using Bunit;
using Trivet.Assessment;
using Trivet.Cells;
using Trivet.Desk.Components.Description;
using Trivet.Desk.Components.Motion;
using Trivet.Desk.Sessions;
using Trivet.Files;
using Trivet.Store;

namespace Trivet.Desk.Motion;

public sealed class MotionPanelTests : BunitContext, IAsyncLifetime
{
    private OneCellJob _job = null!;

    public async ValueTask InitializeAsync()
    {
        JSInterop.Mode = JSRuntimeMode.Loose;
        _job = await OneCellJob.StartAsync();
    }

    async ValueTask IAsyncDisposable.DisposeAsync()
    {
        await base.DisposeAsync();
        await _job.DisposeAsync();
    }

    [Fact]
    public async Task The_three_laws_stand_in_a_table_and_the_law_pressed_is_the_one_shown()
    {
        var panel = await PanelAsync(OneCellJob.Sample("jar-lids"));
        Assert.Equal(3, panel.FindAll(".law-table:not(.variant-table) tbody tr").Count);
        // The belt moves, so that the axes alone can not begin with its speed.
        Assert.Equal(4, panel.FindAll(".variant-table tbody tr").Count);
        Assert.Equal(2, panel.FindAll(".variant-table td[colspan]").Count);
        Assert.Contains("seven phases, along the path", panel.Find(".variant-table .stated").TextContent, StringComparison.Ordinal);
        Assert.Contains("controller", panel.Find(".law-table .shown").TextContent, StringComparison.Ordinal);
        string before = panel.Find("[data-tracks='tool-speed']").InnerHtml;
        panel.Find("[data-law=Bound]").Click();
        Assert.Contains("bound", panel.Find(".law-table .shown").TextContent, StringComparison.Ordinal);
        Assert.NotEqual(before, panel.Find("[data-tracks='tool-speed']").InnerHtml);
    }

    [Fact]
    public async Task Another_cycle_has_its_own_time()
    {
        var panel = await PanelAsync(OneCellJob.Sample("jar-lids"));
        string left = panel.Find("[data-cycle-time]").TextContent;
        panel.Find("#cycle").Change("to-right");
        Assert.NotEqual(left, panel.Find("[data-cycle-time]").TextContent);
    }

    [Fact]
    public async Task A_station_moved_moves_the_time_at_once_and_the_charts_after_it()
    {
        var panel = await PanelAsync(OneCellJob.Sample("jar-lids"));
        string before = panel.Find("[data-cycle-time]").TextContent, table = panel.Find(".law-table").TextContent;
        var cell = _job.Session!.Cell;
        _job.Session.Show(cell with { Stations = cell.Stations.SetItem("tray-left", cell.Stations["tray-left"] with { X = -0.13 }) });
        panel.Render(p => p.Add(x => x.Session, _job.Session));
        Assert.NotEqual(before, panel.Find("[data-cycle-time]").TextContent);
        panel.WaitForAssertion(() => Assert.NotEqual(table, panel.Find(".law-table").TextContent), TimeSpan.FromMinutes(2));
        Assert.Equal("there", panel.Find(".work").GetAttribute("data-charts"));
    }

    [Fact]
    public async Task Falls_are_computed_when_asked_for_and_stand_below_their_caution()
    {
        var panel = await PanelAsync(OneCellJob.Sample("jar-lids"));
        Assert.Empty(panel.FindAll(".fall-table"));
        panel.Find("[data-falls]").Click();
        Assert.Contains("never a substitute", panel.Find(".falls .caution").TextContent, StringComparison.Ordinal);
        panel.WaitForAssertion(() => Assert.Equal(9, panel.FindAll(".fall-table").Count), TimeSpan.FromMinutes(2));
        Assert.Contains("brake, 90 N", panel.Find(".fall-table").TextContent, StringComparison.Ordinal);
        panel.Find("[data-falls]").Click();
        panel.WaitForAssertion(() => Assert.Empty(panel.FindAll(".fall-table")));
    }

    [Fact]
    public async Task What_is_missing_links_to_its_field()
    {
        var cell = OneCellJob.Sample("jar-lids");
        var panel = await PanelAsync(cell with { Motion = cell.Motion with { Settings = cell.Motion.Settings with { PathSpeed = null } } });
        Assert.Contains("not timed yet", panel.Find(".state").TextContent, StringComparison.Ordinal);
        Assert.Contains(panel.FindAll(".state a"), a => a.GetAttribute("href")!.EndsWith("description?at=%2Fmotion%2Fsettings%2FpathSpeed", StringComparison.Ordinal));
    }

    [Fact]
    public async Task Without_a_cycle_the_sheet_leads_to_where_one_is_described()
    {
        var panel = await PanelAsync(OneCellJob.Sample("jar-lids") with { Motion = new() });
        Assert.EndsWith("/description/motion", panel.Find(".state a").GetAttribute("href"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Without_masses_times_are_shown_and_what_lacks_for_forces_is_listed()
    {
        var cell = OneCellJob.Sample("jar-lids");
        var panel = await PanelAsync(cell with { Robot = cell.Robot with { PlatformMass = null } });
        Assert.NotEmpty(panel.FindAll(".law-table tbody tr"));
        Assert.Contains(panel.FindAll(".lacking a"), a => a.GetAttribute("href")!.EndsWith("platformMass", StringComparison.Ordinal));
        Assert.Empty(panel.FindAll(".cloud"));
    }

    [Fact]
    public async Task The_fastest_settings_are_taken_over_as_one_edit()
    {
        var cell = OneCellJob.Sample("jar-lids");
        var panel = await PanelAsync(cell with { Motion = cell.Motion with { Settings = cell.Motion.Settings with { PathSpeed = 0.5 } } });
        panel.Find("[data-fastest=look]").Click();
        panel.WaitForElement("[data-fastest=apply]", TimeSpan.FromMinutes(3)).Click();
        panel.WaitForAssertion(() => Assert.True(_job.Session!.Draft.CanUndo), TimeSpan.FromMinutes(1));
        Assert.True(_job.Session!.Cell.Motion.Settings.PathSpeed > 0.5);
        Assert.Single(_job.Session.Draft.Edits);
    }

    [Fact]
    public async Task A_point_of_a_curve_and_a_waypoint_can_be_added_in_the_form()
    {
        await _job.OpenAsync(OneCellJob.Sample("jar-lids"));
        var drives = Render<SectionForm>(p => p.Add(f => f.Session, _job.Session).Add(f => f.Section, DescriptionSections.Named("drives")));
        drives.Find("#add-curve-point-rail-motor").Change("middle");
        drives.FindAll(".add-entry").Single(a => a.InnerHtml.Contains("add-curve-point-rail-motor", StringComparison.Ordinal)).QuerySelector("button")!.Click();
        drives.WaitForAssertion(() => Assert.True(_job.Session!.Cell.Drives.Motors["rail-motor"].Curve.ContainsKey("middle")), TimeSpan.FromMinutes(1));
        var motion = Render<SectionForm>(p => p.Add(f => f.Session, _job.Session).Add(f => f.Section, DescriptionSections.Named("motion")));
        Assert.NotNull(motion.Find("#add-waypoint-to-left"));
    }

    private async Task<IRenderedComponent<MotionPanel>> PanelAsync(Cell cell)
    {
        await _job.OpenAsync(cell);
        return Render<MotionPanel>(p => p.Add(x => x.Session, _job.Session));
    }
}
