using Bunit;
using Trivet.Assessment;
using Trivet.Cells;
using Trivet.Desk.Components.Mechanical;
using Trivet.Desk.Sessions;
using Trivet.Files;
using Trivet.Store;

namespace Trivet.Desk.Mechanical;

public sealed class FrameSectionTests : BunitContext, IAsyncLifetime
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
    public async Task A_mode_chosen_is_drawn_and_moves_when_asked_to()
    {
        var section = await SectionAsync(OneCellJob.Sample("jar-lids"));
        Assert.Equal(10, section.FindAll("[data-frame-group=modes] tbody tr").Count);
        Assert.Empty(section.FindAll("animate"));
        section.Find("#frame-mode").Change("0");
        section.WaitForAssertion(() => Assert.Contains("mode 1", section.Find("figcaption").TextContent, StringComparison.Ordinal), TimeSpan.FromSeconds(30));
        section.Find("[data-frame-move]").Click();
        Assert.NotEmpty(section.FindAll("animate"));
        section.Find("[data-frame-move]").Click();
        Assert.Empty(section.FindAll("animate"));
    }

    [Fact]
    public async Task A_brace_taken_stands_in_the_description()
    {
        var section = await SectionAsync(OneCellJob.Sample("jar-lids"));
        section.Find("[data-frame-braces]").Click();
        section.WaitForAssertion(() => Assert.NotEmpty(section.FindAll("[data-take-brace]")), TimeSpan.FromSeconds(30));
        section.Find("[data-take-brace]").Click();
        section.WaitForAssertion(() => Assert.True(_job.Session!.Cell.Frame.Members.ContainsKey("brace-1")), TimeSpan.FromSeconds(30));
        Assert.Equal("extrusion-40", _job.Session!.Cell.Frame.Members["brace-1"].Profile);
    }

    [Fact]
    public async Task Without_a_frame_the_way_to_describe_one_is_shown()
    {
        var section = await SectionAsync(OneCellJob.Sample("labels"));
        Assert.NotNull(section.Find("a.button.main[href$='/description/frame']"));
    }

    private async Task<IRenderedComponent<FrameSection>> SectionAsync(Cell cell)
    {
        await _job.OpenAsync(cell);
        var section = Render<FrameSection>(p => p.Add(c => c.Session, _job.Session));
        section.WaitForAssertion(() => Assert.Equal("there", section.Find("[data-frame]").GetAttribute("data-frame")), TimeSpan.FromSeconds(30));
        return section;
    }
}
