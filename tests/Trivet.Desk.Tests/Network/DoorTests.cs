using System.Net;
using System.Net.Http.Headers;

namespace Trivet.Desk.Network;

/// <summary>What each door gives to whoever just comes, over real connections.</summary>
public sealed class DoorTests : IAsyncLifetime
{
    private NetworkDesk _desk = null!;

    private static CancellationToken Stop => Xunit.TestContext.Current.CancellationToken;

    public async ValueTask InitializeAsync() => _desk = await NetworkDesk.StartAsync();

    public ValueTask DisposeAsync() => _desk.DisposeAsync();

    [Fact]
    public async Task The_root_can_be_fetched_and_is_the_one_the_connection_rests_on()
    {
        using var answer = await _desk.Client().GetAsync("certificate/trivet-local-root.crt", Stop);
        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        Assert.Equal("application/x-x509-ca-cert", answer.Content.Headers.ContentType?.MediaType);
        string text = await answer.Content.ReadAsStringAsync(Stop);
        Assert.DoesNotContain("PRIVATE", text, StringComparison.Ordinal);
        Assert.Equal(await File.ReadAllTextAsync(_desk.At.Root!.PublicPath, Stop), text);
        // The fingerprint to compare with is shown where nobody can stand between.
        Assert.Contains(_desk.At.Root.Fingerprint, await _desk.AtTheMachine().GetStringAsync("certificate", Stop), StringComparison.Ordinal);
        Assert.DoesNotContain(_desk.At.Root.Fingerprint, await _desk.Client().GetStringAsync("certificate", Stop), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_client_that_does_not_trust_the_root_gets_no_connection()
    {
        using var client = new HttpClient();
        await Assert.ThrowsAsync<HttpRequestException>(() => client.GetAsync(new Uri(_desk.Network, "certificate"), Stop));
    }

    [Fact]
    public async Task The_network_speaks_https_only()
    {
        using var client = new HttpClient();
        var plain = new UriBuilder(_desk.Network) { Scheme = "http" }.Uri;
        await Assert.ThrowsAsync<HttpRequestException>(() => client.GetAsync(plain, Stop));
    }

    [Theory]
    [InlineData("somewhere.example")]
    [InlineData("trivet.localhost.example")]
    public async Task A_name_that_is_not_the_desks_own_is_refused_at_both_doors(string host)
    {
        string said = await _desk.RawAsync($"GET /certificate HTTP/1.1\r\nHost: {host}\r\nConnection: close\r\n\r\n", Stop);
        Assert.StartsWith("HTTP/1.1 400 ", said, StringComparison.Ordinal);
        Assert.DoesNotContain("Trivet", said, StringComparison.Ordinal);

        using var request = new HttpRequestMessage(HttpMethod.Get, new Uri(_desk.At.Desk, "certificate"));
        request.Headers.Host = host;
        using var answer = await _desk.AtTheMachine().SendAsync(request, Stop);
        Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
        Assert.Equal("", await answer.Content.ReadAsStringAsync(Stop));
        AssertHeaders(answer.Headers);
    }

    [Fact]
    public async Task A_name_of_the_network_does_not_open_the_machines_door()
    {
        using var request = new HttpRequestMessage(HttpMethod.Get, _desk.At.Desk);
        request.Headers.Host = _desk.At.Network.Select(n => n.Host).First(h => h != "localhost");
        using var answer = await _desk.AtTheMachine().SendAsync(request, Stop);
        Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
    }

    [Fact]
    public async Task At_the_machine_nobody_signs_in()
    {
        foreach (string path in new[] { "", "rules", "floor/bundles/lids.json", "certificate" })
        {
            using var answer = await _desk.AtTheMachine().GetAsync(path, Stop);
            Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
            AssertHeaders(answer.Headers);
        }
    }

    internal static void AssertHeaders(HttpResponseHeaders headers)
    {
        Assert.Contains("default-src 'none'", Assert.Single(headers.GetValues("Content-Security-Policy")), StringComparison.Ordinal);
        Assert.Contains("frame-ancestors 'none'", Assert.Single(headers.GetValues("Content-Security-Policy")), StringComparison.Ordinal);
        Assert.Equal("nosniff", Assert.Single(headers.GetValues("X-Content-Type-Options")));
        Assert.Equal("no-referrer", Assert.Single(headers.GetValues("Referrer-Policy")));
        Assert.Equal("same-origin", Assert.Single(headers.GetValues("Cross-Origin-Opener-Policy")));
        Assert.Equal("same-origin", Assert.Single(headers.GetValues("Cross-Origin-Resource-Policy")));
        Assert.False(headers.Contains("Server"));
    }
}
