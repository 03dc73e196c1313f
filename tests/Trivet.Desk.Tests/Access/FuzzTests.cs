using System.Net;
using System.Net.Http.Headers;
using System.Text;
using Trivet.Desk.Network;
using Trivet.Testing;

namespace Trivet.Desk.Access;

/// <summary>Whatever is sent, the desk neither falls nor tells of its inside.</summary>
public sealed class FuzzTests(ITestOutputHelper report) : IAsyncLifetime
{
    private static readonly string[] Methods = ["GET", "POST", "PUT", "DELETE", "PATCH", "HEAD", "OPTIONS", "BREW"];
    private static readonly string[] Types = ["application/json", "text/plain", "application/x-www-form-urlencoded", "multipart/form-data; boundary=x", "application/octet-stream", "application/json; charset=utf-16", "", "nonsense"];
    private static readonly string[] Places =
    [
        "floor/api/v1/me", "floor/api/v1/sign-in", "floor/api/v1/sign-out", "floor/api/v1/cells", "floor/api/v1/bundles/lids", "floor/bundles/lids.json", "floor/bundles/%00.json", "floor/api/v1/bundles/%ff%fe",
        "floor/api/v1/entries", "floor/api/v1/entries?after=-1", "floor/api/v1/entries?after=x", "floor/api/v1/live/lids", "floor/api/v1/photographs/" + NoHash, "floor/api/v1/photographs/..%2f", "journal/photographs/" + NoHash + ".jpg",
        "pair", "pair?code=%00%01", "sign-in", "sign-in?returnUrl=%0d%0aX:1", "certificate", "certificate/trivet-local-root.crt", "refused", "_blazor", "_blazor/negotiate?negotiateVersion=1", "access", "cell/lids", "%2e%2e/%2e%2e/etc/passwd", "floor/..%2f..%2fappsettings.json",
    ];

    private const string NoHash = "00000000000000000000000000000000000000000000000000000000000000ff";

    private NetworkDesk _desk = null!;

    private static CancellationToken Stop => Xunit.TestContext.Current.CancellationToken;

    public async ValueTask InitializeAsync() => _desk = await NetworkDesk.StartAsync();

    public ValueTask DisposeAsync() => _desk.DisposeAsync();

    [Fact]
    public async Task Nothing_that_is_sent_makes_it_fail_or_show_its_inside()
    {
        var random = new Random(20260101);
        var client = await _desk.SignedInAsync("eve", Role.Look, Role.Record);
        string token = (await NetworkDesk.MeAsync(client)).GetProperty("token").GetString()!;
        var stranger = _desk.Client();
        int tried = Effort.Cases(400), closed = 0;
        var statuses = new SortedDictionary<int, int>();
        for (int i = 0; i < tried; i++)
        {
            using var request = new HttpRequestMessage(new HttpMethod(Pick(random, Methods)), Pick(random, Places));
            if (request.Method != HttpMethod.Get && request.Method != HttpMethod.Head)
            {
                request.Content = new ByteArrayContent(Body(random));
                string type = Pick(random, Types);
                if (type.Length > 0) request.Content.Headers.TryAddWithoutValidation("Content-Type", type);
            }
            if (random.Next(2) == 0) request.Headers.Add("RequestVerificationToken", token);
            if (random.Next(4) == 0) request.Headers.TryAddWithoutValidation("Cookie", $"{SessionCookie.CookieName}={random.Next()}; {DeviceKeys.CookieName}={new string('a', random.Next(200))}");
            string told = $"case {i}: {request.Method} {request.RequestUri} {request.Content?.Headers.ContentType} {request.Content?.Headers.ContentLength}";
            HttpResponseMessage answer;
            try
            {
                answer = await (random.Next(3) == 0 ? stranger : client).SendAsync(request, Stop);
            }
            catch (HttpRequestException e) when (e.InnerException is IOException && request.Content?.Headers.ContentLength > 4096)
            {
                // Refused before it was read: the connection is closed while the body is still being sent.
                closed++;
                continue;
            }
            using (answer)
            {
                statuses[(int)answer.StatusCode] = statuses.GetValueOrDefault((int)answer.StatusCode) + 1;
                Assert.True((int)answer.StatusCode < 500 || answer.StatusCode == HttpStatusCode.NotImplemented, $"{told}: {(int)answer.StatusCode}");
                string text = await answer.Content.ReadAsStringAsync(Stop);
                foreach (string inside in new[] { "   at ", "Exception", "Trivet.Desk.", "Microsoft.", "/src/", "root:x:" })
                    Assert.False(text.Contains(inside, StringComparison.Ordinal), $"{told}: shows {inside}");
                // A line that is no address is answered by the server itself, with nothing.
                if (answer.StatusCode == HttpStatusCode.BadRequest && request.RequestUri!.OriginalString.Contains("%00", StringComparison.Ordinal) && text.Length == 0) continue;
                DoorTests.AssertHeaders(answer.Headers);
            }
        }
        report.WriteLine($"{tried} tried, {closed} closed while sending; {string.Join(", ", statuses.Select(s => $"{s.Value} × {s.Key}"))}");
        // Nothing of it was kept, and it still answers.
        Assert.Null(await _desk.Store.JournalHeadAsync(Stop));
        Assert.Empty(await _desk.Store.PhotographsAsync(Stop));
        Assert.Equal(1, Assert.Single(await _desk.Store.CellsAsync(Stop)).Head.Number);
        using var after = await client.GetAsync("floor/api/v1/cells", Stop);
        Assert.NotEqual(HttpStatusCode.InternalServerError, after.StatusCode);
    }

    [Theory]
    [InlineData("{\"person\":\"eve\",\"pin\":12}", "application/json", HttpStatusCode.BadRequest)]
    [InlineData("{\"person\":null}", "application/json", HttpStatusCode.BadRequest)]
    [InlineData("null", "application/json", HttpStatusCode.BadRequest)]
    [InlineData("", "application/json", HttpStatusCode.BadRequest)]
    [InlineData("person=eve&pin=480271", "application/x-www-form-urlencoded", HttpStatusCode.UnsupportedMediaType)]
    [InlineData("{}", "text/plain", HttpStatusCode.UnsupportedMediaType)]
    public async Task A_document_of_the_wrong_form_or_type_is_refused(string body, string type, HttpStatusCode expected)
    {
        // A stranger is not even told the type.
        var client = await _desk.SignedInAsync("eve", Role.Design);
        using var request = new HttpRequestMessage(HttpMethod.Post, "floor/api/v1/sign-in") { Content = new StringContent(body, Encoding.UTF8, MediaTypeHeaderValue.Parse(type)) };
        request.Headers.Add("RequestVerificationToken", (await NetworkDesk.MeAsync(client)).GetProperty("token").GetString());
        using var answer = await client.SendAsync(request, Stop);
        Assert.Equal(expected, answer.StatusCode);
    }

    [Fact]
    public async Task A_document_that_is_too_long_is_refused()
    {
        var client = await _desk.PairedAsync();
        using var request = new HttpRequestMessage(HttpMethod.Post, "floor/api/v1/sign-in") { Content = new StringContent("{\"person\":\"" + new string('x', 70_000) + "\",\"pin\":\"1\"}", Encoding.UTF8, "application/json") };
        request.Headers.ExpectContinue = true;
        request.Headers.Add("RequestVerificationToken", (await NetworkDesk.MeAsync(client)).GetProperty("token").GetString());
        using var answer = await client.SendAsync(request, Stop);
        Assert.Equal(HttpStatusCode.RequestEntityTooLarge, answer.StatusCode);
    }

    private static string Pick(Random random, string[] from) => from[random.Next(from.Length)];

    private static byte[] Body(Random random)
    {
        switch (random.Next(4))
        {
            case 0:
                return [];
            case 1:
                byte[] noise = new byte[random.Next(1, 5000)];
                random.NextBytes(noise);
                return noise;
            case 2:
                string[] parts = ["{", "}", "[", "]", "\"person\"", ":", "\"pin\"", ",", "null", "1e999", "\"\\ud800\"", "\"eve\"", "true", "\u0000"];
                return Encoding.UTF8.GetBytes(string.Concat(Enumerable.Range(0, random.Next(60)).Select(_ => Pick(random, parts))));
            default:
                return Encoding.UTF8.GetBytes("_handler=sign-in&Person=" + new string('9', random.Next(100_000)) + "&Pin=%00");
        }
    }
}
