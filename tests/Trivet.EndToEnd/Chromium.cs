using Microsoft.Playwright;

namespace Trivet.EndToEnd;

/// <summary>Debian's own Chromium, driven from outside. Without it the tests are skipped, and say so.</summary>
public sealed class Chromium : IAsyncLifetime
{
    /// <summary>Two collections, each with a browser of its own and one page at a time: a page waits more than it works, and two cores are all there may be.</summary>
    public const string One = "one desk at a time", Two = "a second beside it";

    private static readonly string[] Flags =
    [
        "--no-sandbox", "--disable-quic", "--no-first-run", "--disable-background-networking", "--disable-component-update", "--disable-sync",
        // WebGL without a graphics card.
        "--use-angle=swiftshader", "--enable-unsafe-swiftshader",
    ];

    private static readonly string[] Keeping = ["durableStorage"];

    private IPlaywright? _playwright;
    private IBrowser? _browser;
    private IBrowserContext? _open;

    public static string? Path { get; } =
        new[] { Environment.GetEnvironmentVariable("TRIVET_TEST_CHROMIUM"), "/usr/bin/chromium", "/usr/bin/chromium-browser", "/usr/bin/google-chrome" }
            .FirstOrDefault(p => p is not null && File.Exists(p));

    public async ValueTask InitializeAsync()
    {
        if (Path is null) return;
        // A loaded machine may take its time; no test measures by this.
        Assertions.SetDefaultExpectTimeout(90_000);
        _playwright = await Playwright.CreateAsync();
        _browser = await _playwright.Chromium.LaunchAsync(new() { ExecutablePath = Path, Args = Flags });
    }

    /// <summary>A fresh page, and the one before it closed; skips the test where there is no browser.</summary>
    internal async Task<IPage> PageAsync(int width = 1440, int height = 900, ColorScheme scheme = ColorScheme.Light)
    {
        Assert.SkipWhen(_browser is null, "Chromium is not installed (Debian: chromium).");
        if (_open is not null) await _open.CloseAsync();
        _open = await _browser.NewContextAsync(new()
        {
            ViewportSize = new() { Width = width, Height = height },
            ColorScheme = scheme,
            ReducedMotion = ReducedMotion.Reduce,
            AcceptDownloads = true,
        });
        var page = await _open.NewPageAsync();
        page.SetDefaultTimeout(90_000);
        return page;
    }

    /// <summary>Lets an address keep what it stores. An installed page is granted this by itself; a test says it for the person.</summary>
    internal static async Task GrantKeepingAsync(IPage page, string origin)
    {
        var session = await page.Context.NewCDPSessionAsync(page);
        var target = await session.SendAsync("Target.getTargetInfo");
        string context = target!.Value.GetProperty("targetInfo").GetProperty("browserContextId").GetString()!;
        // Left open, a second session of the page undoes at the next load that it is offline; and what a session granted ends with it.
        await session.DetachAsync();
        var browser = await page.Context.Browser!.NewBrowserCDPSessionAsync();
        await browser.SendAsync("Browser.grantPermissions", new() { ["origin"] = origin, ["permissions"] = Keeping, ["browserContextId"] = context });
    }

    /// <summary>A browser of its own with a home folder of its own: what certificates it trusts is up to the test. Nothing else is let pass.</summary>
    internal async Task<IBrowser> WithHomeAsync(string home, string rules)
    {
        Assert.SkipWhen(_playwright is null || Path is null, "Chromium is not installed (Debian: chromium).");
        var environment = Environment.GetEnvironmentVariables().Cast<System.Collections.DictionaryEntry>().ToDictionary(e => (string)e.Key, e => (string?)e.Value ?? "");
        environment["HOME"] = home;
        return await _playwright.Chromium.LaunchAsync(new() { ExecutablePath = Path, Args = [.. Flags, $"--host-resolver-rules={rules}"], Env = environment });
    }

    public async ValueTask DisposeAsync()
    {
        if (_browser is not null) await _browser.DisposeAsync();
        _playwright?.Dispose();
    }
}

[CollectionDefinition(Chromium.One)]
public sealed class OneBrowser : ICollectionFixture<Chromium>;

[CollectionDefinition(Chromium.Two)]
public sealed class SecondBrowser : ICollectionFixture<Chromium>;
