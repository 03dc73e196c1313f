using Microsoft.Playwright;

namespace Trivet.EndToEnd.Floor;

/// <summary>The floor page as a tablet has it: taken once from the desk, then on its own.</summary>
[Collection(Chromium.Two)]
public sealed class FloorTests(Chromium chromium, SharedDesk desk)
{
    private static readonly string Site = Path.Combine(Path.GetDirectoryName(Repository.Program)!, "floor");

    [Fact]
    public async Task Cut_off_it_goes_on_and_afterwards_each_entry_is_received_once()
    {
        using var job = new JobFolder();
        await using var own = Chromium.Path is null ? null : await RunningDesk.StartAsync(job.Path);
        var page = await OpenExampleAsync(own?.Address, 1024, 768);
        await Assertions.Expect(page.GetByText("Ready to work offline")).ToBeVisibleAsync();
        await GoToAsync(page, Mount);
        var reading = page.Locator("#ask-length-in");
        var understood = page.Locator("#ask-length-read");

        // The network goes in the middle of typing, and the server with it; the page is loaded anew.
        await reading.FillAsync("1700");
        await page.Context.SetOfflineAsync(true);
        int port = own!.Address.Port;
        await own.KillAsync();
        await reading.FillAsync("1700,3");
        await Assertions.Expect(understood).ToContainTextAsync("Understood: 1700.3 mm, read to 0.1 mm");
        // The plan is not told before a blind reading, and its verdict would tell it.
        await Assertions.Expect(understood.Locator(".verdict")).ToHaveCountAsync(0);
        await page.GetByRole(AriaRole.Button, new() { Name = "Keep" }).ClickAsync();
        await Assertions.Expect(page.Locator(".kept")).ToContainTextAsync("Kept: 1700,3 mm (0.3 mm more than planned)");
        await Assertions.Expect(page.Locator(".kept .verdict")).ToHaveTextAsync("holds");
        await page.ReloadAsync();
        await Assertions.Expect(page.GetByText("Offline. All that is needed is on this device")).ToBeVisibleAsync();
        await GoToAsync(page, Mount);
        await Assertions.Expect(page.Locator(".kept")).ToContainTextAsync("1700,3 mm");
        await page.GetByRole(AriaRole.Button, new() { Name = "Correct a mistake" }).ClickAsync();
        await page.GetByLabel("What was mistaken?").FillAsync("read upside down");
        await reading.FillAsync("1702.5 mm");
        await page.GetByRole(AriaRole.Button, new() { Name = "Keep" }).ClickAsync();
        await Assertions.Expect(page.Locator(".kept .verdict")).ToHaveTextAsync("falls short");
        await Assertions.Expect(page.Locator(".state")).ToContainTextAsync("2 on this device only");

        // Back again: both are received, once, and a second look changes nothing.
        await using var again = await RunningDesk.StartAsync(job.Path, port);
        await page.Context.SetOfflineAsync(false);
        await Assertions.Expect(page.Locator(".state")).ToHaveTextAsync("all received · receipt 2");
        await page.ReloadAsync();
        await Assertions.Expect(page.Locator(".state")).ToHaveTextAsync("all received · receipt 2");
        var part = await page.EvaluateAsync<int[]>("fetch('api/v1/entries?after=0').then(r => r.json()).then(p => [p.entries.length, p.head])");
        Assert.Equal([2, 2], part);
    }

    [Fact]
    public async Task Two_devices_see_each_other_and_what_was_answered_apart_is_shown()
    {
        using var job = new JobFolder();
        await using var own = Chromium.Path is null ? null : await RunningDesk.StartAsync(job.Path);
        var first = await OpenExampleAsync(own?.Address, 360, 740, ColorScheme.Dark);
        await using var other = await first.Context.Browser!.NewContextAsync(new() { ViewportSize = new() { Width = 1024, Height = 768 } });
        var second = await other.NewPageAsync();
        await StartAsync(second, own!.Address, "bo");
        await GoToAsync(first, Mount);
        await GoToAsync(second, Mount);
        await Assertions.Expect(first.GetByText("bo is at this step on another device.")).ToBeVisibleAsync();
        await Assertions.Expect(second.GetByText("ada is at this step on another device.")).ToBeVisibleAsync();

        // One is cut off and answers; the other, who cannot know, answers otherwise. Neither is lost, both see that they do not fit.
        await other.SetOfflineAsync(true);
        await second.Locator("#ask-length-in").FillAsync("1750");
        await second.GetByRole(AriaRole.Button, new() { Name = "Keep" }).ClickAsync();
        await Assertions.Expect(second.Locator(".state")).ToContainTextAsync("1 on this device only");
        await first.Locator("#ask-length-in").FillAsync("1700.3");
        await first.GetByRole(AriaRole.Button, new() { Name = "Keep" }).ClickAsync();
        await Assertions.Expect(first.Locator(".state")).ToContainTextAsync("receipt 1");
        await other.SetOfflineAsync(false);
        await Assertions.Expect(second.Locator(".state")).ToContainTextAsync("receipt 2");
        await Assertions.Expect(first.GetByText("answers otherwise than another device did")).ToBeVisibleAsync();
        await Assertions.Expect(second.GetByText("answers otherwise than another device did")).ToBeVisibleAsync();
        await first.ScreenshotAsync(new() { Path = Path.Combine(Repository.Screens, "floor-conflict.png"), FullPage = true });
    }

    [Fact]
    public async Task A_photograph_says_below_what_it_shows_and_one_that_the_desk_does_not_take_is_told()
    {
        var page = await OpenExampleAsync(desk.Address, 1024, 768);
        byte[] taken = await page.ScreenshotAsync(new() { Type = ScreenshotType.Jpeg });
        await page.RouteAsync("**/photographs/*", route => route.FulfillAsync(new() { Status = 422 }));
        await GoToAsync(page, "Goods in");
        // Some browsers write a segment of their own beside the pixels; the desk would take no such picture.
        await page.EvaluateAsync("""
            () => {
              const draw = HTMLCanvasElement.prototype.toBlob, own = [0xFF, 0xE1, 0, 12, ...'Exif\0\0MM\0*'].map(c => typeof c === 'string' ? c.charCodeAt(0) : c);
              HTMLCanvasElement.prototype.toBlob = function (done, ...rest) {
                draw.call(this, blob => done(new Blob([blob.slice(0, 2), new Uint8Array(own), blob.slice(2)], { type: blob.type })), ...rest);
              };
            }
            """);
        await page.Locator("input[type=file]").First.SetInputFilesAsync(new FilePayload { Name = "plate.jpg", MimeType = "image/jpeg", Buffer = taken });
        await Assertions.Expect(page.Locator("img.photo").First).ToBeVisibleAsync();
        await Assertions.Expect(page.GetByText("The desk does not take 1 photograph(s)")).ToBeVisibleAsync();
        await page.ScreenshotAsync(new() { Path = Path.Combine(Repository.Screens, "floor-photograph.png"), FullPage = true });

        // The band below the picture takes nothing of it: black, with white letters.
        int[] below = await page.EvaluateAsync<int[]>("""
            async () => {
              const image = document.querySelector('img.photo');
              await image.decode();
              const canvas = Object.assign(document.createElement('canvas'), { width: image.naturalWidth, height: image.naturalHeight });
              const context = canvas.getContext('2d');
              context.drawImage(image, 0, 0);
              const grey = context.getImageData(0, 768, canvas.width, canvas.height - 768).data.filter((_, i) => i % 4 === 1);
              return [canvas.width, canvas.height, grey.filter(g => g < 40).length, grey.filter(g => g > 215).length];
            }
            """);
        Assert.Equal((1024, 768 + 27), (below[0], below[1]));
        Assert.InRange(below[2], 1024 * 27 / 2, 1024 * 27);
        Assert.InRange(below[3], 400, 1024 * 27 / 3);

        // Loaded anew it asks the desk again, which now takes it.
        await page.UnrouteAllAsync();
        await page.ReloadAsync();
        await Assertions.Expect(page.Locator(".state")).ToContainTextAsync("all received");
        await Assertions.Expect(page.GetByText("The desk does not take")).ToHaveCountAsync(0);
    }

    [Fact]
    public async Task Where_the_browser_has_no_room_left_an_entry_is_not_taken_for_kept()
    {
        var page = await OpenExampleAsync(desk.Address, 1024, 768);
        await GoToAsync(page, Mount);
        // The error of a full disk, where the browser would raise it: its own quota is looked at too seldom to be met by a small entry.
        await page.EvaluateAsync("""
            () => {
              const add = IDBObjectStore.prototype.add;
              IDBObjectStore.prototype.add = function () { throw new DOMException('full', 'QuotaExceededError'); };
              window.makeRoom = () => { IDBObjectStore.prototype.add = add; };
            }
            """);
        await page.Locator("#ask-length-in").FillAsync("1700.3");
        await page.GetByRole(AriaRole.Button, new() { Name = "Keep" }).ClickAsync();
        await Assertions.Expect(page.GetByText("The browser has no room left")).ToBeVisibleAsync();
        await Assertions.Expect(page.Locator(".kept")).ToHaveCountAsync(0);
        await page.ScreenshotAsync(new() { Path = Path.Combine(Repository.Screens, "floor-full.png"), FullPage = true });

        // What was typed still stands there, and is kept once there is room.
        await page.EvaluateAsync("() => makeRoom()");
        await page.GetByRole(AriaRole.Button, new() { Name = "Keep" }).ClickAsync();
        await Assertions.Expect(page.Locator(".kept")).ToContainTextAsync("Kept: 1700.3 mm");
    }

    [Fact]
    public async Task Where_the_browser_keeps_nothing_the_page_says_so_before_anything_is_typed()
    {
        var page = await chromium.PageAsync(1024, 768);
        Assert.SkipUnless(Directory.Exists(Site), "The floor page is published in Release builds only (or with -p:WithFloor=true).");
        // As a browser does that forbids it to a site.
        await page.AddInitScriptAsync("Object.defineProperty(window, 'indexedDB', { get() { throw new DOMException('forbidden', 'SecurityError'); } })");
        await page.GotoAsync(new Uri(desk.Address, "/floor/").ToString());
        await page.GetByRole(AriaRole.Button, new() { Name = "Try it with an invented cell" }).ClickAsync();
        await Assertions.Expect(page.GetByText("This browser does not keep the steps")).ToBeVisibleAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Back to Jar lids" }).ClickAsync();
        await page.GetByLabel("Name or sign").FillAsync("ada");
        await page.GetByRole(AriaRole.Button, new() { Name = "That is me" }).ClickAsync();
        await Assertions.Expect(page.Locator(".net.only")).ToContainTextAsync("this browser keeps nothing");
        await GoToAsync(page, Mount);
        await page.Locator("#ask-length-in").FillAsync("1700.3");
        await page.GetByRole(AriaRole.Button, new() { Name = "Keep" }).ClickAsync();
        await Assertions.Expect(page.Locator("main").GetByText("this browser keeps nothing")).ToBeVisibleAsync();
        await Assertions.Expect(page.Locator(".kept")).ToHaveCountAsync(0);
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
    [InlineData(360, 740, ColorScheme.Dark, "floor-narrow")]
    public async Task Every_target_is_large_and_nothing_runs_over_the_edge(int width, int height, ColorScheme scheme, string shot)
    {
        // The desk is shared, and so is its journal: each run has a person of its own who goes in.
        string person = $"ada {width}";
        var page = await OpenExampleAsync(desk.Address, width, height, scheme, person);
        await page.EvaluateAsync(await File.ReadAllTextAsync(Repository.Axe, TestContext.Current.CancellationToken));
        await GoToAsync(page, Mount);
        await page.Locator("#ask-length-in").FillAsync("1700.3");
        await LookAsync(page, width, shot + "-step");
        await page.GetByRole(AriaRole.Button, new() { Name = "Make safe" }).ClickAsync();
        await Assertions.Expect(page.GetByRole(AriaRole.Heading, new() { Name = "Make safe now" })).ToBeVisibleAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = $"{person} goes in" }).ClickAsync();
        await Assertions.Expect(page.GetByText($"{person} has come out")).ToBeVisibleAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Deutsch" }).ClickAsync();
        await Assertions.Expect(page.GetByRole(AriaRole.Heading, new() { Name = "Jetzt sicher machen" })).ToBeVisibleAsync();
        await LookAsync(page, width, shot + "-safe");
        await page.GetByRole(AriaRole.Button, new() { Name = "Alle Schritte" }).ClickAsync();
        await LookAsync(page, width, shot + "-steps");
    }

    private const string Mount = "Measure the height of the mount";

    private static async Task LookAsync(IPage page, int width, string shot)
    {
        await page.ScreenshotAsync(new() { Path = Path.Combine(Repository.Screens, $"{shot}.png") });
        // 15 mm at 96 px an inch are 56.7 px.
        string small = await page.EvaluateAsync<string>("""
            () => [...document.querySelectorAll('button, input:not([type=file]), textarea, label.file')].map(e => [e, e.getBoundingClientRect()])
              .filter(([, r]) => r.width > 0 && (r.width < 56.7 || r.height < 56.7)).map(([e, r]) => `${e.innerText} ${r.width} × ${r.height}`).join('\n')
            """);
        Assert.Equal("", small);
        Assert.Equal(width, await page.EvaluateAsync<int>("Math.max(innerWidth, document.documentElement.scrollWidth)"));
        string found = await page.EvaluateAsync<string>("""
            async () => (await axe.run(document, { rules: { 'color-contrast-enhanced': { enabled: true } } })).violations.map(v => `${v.id}: ${v.nodes.map(n => n.html).join(' ')}`).join('\n')
            """);
        Assert.Equal("", found);
    }

    private async Task<IPage> OpenExampleAsync(Uri? from, int width, int height, ColorScheme scheme = ColorScheme.Light, string person = "ada")
    {
        var page = await chromium.PageAsync(width, height, scheme);
        Assert.SkipUnless(Directory.Exists(Site), "The floor page is published in Release builds only (or with -p:WithFloor=true).");
        await Chromium.GrantKeepingAsync(page, $"http://localhost:{from!.Port}");
        await StartAsync(page, from, person);
        return page;
    }

    private static async Task StartAsync(IPage page, Uri from, string person)
    {
        page.SetDefaultTimeout(90_000);
        await page.GotoAsync(new Uri(new Uri($"http://localhost:{from.Port}"), "/floor/").ToString());
        await page.GetByRole(AriaRole.Button, new() { Name = "Try it with an invented cell" }).ClickAsync();
        await page.GetByLabel("Name or sign").FillAsync(person);
        await page.GetByRole(AriaRole.Button, new() { Name = "That is me" }).ClickAsync();
        await Assertions.Expect(page.Locator(".step")).ToBeVisibleAsync();
    }

    private static async Task GoToAsync(IPage page, string step)
    {
        await page.GetByRole(AriaRole.Button, new() { Name = "All steps" }).ClickAsync();
        await page.Locator(".steps button", new() { HasText = step }).First.ClickAsync();
        await Assertions.Expect(page.GetByRole(AriaRole.Heading, new() { Name = step })).ToBeVisibleAsync();
    }
}
