using System.Net;
using System.Net.Http.Json;
using System.Net.WebSockets;
using Microsoft.Extensions.DependencyInjection;
using Trivet.Store;

namespace Trivet.Desk.Access;

/// <summary>Pairing, signing in and being shut out, over real connections.</summary>
public sealed class SignInTests : IAsyncLifetime
{
    private NetworkDesk _desk = null!;

    private static CancellationToken Stop => Xunit.TestContext.Current.CancellationToken;

    private People People => _desk.Services.GetRequiredService<People>();

    private PairingCodes Codes => _desk.Services.GetRequiredService<PairingCodes>();

    public async ValueTask InitializeAsync() => _desk = await NetworkDesk.StartAsync();

    public ValueTask DisposeAsync() => _desk.DisposeAsync();

    [Fact]
    public async Task A_device_pairs_a_person_signs_in_and_out_and_the_cookies_are_closed_to_others()
    {
        var cookies = new CookieContainer();
        var client = _desk.Client(cookies);
        using (var wrong = await NetworkDesk.PairAsync(client, "WRONG123"))
        {
            Assert.Equal(HttpStatusCode.OK, wrong.StatusCode);
            Assert.Contains("role=\"alert\"", await wrong.Content.ReadAsStringAsync(Stop), StringComparison.Ordinal);
            Assert.DoesNotContain(wrong.Headers.TryGetValues("Set-Cookie", out var set) ? set : [], c => c.Contains(DeviceKeys.CookieName, StringComparison.Ordinal));
        }
        string code = Codes.Make("ada").Text;
        using (var unnamed = await NetworkDesk.PairAsync(client, code, " ")) Assert.Equal(HttpStatusCode.OK, unnamed.StatusCode);
        using (var paired = await NetworkDesk.PairAsync(client, code, "tablet"))
        {
            Assert.Equal(new Uri(_desk.Network, "/sign-in"), new Uri(_desk.Network, paired.Headers.Location!));
            AssertClosed(Assert.Single(paired.Headers.GetValues("Set-Cookie"), c => c.StartsWith(DeviceKeys.CookieName, StringComparison.Ordinal)));
        }
        var device = Assert.Single(await People.DevicesAsync());
        Assert.Equal(("tablet", "ada"), (device.Name, device.By));

        await People.AddAsync("eve", "Eve", NetworkDesk.Pin, [Role.Record]);
        Assert.Contains("Eve (eve)", await client.GetStringAsync("sign-in", Stop), StringComparison.Ordinal);
        using (var signed = await NetworkDesk.PostFormAsync(client, "sign-in", ("_handler", "sign-in"), ("Person", "eve"), ("Pin", NetworkDesk.Pin)))
        {
            Assert.Equal(new Uri(_desk.Network, "/floor/"), new Uri(_desk.Network, signed.Headers.Location!));
            AssertClosed(Assert.Single(signed.Headers.GetValues("Set-Cookie"), c => c.StartsWith(SessionCookie.CookieName, StringComparison.Ordinal)));
        }
        var me = await NetworkDesk.MeAsync(client);
        Assert.Equal("eve", me.GetProperty("person").GetProperty("id").GetString());
        Assert.Equal(device.Id, me.GetProperty("device").GetProperty("id").GetString());
        Assert.Equal(["seeFloor", "addEntries"], me.GetProperty("may").EnumerateArray().Select(a => a.GetString()!));
        using (var bundle = await client.GetAsync("floor/api/v1/bundles/lids", Stop))
        {
            Assert.Equal(HttpStatusCode.OK, bundle.StatusCode);
            // A page that has it is not sent it again.
            using var again = new HttpRequestMessage(HttpMethod.Get, "floor/bundles/lids.json");
            again.Headers.IfNoneMatch.Add(bundle.Headers.ETag!);
            using var same = await client.SendAsync(again, Stop);
            Assert.Equal(HttpStatusCode.NotModified, same.StatusCode);
            Assert.Equal("", await same.Content.ReadAsStringAsync(Stop));
        }
        Assert.Contains("\"lids\"", await client.GetStringAsync("floor/api/v1/cells", Stop), StringComparison.Ordinal);
        Assert.Equal(HttpStatusCode.NotFound, (await client.GetAsync("floor/api/v1/bundles/nothing", Stop)).StatusCode);

        var session = cookies.GetCookies(_desk.Network)[SessionCookie.CookieName]!.Value;
        using (var signedOut = await NetworkDesk.PostFormAsync(client, "sign-in", ("_handler", "sign-out"))) Assert.Equal(HttpStatusCode.Redirect, signedOut.StatusCode);
        Assert.Equal(HttpStatusCode.Unauthorized, (await client.GetAsync("floor/api/v1/cells", Stop)).StatusCode);
        // A copy of the cookie taken before is worth nothing now.
        cookies.Add(_desk.Network, new Cookie(SessionCookie.CookieName, session) { Secure = true });
        Assert.Equal(HttpStatusCode.Unauthorized, (await client.GetAsync("floor/api/v1/cells", Stop)).StatusCode);
    }

    [Theory]
    [InlineData("de-AT,de;q=0.9,en;q=0.8", "de", "Dieses Gerät verbinden")]
    [InlineData("fr, de;q=0.3, en;q=0.7", "en", "Pair this device")]
    [InlineData("de;q=0", "en", "Pair this device")]
    [InlineData(null, "en", "Pair this device")]
    public async Task A_device_is_spoken_to_in_the_language_that_its_browser_asks_for(string? asked, string tag, string title)
    {
        var client = _desk.Client(new());
        if (asked is not null) client.DefaultRequestHeaders.Add("Accept-Language", asked);
        string page = WebUtility.HtmlDecode(await client.GetStringAsync("pair", Stop));
        Assert.Contains($"<main id=\"main\" tabindex=\"-1\" class=\"access-sheet\" lang=\"{tag}\">", page, StringComparison.Ordinal);
        Assert.Contains(title, page, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("/cell/lids", "/cell/lids")]
    [InlineData("//evil.example", "/floor/")]
    [InlineData("/\\evil.example", "/floor/")]
    [InlineData("https://evil.example", "/floor/")]
    [InlineData("javascript:alert(1)", "/floor/")]
    public async Task Signing_in_leads_only_within_the_desk(string wish, string to)
    {
        await People.AddAsync("eve", "Eve", NetworkDesk.Pin, [Role.Look]);
        var client = await _desk.PairedAsync();
        using var signed = await NetworkDesk.PostFormAsync(client, $"sign-in?returnUrl={Uri.EscapeDataString(wish)}", ("_handler", "sign-in"), ("Person", "eve"), ("Pin", NetworkDesk.Pin));
        Assert.Equal(new Uri(_desk.Network, to), new Uri(_desk.Network, signed.Headers.Location!));
    }

    [Fact]
    public async Task Wrong_pins_lock_out_and_say_until_when_and_a_new_pin_lets_in()
    {
        await People.AddAsync("eve", "Eve", NetworkDesk.Pin, [Role.Look]);
        var client = await _desk.PairedAsync();
        for (int i = 1; i < JobStore.FreeAttempts; i++) await AssertProblemAsync("wrong", client, "000000");
        var locked = await AssertProblemAsync("locked", client, "000000");
        Assert.Equal(_desk.Clock.Now + JobStore.LockOut, locked.GetProperty("until").GetDateTimeOffset());
        // The right one is not looked at now, also not on another device; the page says until when.
        await AssertProblemAsync("locked", await _desk.PairedAsync("other"), NetworkDesk.Pin);
        using (var page = await NetworkDesk.PostFormAsync(client, "sign-in", ("_handler", "sign-in"), ("Person", "eve"), ("Pin", NetworkDesk.Pin)))
            Assert.Contains((_desk.Clock.Now + JobStore.LockOut).ToLocalTime().ToString("HH:mm", System.Globalization.CultureInfo.InvariantCulture), await page.Content.ReadAsStringAsync(Stop), StringComparison.Ordinal);

        _desk.Clock.Now += JobStore.LockOut + TimeSpan.FromSeconds(1);
        await AssertProblemAsync("locked", client, "000000");
        await People.SetPinAsync("eve", "915038");
        await AssertProblemAsync("wrong", client, NetworkDesk.Pin);
        using var right = await NetworkDesk.SignInAsync(client, "eve", "915038");
        Assert.Equal(HttpStatusCode.NoContent, right.StatusCode);
        Assert.Equal(0, Assert.Single(await People.PersonsAsync()).Failures);
    }

    [Fact]
    public async Task Many_at_once_get_no_more_attempts_than_one_after_the_other()
    {
        await People.AddAsync("eve", "Eve", NetworkDesk.Pin, [Role.Look]);
        var client = await _desk.PairedAsync();
        var said = await Task.WhenAll(Enumerable.Range(0, 20).Select(async i =>
        {
            using var answer = await NetworkDesk.SignInAsync(client, "eve", $"00000{i}");
            return (await answer.Content.ReadFromJsonAsync<System.Text.Json.JsonElement>(Stop)).GetProperty("problem").GetString();
        }));
        Assert.True(said.Count(p => p == "wrong") < JobStore.FreeAttempts);
        Assert.Equal(JobStore.FreeAttempts, Assert.Single(await People.PersonsAsync()).Failures);
    }

    [Fact]
    public async Task Without_a_paired_device_no_pin_is_looked_at()
    {
        await People.AddAsync("eve", "Eve", NetworkDesk.Pin, [Role.Look]);
        await AssertProblemAsync("notPaired", _desk.Client(), NetworkDesk.Pin);
        Assert.Equal(0, Assert.Single(await People.PersonsAsync()).Failures);
        Assert.DoesNotContain("(eve)", await _desk.Client().GetStringAsync("sign-in", Stop), StringComparison.Ordinal);
    }

    [Fact]
    public async Task What_changes_something_needs_the_token_of_its_own_page()
    {
        await People.AddAsync("eve", "Eve", NetworkDesk.Pin, [Role.Look]);
        var client = await _desk.PairedAsync();
        foreach (string token in new[] { "", "CfDJ8wrong", (await NetworkDesk.MeAsync(await _desk.PairedAsync("other"))).GetProperty("token").GetString()! })
        {
            using var request = new HttpRequestMessage(HttpMethod.Post, "floor/api/v1/sign-in") { Content = JsonContent.Create(new { person = "eve", pin = NetworkDesk.Pin }) };
            if (token.Length > 0) request.Headers.Add("RequestVerificationToken", token);
            using var answer = await client.SendAsync(request, Stop);
            Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
        }
        using var form = new FormUrlEncodedContent([KeyValuePair.Create("_handler", "sign-in"), KeyValuePair.Create("Person", "eve"), KeyValuePair.Create("Pin", NetworkDesk.Pin)]);
        Assert.Equal(HttpStatusCode.BadRequest, (await client.PostAsync("sign-in", form, Stop)).StatusCode);
        Assert.Equal(0, Assert.Single(await People.PersonsAsync()).Failures);
    }

    [Fact]
    public async Task A_session_ends_after_a_pause_and_after_a_shift_and_the_roles_are_those_of_now()
    {
        var client = await _desk.SignedInAsync("eve", Role.Record);
        for (var gone = TimeSpan.Zero; gone < SessionCookie.Longest - TimeSpan.FromHours(1.5); gone += TimeSpan.FromHours(1.5))
        {
            Assert.Equal(HttpStatusCode.OK, (await client.GetAsync("floor/api/v1/cells", Stop)).StatusCode);
            _desk.Clock.Now += TimeSpan.FromHours(1.5);
        }
        await People.SetRolesAsync("eve", []);
        Assert.Equal(HttpStatusCode.Forbidden, (await client.GetAsync("floor/api/v1/cells", Stop)).StatusCode);
        await People.SetRolesAsync("eve", [Role.Look]);
        Assert.Equal(HttpStatusCode.OK, (await client.GetAsync("floor/api/v1/cells", Stop)).StatusCode);
        _desk.Clock.Now += TimeSpan.FromHours(1.5);
        Assert.Equal(HttpStatusCode.Unauthorized, (await client.GetAsync("floor/api/v1/cells", Stop)).StatusCode);
    }

    public enum Ending { Device, Person, Roles, Pin, ElsewhereInTheStore }

    public static TheoryData<Ending> Endings => [.. Enum.GetValues<Ending>()];

    [Theory, MemberData(nameof(Endings))]
    public async Task An_open_page_is_cut_when_its_person_or_device_is_shut_out(Ending ending)
    {
        var cookies = new CookieContainer();
        await _desk.SignedInAsync("eve", cookies, Role.Design);
        using var socket = new ClientWebSocket();
        using var invoker = new HttpMessageInvoker(_desk.Handler(cookies));
        var address = new UriBuilder(new Uri(_desk.Network, "_blazor")) { Scheme = "wss" }.Uri;
        await socket.ConnectAsync(address, invoker, Stop);
        // The protocol's handshake, so that the page counts as open.
        await socket.SendAsync("{\"protocol\":\"blazorpack\",\"version\":1}\u001e"u8.ToArray(), WebSocketMessageType.Binary, true, Stop);
        byte[] heard = new byte[1024];
        await socket.ReceiveAsync(heard, Stop);

        var device = Assert.Single(await People.DevicesAsync());
        await (ending switch
        {
            Ending.Device => People.EndDeviceAsync(device.Id),
            Ending.Person => People.EndPersonAsync("eve", forgetName: true),
            Ending.Roles => People.SetRolesAsync("eve", [Role.Look]),
            Ending.Pin => People.SetPinAsync("eve", "915038"),
            _ => (Task)_desk.Store.EndDeviceAsync(device.Id, _desk.Clock.Now, Stop),
        });
        await Assert.ThrowsAnyAsync<WebSocketException>(async () =>
        {
            while ((await socket.ReceiveAsync(heard, Stop)).MessageType != WebSocketMessageType.Close) { }
            throw new WebSocketException("closed in good order");
        });
        using var again = new ClientWebSocket();
        using var second = new HttpMessageInvoker(_desk.Handler(cookies));
        await Assert.ThrowsAnyAsync<WebSocketException>(() => again.ConnectAsync(address, second, Stop));
    }

    [Fact]
    public async Task Codes_and_pins_can_be_tried_so_often_and_no_oftener()
    {
        await using var strict = await NetworkDesk.StartAsync(o => o with { Limits = new(PairPerMinute: 4, SignInPerMinute: 3) });
        var client = strict.Client();
        strict.Services.GetRequiredService<PairingCodes>().Make("ada");
        for (int i = 0; i < 4; i++) Assert.Equal(HttpStatusCode.OK, (await NetworkDesk.PairAsync(client, $"WRONG{i}")).StatusCode);
        using var refused = await NetworkDesk.PairAsync(client, strict.Services.GetRequiredService<PairingCodes>().Open!.Text);
        Assert.Equal(HttpStatusCode.TooManyRequests, refused.StatusCode);
        Assert.Contains("Wait a minute", await refused.Content.ReadAsStringAsync(Stop), StringComparison.Ordinal);
        Assert.Equal(4, strict.Services.GetRequiredService<PairingCodes>().Wrong);
        // Looking is not counted, and another door not at all.
        Assert.Equal(HttpStatusCode.OK, (await client.GetAsync("pair", Stop)).StatusCode);
        for (int i = 0; i < 3; i++) Assert.Equal(HttpStatusCode.Forbidden, (await NetworkDesk.SignInAsync(client, "eve", "000000")).StatusCode);
        Assert.Equal(HttpStatusCode.TooManyRequests, (await NetworkDesk.SignInAsync(client, "eve", "000000")).StatusCode);
        for (int i = 0; i < 10; i++) Assert.Equal(HttpStatusCode.OK, (await strict.AtTheMachine().GetAsync("rules", Stop)).StatusCode);
    }

    private static async Task<System.Text.Json.JsonElement> AssertProblemAsync(string problem, HttpClient client, string pin)
    {
        using var answer = await NetworkDesk.SignInAsync(client, "eve", pin);
        Assert.Equal(HttpStatusCode.Forbidden, answer.StatusCode);
        var said = await answer.Content.ReadFromJsonAsync<System.Text.Json.JsonElement>(Stop);
        Assert.Equal(problem, said.GetProperty("problem").GetString());
        return said;
    }

    /// <summary>Names with the prefix __Host- are kept by a browser only with Secure, Path=/ and no Domain (RFC 6265bis, 4.1.3.2).</summary>
    private static void AssertClosed(string cookie)
    {
        string[] parts = [.. cookie.ToLowerInvariant().Split(';').Select(p => p.Trim())];
        Assert.StartsWith("__host-", parts[0], StringComparison.Ordinal);
        Assert.Contains("secure", parts);
        Assert.Contains("httponly", parts);
        Assert.Contains("samesite=strict", parts);
        Assert.Contains("path=/", parts);
        Assert.DoesNotContain(parts, p => p.StartsWith("domain", StringComparison.Ordinal));
    }
}
