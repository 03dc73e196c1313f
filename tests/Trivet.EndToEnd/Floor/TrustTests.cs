using System.Diagnostics;
using Microsoft.Playwright;

namespace Trivet.EndToEnd.Floor;

/// <summary>A device on the network: what its browser makes of the desk's certificate before and after the root is installed. No error is ignored.</summary>
[Collection(Chromium.Two)]
public sealed class TrustTests(Chromium chromium) : IDisposable
{
    private const string Host = "desk.example";
    private readonly JobFolder _desks = new(), _device = new(), _job = new();

    public void Dispose()
    {
        _desks.Dispose();
        _device.Dispose();
        _job.Dispose();
    }

    [Fact]
    public async Task Only_with_the_root_installed_is_the_floor_page_kept_on_the_device()
    {
        Assert.SkipWhen(Chromium.Path is null, "Chromium is not installed (Debian: chromium).");
        Assert.SkipUnless(File.Exists("/usr/bin/certutil"), "certutil is not installed (Debian: libnss3-tools).");
        await using var desk = await RunningDesk.StartAsync(_job.Path, home: _desks.Path, options: ["--network", "--network-port", "0", "--host", Host]);
        string address = new Uri(desk.Network!, "/certificate").ToString();
        Assert.Equal(Host, desk.Network!.Host);

        await using (var stranger = await chromium.WithHomeAsync(_device.Path, $"MAP {Host} 127.0.0.1"))
        {
            var page = await stranger.NewPageAsync();
            var refused = await Assert.ThrowsAsync<PlaywrightException>(() => page.GotoAsync(address));
            Assert.Contains("ERR_CERT_AUTHORITY_INVALID", refused.Message, StringComparison.Ordinal);
        }

        Install(Path.Combine(_desks.Path, ".config", "trivet", "trivet-local-root.crt"));
        await using var device = await chromium.WithHomeAsync(_device.Path, $"MAP {Host} 127.0.0.1");
        var trusted = await device.NewPageAsync();
        await trusted.GotoAsync(address);
        await Assertions.Expect(trusted.GetByRole(AriaRole.Heading, new() { Name = "Root certificate" })).ToBeVisibleAsync();
        Assert.True(await trusted.EvaluateAsync<bool>("isSecureContext"));

        Assert.SkipUnless(Directory.Exists(Path.Combine(Path.GetDirectoryName(Repository.Program)!, "floor")), "The floor page is published in Release builds only (or with -p:WithFloor=true).");
        // What the browser has not promised to keep makes the page online only, and it says so.
        await trusted.GotoAsync(new Uri(desk.Network, "/floor/").ToString());
        await Assertions.Expect(trusted.Locator(".net.only")).ToContainTextAsync("the browser may clear what is kept here");
        await Chromium.GrantKeepingAsync(trusted, desk.Network.GetLeftPart(UriPartial.Authority));
        await trusted.ReloadAsync();
        await Assertions.Expect(trusted.GetByText("Ready to work offline")).ToBeVisibleAsync(new() { Timeout = 20_000 });
        Assert.Equal("activated", await trusted.EvaluateAsync<string>("navigator.serviceWorker.ready.then(r => r.active.state)"));
    }

    [Fact]
    public async Task A_tablet_pairs_by_the_code_at_the_desk_a_person_signs_in_and_is_shut_out_at_once()
    {
        Assert.SkipWhen(Chromium.Path is null, "Chromium is not installed (Debian: chromium).");
        Assert.SkipUnless(File.Exists("/usr/bin/certutil"), "certutil is not installed (Debian: libnss3-tools).");
        await using var desk = await RunningDesk.StartAsync(_job.Path, home: _desks.Path, options: ["--demo", "--network", "--network-port", "0", "--host", Host]);
        Install(Path.Combine(_desks.Path, ".config", "trivet", "trivet-local-root.crt"));
        var here = await chromium.PageAsync();
        await here.GotoAsync(desk.Address.ToString());
        await here.GetByRole(AriaRole.Link, new() { Name = "People and devices" }).ClickAsync();
        await here.GetByLabel("Id", new() { Exact = true }).FillAsync("eve");
        await here.GetByLabel("Name", new() { Exact = true }).FillAsync("Eve Example");
        await here.GetByLabel("PIN", new() { Exact = true }).FillAsync("480271");
        foreach (string role in (string[])["design", "record"]) await here.Locator(".new-person").GetByLabel(role).CheckAsync();
        await here.GetByRole(AriaRole.Button, new() { Name = "Add a person" }).ClickAsync();
        await Assertions.Expect(here.GetByRole(AriaRole.Heading, new() { Name = "Eve Example" })).ToBeVisibleAsync();
        await here.GetByRole(AriaRole.Button, new() { Name = "Show a code" }).ClickAsync();
        string code = await here.Locator("p.code").InnerTextAsync();
        await AccessibleAsync(here);
        await here.ScreenshotAsync(new() { Path = Path.Combine(Repository.Screens, "people-and-devices.png"), FullPage = true });

        await using var browser = await chromium.WithHomeAsync(_device.Path, $"MAP {Host} 127.0.0.1");
        var context = await browser.NewContextAsync(new() { ViewportSize = new() { Width = 360, Height = 740 } });
        var tablet = await context.NewPageAsync();
        tablet.SetDefaultTimeout(60_000);
        string label = new Uri(desk.Network!, "/floor/?cell=jar-lids").ToString();
        bool floor = Directory.Exists(Path.Combine(Path.GetDirectoryName(Repository.Program)!, "floor"));
        await tablet.GotoAsync(floor ? label : desk.Network!.ToString());
        if (floor)
        {
            // Whoever scans the code on the cabinet's door sees nothing of the cell before they are known.
            await Assertions.Expect(tablet.GetByText("The desk gives steps to people who are signed in")).ToBeVisibleAsync();
            await tablet.GetByRole(AriaRole.Link, new() { Name = "Sign in at the desk" }).ClickAsync();
        }
        await Assertions.Expect(tablet.GetByText("This device is not paired")).ToBeVisibleAsync();
        await tablet.GetByRole(AriaRole.Link, new() { Name = "Pair this device" }).ClickAsync();
        await tablet.GetByLabel("Code").FillAsync(code);
        await tablet.GetByLabel("Name of the device").FillAsync("tablet");
        await AccessibleAsync(tablet);
        await tablet.GetByRole(AriaRole.Button, new() { Name = "Pair" }).ClickAsync();
        await tablet.GetByLabel("PIN").FillAsync("480271");
        await AccessibleAsync(tablet);
        Assert.Equal(360, await tablet.EvaluateAsync<int>("document.documentElement.scrollWidth"));
        await tablet.GetByRole(AriaRole.Button, new() { Name = "Sign in" }).ClickAsync();
        await Assertions.Expect(tablet.Locator(".title-block")).ToContainTextAsync("eve");
        if (floor) await WorkByTheLabelAsync(tablet, label);

        await tablet.GotoAsync(desk.Network!.ToString());
        // A designer works on the sheets under their own name, and may not manage access.
        await Assertions.Expect(tablet.Locator(".title-block")).ToContainTextAsync("eve");
        await Assertions.Expect(tablet.GetByRole(AriaRole.Link, new() { Name = "People and devices" })).ToHaveCountAsync(0);
        await tablet.GotoAsync(new Uri(desk.Network, "/access").ToString());
        await Assertions.Expect(tablet.GetByRole(AriaRole.Heading, new() { Name = "Not for your roles" }).First).ToBeVisibleAsync();
        await tablet.GotoAsync(desk.Network.ToString());
        await Assertions.Expect(tablet.Locator(".title-block")).ToContainTextAsync("eve");

        await here.GetByRole(AriaRole.Button, new() { Name = "Revoke" }).ClickAsync();
        await Assertions.Expect(tablet.Locator("#components-reconnect-modal")).ToBeVisibleAsync();
        await tablet.GotoAsync(desk.Network.ToString());
        await Assertions.Expect(tablet.GetByText("This device is not paired with the desk, or was revoked.")).ToBeVisibleAsync();
    }

    /// <summary>What the code on the door opens: a step by its id, what is not there told, and entries that wait for the desk and are received once.</summary>
    private static async Task WorkByTheLabelAsync(IPage tablet, string label)
    {
        await tablet.GotoAsync($"{label}-that-is-not-there");
        await Assertions.Expect(tablet.GetByText("The desk has no steps for jar-lids-that-is-not-there")).ToBeVisibleAsync();
        await tablet.GotoAsync($"{label}&step=no-such-step");
        await Assertions.Expect(tablet.GetByText("The link names the step no-such-step")).ToBeVisibleAsync();
        await tablet.ScreenshotAsync(new() { Path = Path.Combine(Repository.Screens, "floor-step-not-there.png") });
        await tablet.GotoAsync($"{label}&step=measure-mount-height%3Az");
        await Assertions.Expect(tablet.GetByRole(AriaRole.Heading, new() { Name = "Measure the height of the mount" })).ToBeVisibleAsync();

        await tablet.Context.SetOfflineAsync(true);
        await tablet.Locator("#ask-length-in").FillAsync("1700.3");
        await tablet.GetByRole(AriaRole.Button, new() { Name = "Keep" }).ClickAsync();
        await Assertions.Expect(tablet.Locator(".state")).ToContainTextAsync("1 on this device only");
        await tablet.Context.SetOfflineAsync(false);
        await Assertions.Expect(tablet.Locator(".state")).ToHaveTextAsync("all received · receipt 1");
        int[] part = await tablet.EvaluateAsync<int[]>("fetch('api/v1/entries?after=0').then(r => r.json()).then(p => [p.entries.length, p.head])");
        Assert.Equal([1, 1], part);
    }

    private static async Task AccessibleAsync(IPage page)
    {
        await page.EvaluateAsync(await File.ReadAllTextAsync(Repository.Axe, TestContext.Current.CancellationToken));
        Assert.Equal("", await page.EvaluateAsync<string>("async () => (await axe.run(document)).violations.map(v => `${v.id}: ${v.nodes.map(n => n.html).join(' ')}`).join('\\n')"));
    }

    /// <summary>As docs/floor.md tells for Linux.</summary>
    private void Install(string root)
    {
        string store = Directory.CreateDirectory(Path.Combine(_device.Path, ".pki", "nssdb")).FullName;
        Run("-d", $"sql:{store}", "-N", "--empty-password");
        Run("-d", $"sql:{store}", "-A", "-t", "C,,", "-n", "trivet", "-i", root);
    }

    private static void Run(params string[] arguments)
    {
        using var process = Process.Start(new ProcessStartInfo("/usr/bin/certutil", arguments) { RedirectStandardError = true, RedirectStandardOutput = true })!;
        string said = process.StandardError.ReadToEnd() + process.StandardOutput.ReadToEnd();
        process.WaitForExit();
        Assert.True(process.ExitCode == 0, said);
    }
}
