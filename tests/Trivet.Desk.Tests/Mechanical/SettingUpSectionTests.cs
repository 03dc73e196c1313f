using Bunit;
using Trivet.Desk.Components.Mechanical;

namespace Trivet.Desk.Mechanical;

public sealed class SettingUpSectionTests : BunitContext, IAsyncLifetime
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

    /// <summary>Four heights with one corner 3 mm low: that foot is raised by 3 mm, 1.71 turns of 1.75 mm, and no other.</summary>
    [Fact]
    public async Task Heights_tell_which_foot_to_turn_how_far_and_which_way()
    {
        var section = await SectionAsync("jar-lids");
        section.Find("[data-set-up-kind]").Change("Height");
        foreach (var (post, height) in new[] { ("front-left", "1800 mm"), ("front-right", "1797 mm"), ("back-right", "1800 mm"), ("back-left", "1800 mm") })
        {
            section.Find("[data-set-up-from]").Change($"post-{post}.top");
            section.Find("[data-set-up-value]").Change(height);
            section.Find("form").Submit();
        }

        Assert.Equal(4, section.FindAll("[data-set-up-readings] tbody tr").Count);
        var feet = section.FindAll("[data-set-up-group=feet] tbody tr").Select(r => r.TextContent).ToArray();
        Assert.Equal(4, feet.Length);
        string low = Assert.Single(feet, f => f.Contains("post-front-right", StringComparison.Ordinal));
        Assert.Contains("clockwise", low, StringComparison.Ordinal);
        Assert.Matches("1\\.[67]", low);
        Assert.All(feet.Where(f => f != low), f => Assert.DoesNotContain("turns", f, StringComparison.Ordinal));
        section.FindAll("[data-set-up-readings] button")[0].Click();
        Assert.Equal(3, section.FindAll("[data-set-up-readings] tbody tr").Count);
    }

    [Fact]
    public async Task A_reading_without_a_unit_is_refused_with_what_would_be_right_and_the_next_one_can_be_taken_over()
    {
        var section = await SectionAsync("jar-lids");
        section.Find("[data-set-up-value]").Change("1345");
        section.Find("form").Submit();
        Assert.Contains("mm", section.Find("#set-up-problem").TextContent, StringComparison.Ordinal);
        Assert.Empty(section.FindAll("[data-set-up-readings]"));
        string asked = section.Find("[data-set-up-group=next] th[scope=row]").TextContent;
        section.Find("[data-set-up-take]").Click();
        Assert.Contains(section.Find("[data-set-up-from]").GetAttribute("value")!, asked, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Without_posts_there_is_nothing_to_set_up()
    {
        var section = await SectionAsync("labels");
        Assert.Empty(section.FindAll("form"));
    }

    private async Task<IRenderedComponent<SettingUpSection>> SectionAsync(string sample)
    {
        var session = await _job.OpenAsync(OneCellJob.Sample(sample));
        return Render<SettingUpSection>(p => p.Add(s => s.Session, session));
    }
}
