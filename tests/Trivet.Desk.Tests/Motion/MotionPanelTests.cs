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
    private static readonly DateTimeOffset Day = new(2026, 3, 2, 8, 0, 0, TimeSpan.Zero);
    private readonly string _folder = Directory.CreateTempSubdirectory("trivet-motion-").FullName;
    private JobStore _store = null!;
    private CellSession? _session;

    public async ValueTask InitializeAsync()
    {
        JSInterop.Mode = JSRuntimeMode.Loose;
        _store = Assert.IsType<OpenOutcome.Opened>(await JobStore.OpenAsync(new JobLocation.Folder(_folder))).Store;
    }

    async ValueTask IAsyncDisposable.DisposeAsync()
    {
        await base.DisposeAsync();
        if (_session is not null) await _session.DisposeAsync();
        await _store.DisposeAsync();
        Directory.Delete(_folder, recursive: true);
    }

    [Fact]
    public async Task The_three_laws_stand_in_a_table_and_the_law_pressed_is_the_one_shown()
    {
        var panel = await PanelAsync(Sample("jar-lids"));
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
        var panel = await PanelAsync(Sample("jar-lids"));
        string left = panel.Find("[data-cycle-time]").TextContent;
        panel.Find("#cycle").Change("to-right");
        Assert.NotEqual(left, panel.Find("[data-cycle-time]").TextContent);
    }

    [Fact]
    public async Task A_station_moved_moves_the_time_at_once_and_the_charts_after_it()
    {
        var panel = await PanelAsync(Sample("jar-lids"));
        string before = panel.Find("[data-cycle-time]").TextContent, table = panel.Find(".law-table").TextContent;
        var cell = _session!.Cell;
        _session.Show(cell with { Stations = cell.Stations.SetItem("tray-left", cell.Stations["tray-left"] with { X = -0.13 }) });
        panel.Render(p => p.Add(x => x.Session, _session));
        Assert.NotEqual(before, panel.Find("[data-cycle-time]").TextContent);
        panel.WaitForAssertion(() => Assert.NotEqual(table, panel.Find(".law-table").TextContent), TimeSpan.FromMinutes(2));
        Assert.Equal("there", panel.Find(".work").GetAttribute("data-charts"));
    }

    [Fact]
    public async Task Falls_are_computed_when_asked_for_and_stand_below_their_caution()
    {
        var panel = await PanelAsync(Sample("jar-lids"));
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
        var cell = Sample("jar-lids");
        var panel = await PanelAsync(cell with { Motion = cell.Motion with { Settings = cell.Motion.Settings with { PathSpeed = null } } });
        Assert.Contains("not timed yet", panel.Find(".state").TextContent, StringComparison.Ordinal);
        Assert.Contains(panel.FindAll(".state a"), a => a.GetAttribute("href")!.EndsWith("description?at=%2Fmotion%2Fsettings%2FpathSpeed", StringComparison.Ordinal));
    }

    [Fact]
    public async Task Without_a_cycle_the_sheet_leads_to_where_one_is_described()
    {
        var panel = await PanelAsync(Sample("jar-lids") with { Motion = new() });
        Assert.EndsWith("/description/motion", panel.Find(".state a").GetAttribute("href"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Without_masses_times_are_shown_and_what_lacks_for_forces_is_listed()
    {
        var cell = Sample("jar-lids");
        var panel = await PanelAsync(cell with { Robot = cell.Robot with { PlatformMass = null } });
        Assert.NotEmpty(panel.FindAll(".law-table tbody tr"));
        Assert.Contains(panel.FindAll(".lacking a"), a => a.GetAttribute("href")!.EndsWith("platformMass", StringComparison.Ordinal));
        Assert.Empty(panel.FindAll(".cloud"));
    }

    [Fact]
    public async Task The_fastest_settings_are_taken_over_as_one_edit()
    {
        var cell = Sample("jar-lids");
        var panel = await PanelAsync(cell with { Motion = cell.Motion with { Settings = cell.Motion.Settings with { PathSpeed = 0.5 } } });
        panel.Find("[data-fastest=look]").Click();
        panel.WaitForElement("[data-fastest=apply]", TimeSpan.FromMinutes(3)).Click();
        panel.WaitForAssertion(() => Assert.True(_session!.Draft.CanUndo), TimeSpan.FromMinutes(1));
        Assert.True(_session!.Cell.Motion.Settings.PathSpeed > 0.5);
        Assert.Single(_session.Draft.Edits);
    }

    [Fact]
    public async Task A_point_of_a_curve_and_a_waypoint_can_be_added_in_the_form()
    {
        await OpenAsync(Sample("jar-lids"));
        var drives = Render<SectionForm>(p => p.Add(f => f.Session, _session).Add(f => f.Section, DescriptionSections.Named("drives")));
        drives.Find("#add-curve-point-rail-motor").Change("middle");
        drives.FindAll(".add-entry").Single(a => a.InnerHtml.Contains("add-curve-point-rail-motor", StringComparison.Ordinal)).QuerySelector("button")!.Click();
        drives.WaitForAssertion(() => Assert.True(_session!.Cell.Drives.Motors["rail-motor"].Curve.ContainsKey("middle")), TimeSpan.FromMinutes(1));
        var motion = Render<SectionForm>(p => p.Add(f => f.Session, _session).Add(f => f.Section, DescriptionSections.Named("motion")));
        Assert.NotNull(motion.Find("#add-waypoint-to-left"));
    }

    private static Cell Sample(string name)
    {
        for (var folder = new DirectoryInfo(AppContext.BaseDirectory); folder is not null; folder = folder.Parent)
            if (File.Exists(Path.Combine(folder.FullName, "Trivet.slnx"))) return CellFile.Read(File.ReadAllBytes(Path.Combine(folder.FullName, "samples", $"{name}.json")), name).Cell!;
        throw new DirectoryNotFoundException("The tests run outside the repository.");
    }

    private async Task OpenAsync(Cell cell)
    {
        Assert.IsType<SaveOutcome.Saved>(await _store.CreateAsync("lids", cell, new Stamp("ada", Day), "first"));
        _session = new(_store, new Assessor(), TimeProvider.System, (await _store.DraftAsync("lids", "ada"))!, cell);
    }

    private async Task<IRenderedComponent<MotionPanel>> PanelAsync(Cell cell)
    {
        await OpenAsync(cell);
        return Render<MotionPanel>(p => p.Add(x => x.Session, _session));
    }
}
