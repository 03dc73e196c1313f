using Microsoft.Playwright;

namespace Trivet.EndToEnd.Floor;

/// <summary>The floor page as a tablet has it: taken once from the desk, then on its own.</summary>
[Collection(Chromium.One)]
public sealed class FloorTests(Chromium chromium, SharedDesk desk)
{
    private static readonly string Site = Path.Combine(Path.GetDirectoryName(Repository.Program)!, "floor");

    [Fact]
    public async Task Once_opened_it_opens_and_judges_without_a_network_and_keeps_its_readings()
    {
        using var job = new JobFolder();
        await using var own = Chromium.Path is null ? null : await RunningDesk.StartAsync(job.Path);
        var page = await OpenExampleAsync(own?.Address, 1024, 768);
        await Assertions.Expect(page.GetByText("Ready to work offline")).ToBeVisibleAsync();

        // No network, and no server either.
        await page.Context.SetOfflineAsync(true);
        await own!.KillAsync();
        await page.ReloadAsync();
        await Assertions.Expect(page.GetByText("Offline. All that is needed is on this device")).ToBeVisibleAsync();
        await Assertions.Expect(page.GetByRole(AriaRole.Heading, new() { Name = "Height of the robot's mounting plane" })).ToBeVisibleAsync();

        var reading = page.GetByLabel("Length you read");
        var understood = page.Locator("#understood");
        await reading.FillAsync("1700,3");
        await Assertions.Expect(understood).ToContainTextAsync("Understood: 1700.3 mm, read to 0.1 mm");
        await Assertions.Expect(understood.Locator(".verdict")).ToHaveTextAsync("holds");
        await page.GetByRole(AriaRole.Button, new() { Name = "Keep this reading" }).ClickAsync();
        await Assertions.Expect(page.Locator(".kept")).ToContainTextAsync("Kept on this device: 1700,3 mm");
        await reading.FillAsync("1702.5 mm");
        await Assertions.Expect(understood.Locator(".verdict")).ToHaveTextAsync("falls short");
        await reading.FillAsync("1700 kg");
        await Assertions.Expect(understood).ToContainTextAsync("Not understood");

        await page.ReloadAsync();
        await Assertions.Expect(page.Locator(".kept")).ToContainTextAsync("1700,3 mm");
        await page.GetByRole(AriaRole.Button, new() { Name = "All steps" }).ClickAsync();
        await Assertions.Expect(page.GetByText("1 of 14 steps have a reading.")).ToBeVisibleAsync();
    }

    [Fact]
    public async Task A_browser_finds_it_installable()
    {
        var page = await OpenExampleAsync(desk.Address, 1024, 768);
        await Assertions.Expect(page.GetByText("Ready to work offline")).ToBeVisibleAsync();
        // Chromium's own judgement: what keeps the page from being installed.
        var session = await page.Context.NewCDPSessionAsync(page);
        var answer = await session.SendAsync("Page.getInstallabilityErrors");
        var errors = answer!.Value.GetProperty("installabilityErrors").EnumerateArray().Select(e => e.GetProperty("errorId").GetString()).ToArray();
        // A private window is never offered an installation; all else would be the page's fault.
        Assert.DoesNotContain(errors, e => e != "in-incognito");
    }

    [Theory]
    [InlineData(1024, 768, ColorScheme.Light, "floor-light")]
    [InlineData(1024, 768, ColorScheme.Dark, "floor-dark")]
    [InlineData(400, 800, ColorScheme.Light, "floor-narrow")]
    public async Task Every_target_is_large_and_nothing_runs_over_the_edge(int width, int height, ColorScheme scheme, string shot)
    {
        var page = await OpenExampleAsync(desk.Address, width, height, scheme);
        await page.GetByLabel("Length you read").FillAsync("1700.3");
        await Assertions.Expect(page.Locator("#understood .verdict")).ToBeVisibleAsync();
        await page.ScreenshotAsync(new() { Path = Path.Combine(Repository.Screens, $"{shot}.png"), FullPage = true });

        // 15 mm at 96 px an inch are 57 px.
        foreach (var target in await page.Locator("button:visible, input[type=text]:visible").AllAsync())
        {
            var box = (await target.BoundingBoxAsync())!;
            Assert.True(box.Height >= 57 && box.Width >= 57, $"{await target.TextContentAsync()}: {box.Width} × {box.Height}");
        }
        Assert.Equal(width, await page.EvaluateAsync<int>("document.documentElement.scrollWidth"));
        await page.EvaluateAsync(await File.ReadAllTextAsync(Repository.Axe, TestContext.Current.CancellationToken));
        string found = await page.EvaluateAsync<string>("""
            async () => (await axe.run(document, { rules: { 'color-contrast-enhanced': { enabled: true } } })).violations.map(v => `${v.id}: ${v.nodes.map(n => n.html).join(' ')}`).join('\n')
            """);
        Assert.Equal("", found);
    }

    private async Task<IPage> OpenExampleAsync(Uri? from, int width, int height, ColorScheme scheme = ColorScheme.Light)
    {
        var page = await chromium.PageAsync(width, height, scheme);
        Assert.SkipUnless(Directory.Exists(Site), "The floor page is published in Release builds only (or with -p:WithFloor=true).");
        await Chromium.GrantKeepingAsync(page, $"http://localhost:{from!.Port}");
        await page.GotoAsync(new Uri(new Uri($"http://localhost:{from.Port}"), "/floor/").ToString());
        await page.GetByRole(AriaRole.Button, new() { Name = "Try it with an invented cell" }).ClickAsync();
        await Assertions.Expect(page.GetByLabel("Length you read")).ToBeVisibleAsync();
        return page;
    }
}
