using Bunit;
using Microsoft.Extensions.DependencyInjection;
using Trivet.Assessment;
using Trivet.Cells;
using Trivet.Desk.Components.Description;
using Trivet.Desk.Components.Mechanical;
using Trivet.Desk.Sessions;
using Trivet.Files;
using Trivet.Store;

namespace Trivet.Desk.Mechanical;

public sealed class MechanicalPanelTests : BunitContext, IAsyncLifetime
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
    public async Task Each_section_stands_with_its_tables_and_cautions()
    {
        var panel = await PanelAsync(OneCellJob.Sample("jar-lids"));
        Assert.Equal(3 + 2, panel.FindAll("[data-masses] tbody tr").Count);
        // Stack, air and plate; the frame's comes when it is computed.
        Assert.InRange(panel.FindAll("figure.drawing").Count, 3, 4);
        Assert.Equal(3, panel.FindAll(".cautions").Count);
        Assert.Contains(panel.FindAll("[data-parts] tbody th"), t => t.TextContent == "rod");
        Assert.Contains(panel.FindAll("table.judged td"), t => t.TextContent.Contains("lifting aid", StringComparison.Ordinal));
    }

    [Fact]
    public async Task An_empty_cell_says_where_to_begin()
    {
        var panel = await PanelAsync(Cell.Empty);
        Assert.Empty(panel.FindAll("figure.drawing"));
        Assert.Contains(panel.FindAll("a"), a => a.GetAttribute("href")!.EndsWith("/description/tool", StringComparison.Ordinal));
        Assert.Contains(panel.FindAll("a"), a => a.GetAttribute("href")!.EndsWith("/description/pneumatics", StringComparison.Ordinal));
    }

    [Fact]
    public async Task A_mesh_file_in_the_job_folder_is_read_when_its_path_is_typed_and_a_missing_one_is_refused()
    {
        await _job.OpenAsync(Cell.Empty with { Tool = new() { Parts = Keyed.Empty<ToolPart>().Add("jaw", new() { Shape = SolidKind.Mesh, Density = 2700 }) } });
        int[] order = [0, 2, 3, 0, 3, 1, 4, 5, 7, 4, 7, 6, 0, 1, 5, 0, 5, 4, 2, 6, 7, 2, 7, 3, 0, 4, 6, 0, 6, 2, 1, 3, 7, 1, 7, 5];
        await File.WriteAllTextAsync(Path.Combine(_job.Folder, "jaw.stl"), "solid jaw\n" + string.Concat(order.Chunk(3).Select(t => "facet normal 0 0 0\nouter loop\n"
            + string.Concat(t.Select(i => $"vertex {10 * (i & 1)} {10 * ((i >> 1) & 1)} {10 * ((i >> 2) & 1)}\n")) + "endloop\nendfacet\n")) + "endsolid jaw\n", Xunit.TestContext.Current.CancellationToken);
        var form = Render<SectionForm>(p => p.Add(f => f.Session, _job.Session).Add(f => f.Section, DescriptionSections.Named("tool")));
        form.Find("input[type=checkbox]").Change(true);
        string file = "/tool/parts/jaw/mesh/file";
        form.Find($"[data-field='{file}']").Change("gone.stl");
        form.WaitForAssertion(() => Assert.Contains("no such file", form.Markup, StringComparison.Ordinal), TimeSpan.FromSeconds(30));
        Assert.Null(_job.Session!.Cell.Tool.Parts["jaw"].Mesh.File);
        form.Find($"[data-field='{file}']").Change("jaw.stl");
        form.WaitForAssertion(() => Assert.Equal(1e-6, _job.Session!.Cell.Tool.Parts["jaw"].Mesh.Volume!.Value, 12), TimeSpan.FromSeconds(30));
    }

    private async Task<IRenderedComponent<MechanicalPanel>> PanelAsync(Cell cell)
    {
        await _job.OpenAsync(cell);
        return Render<MechanicalPanel>(p => p.Add(x => x.Session, _job.Session));
    }
}
