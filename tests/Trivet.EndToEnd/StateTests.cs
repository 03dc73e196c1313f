using Microsoft.Playwright;

namespace Trivet.EndToEnd;

/// <summary>What a person sees when something is not as it should be.</summary>
[Collection(Chromium.One)]
public sealed class StateTests(Chromium chromium, SharedDesk desk)
{
    [Fact]
    public async Task A_lost_connection_is_told_and_the_page_comes_back_with_the_program()
    {
        using var job = new JobFolder();
        var page = await chromium.PageAsync();
        await using var first = await RunningDesk.StartAsync(job.Path);
        var sheet = await CellPage.FromSampleAsync(page, first.Address);
        int port = first.Address.Port;
        await first.KillAsync();
        await Assertions.Expect(page.Locator("#components-reconnect-modal")).ToBeVisibleAsync();
        await sheet.ShotAsync("connection-lost");
        await using var second = await RunningDesk.StartAsync(job.Path, port);
        // The new program does not know this page: it says so and offers to open it again, or the page has done so by itself.
        var again = page.Locator("#components-reconnect-modal .when-rejected button");
        await Assertions.Expect(again.Or(page.Locator(".findings"))).ToBeVisibleAsync(new() { Timeout = 120_000 });
        if (await again.IsVisibleAsync()) await again.ClickAsync();
        await Assertions.Expect(page.Locator("#components-reconnect-modal")).ToBeHiddenAsync();
        await Assertions.Expect(page.Locator(".findings")).ToBeVisibleAsync();
    }

    [Fact]
    public async Task A_page_whose_script_fails_says_so()
    {
        var page = await chromium.PageAsync();
        await page.RouteAsync("**/blazor.web.js", route => route.AbortAsync());
        await page.GotoAsync(desk.Address.ToString());
        await Assertions.Expect(page.Locator(".starting .late")).ToBeVisibleAsync(new() { Timeout = 60_000 });
        await page.ScreenshotAsync(new() { Path = Path.Combine(Repository.Screens, "script-failed.png") });
    }

    [Fact]
    public async Task A_refused_file_shows_every_error_with_its_remedy()
    {
        var page = await chromium.PageAsync();
        await page.GotoAsync(desk.Address.ToString());
        await Assertions.Expect(page.Locator(".begin")).ToBeVisibleAsync();
        // A file chosen before the page listens is not heard; no person is that quick.
        await page.WaitForFunctionAsync("document.querySelector('#import')?._blazorInputFileNextFileId !== undefined");
        await page.Locator("#import").SetInputFilesAsync(new FilePayload
        {
            Name = "wrong.json",
            MimeType = "application/json",
            Buffer = """{ "naem": "x", "mount": { "z": 1800 } }"""u8.ToArray(),
        });
        await Assertions.Expect(page.Locator(".refused")).ToContainTextAsync("name");
        await Assertions.Expect(page.Locator(".refused")).ToContainTextAsync("/mount/z");
        await page.ScreenshotAsync(new() { Path = Path.Combine(Repository.Screens, "refused.png") });
    }

    [Theory]
    [InlineData(1024, 768)]
    [InlineData(1280, 900)]
    [InlineData(1440, 900)]
    [InlineData(390, 844)]
    [InlineData(2560, 1300)]
    public async Task The_sheet_fits_the_screen(int width, int height)
    {
        var page = await chromium.PageAsync(width, height);
        var sheet = await CellPage.FromSampleAsync(page, desk.Address);
        await sheet.ProvedAsync();
        await sheet.ShotAsync($"sheet-{width}x{height}");
        int beyond = await page.EvaluateAsync<int>("() => document.documentElement.scrollWidth - document.documentElement.clientWidth");
        Assert.Equal(0, beyond);
        // Verdict to margin, all of a finding is in its panel.
        Assert.Equal(0, await page.EvaluateAsync<int>("() => { const s = document.querySelector('.ledger .scroll'); return s.scrollWidth - s.clientWidth; }"));
    }

    [Fact]
    public async Task Another_host_name_is_refused()
    {
        Assert.SkipWhen(Chromium.Path is null, "Chromium is not installed (Debian: chromium).");
        using var client = new HttpClient();
        // A site that points its own name at this machine (DNS rebinding) must get nothing.
        using var request = new HttpRequestMessage(HttpMethod.Get, desk.Address);
        request.Headers.Host = "somewhere.example";
        using var answer = await client.SendAsync(request, TestContext.Current.CancellationToken);
        Assert.Equal(System.Net.HttpStatusCode.BadRequest, answer.StatusCode);
    }
}
