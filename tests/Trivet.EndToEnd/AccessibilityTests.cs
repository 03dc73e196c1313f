using System.Text.Json;
using Microsoft.Playwright;

namespace Trivet.EndToEnd;

/// <summary>Every page held against axe-core's rules for WCAG 2.2 A and AA, light and dark.</summary>
[Collection(Chromium.Two)]
public sealed class AccessibilityTests(Chromium chromium) : IAsyncLifetime
{
    private readonly JobFolder _job = new();
    private RunningDesk _desk = null!;

    public async ValueTask InitializeAsync()
    {
        if (Chromium.Path is not null) _desk = await RunningDesk.StartAsync(_job.Path);
    }

    public async ValueTask DisposeAsync()
    {
        if (_desk is not null) await _desk.DisposeAsync();
        _job.Dispose();
    }

    [Fact]
    public async Task No_page_has_a_violation()
    {
        var page = await chromium.PageAsync();
        await page.GotoAsync(_desk.Address.ToString());
        await Assertions.Expect(page.Locator(".begin")).ToBeVisibleAsync();
        await CheckAsync(page, "folder-first");

        var sheet = await CellPage.FromSampleAsync(page, _desk.Address);
        await sheet.ProvedAsync();
        await page.Locator("[data-row]").First.ClickAsync();
        await Assertions.Expect(page.Locator(".finding")).ToBeVisibleAsync();
        await CheckAsync(page, "sheet");
        await page.Locator("[data-drawing='Space']").ClickAsync();
        await Assertions.Expect(page.Locator(".canvas canvas")).ToBeVisibleAsync();
        await CheckAsync(page, "space");

        foreach (string name in new[] { "description", "description/robot", "description/stations", "planes", "motion", "mechanical", "electrical", "procedure", "journal", "mount", "revisions", "revisions/1" })
        {
            await sheet.GoAsync(name);
            await Assertions.Expect(page.Locator("main [role=status]:has-text('…'), [data-charts=following], [data-frame=following]")).ToHaveCountAsync(0);
            await CheckAsync(page, name.Replace('/', '-'));
        }

        await page.GotoAsync(_desk.Address.ToString());
        await Assertions.Expect(page.Locator(".cells")).ToBeVisibleAsync();
        await Assertions.Expect(page.Locator(".wait")).ToHaveCountAsync(0, new() { Timeout = 120_000 });
        await CheckAsync(page, "folder");
        await page.GotoAsync(new Uri(_desk.Address, "access").ToString());
        await Assertions.Expect(page.Locator("main h1, main h2").First).ToBeVisibleAsync();
        await CheckAsync(page, "access");
        foreach (string name in new[] { "rules", "rules/reach.travel" })
        {
            await page.GotoAsync(new Uri(_desk.Address, name).ToString());
            await Assertions.Expect(page.Locator(".rule-sheet")).ToBeVisibleAsync();
            await CheckAsync(page, name.Replace('/', '-'));
        }

        await page.GotoAsync(new Uri(_desk.Address, "/cell/nowhere").ToString());
        await Assertions.Expect(page.Locator(".state h2")).ToBeVisibleAsync();
        await CheckAsync(page, "no-cell");
        await page.GotoAsync(new Uri(_desk.Address, "/nothing/here").ToString());
        await Assertions.Expect(page.Locator(".state h2")).ToBeVisibleAsync();
        await CheckAsync(page, "not-found");
    }

    /// <summary>All rules in the dark; in the light those that a shade can change. Of a ledger's hundreds of rows alike each seventh.</summary>
    private static async Task CheckAsync(IPage page, string name)
    {
        await page.EvaluateAsync(await File.ReadAllTextAsync(Repository.Axe));
        foreach (var (scheme, shade, rules) in new[]
                 {
                     (ColorScheme.Dark, "dark", "['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice']"),
                     (ColorScheme.Light, "light", "{ type: 'rule', values: ['color-contrast', 'link-in-text-block'] }"),
                 })
        {
            await page.EmulateMediaAsync(new() { ColorScheme = scheme, ReducedMotion = ReducedMotion.Reduce });
            // What is judged must have been drawn in the new shade.
            await page.EvaluateAsync("() => new Promise(done => requestAnimationFrame(() => requestAnimationFrame(done)))");
            await page.ScreenshotAsync(new() { Path = Path.Combine(Repository.Screens, $"{name}-{shade}.png") });
            var found = await page.EvaluateAsync<JsonElement>($$"""
                async () => (await axe.run({ exclude: [['tr:has([data-row]):not(:nth-child(7n+1)):not(.open)']] }, { runOnly: {{rules}} }))
                  .violations.map(v => `${v.id}: ${v.help}: ${v.nodes.slice(0, 4).map(n => n.html.slice(0, 160)).join(' | ')}`)
                """);
            string[] violations = [.. found.EnumerateArray().Select(v => v.GetString()!)];
            Assert.True(violations.Length == 0, $"{name}, {shade}:\n{string.Join('\n', violations)}");
        }
    }
}
