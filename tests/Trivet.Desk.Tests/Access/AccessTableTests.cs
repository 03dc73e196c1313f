using System.Net;
using System.Text.RegularExpressions;
using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Routing;
using Microsoft.AspNetCore.StaticAssets;
using Microsoft.Extensions.DependencyInjection;
using Trivet.Desk.Network;

namespace Trivet.Desk.Access;

/// <summary>Everyone against everything: each kind of visitor asks for every endpoint the desk really has, and gets what the table says.</summary>
public sealed partial class AccessTableTests : IAsyncLifetime
{
    private NetworkDesk _desk = null!;

    private static CancellationToken Stop => Xunit.TestContext.Current.CancellationToken;

    public async ValueTask InitializeAsync() => _desk = await NetworkDesk.StartAsync();

    public ValueTask DisposeAsync() => _desk.DisposeAsync();

    /// <summary>The table once more, written by hand, so that no change of it goes unseen.</summary>
    [Theory]
    [InlineData(Role.Look, "SeeFloor")]
    [InlineData(Role.Record, "SeeFloor AddEntries")]
    [InlineData(Role.Release, "SeeFloor AddEntries Sign")]
    [InlineData(Role.Design, "SeeFloor UseDesk")]
    public async Task A_role_may_do_this_and_nothing_else(Role role, string acts)
    {
        var authorization = _desk.Services.GetRequiredService<IAuthorizationService>();
        foreach (var act in Enum.GetValues<Act>())
        {
            bool expected = acts.Split(' ').Contains(act.ToString());
            Assert.Equal(expected, AccessTable.Of(role).Contains(act));
            Assert.Equal(expected, (await authorization.AuthorizeAsync(Known.OnDevice("eve", "Eve", [role], "d", "session"), act.ToString())).Succeeded);
            Assert.False((await authorization.AuthorizeAsync(new(new System.Security.Claims.ClaimsIdentity()), act.ToString())).Succeeded);
            Assert.True((await authorization.AuthorizeAsync(Known.AtTheMachine("ada", "machine"), act.ToString())).Succeeded);
        }
        Assert.DoesNotContain(Enum.GetValues<Role>(), r => AccessTable.Of(r).Contains(Act.ManageAccess));
    }

    public enum Visitor
    {
        Stranger,
        PairedOnly,
        Look,
        Record,
        Release,
        Design,
        All,
        DeviceRevoked,
        PersonEnded,
        SessionExpired,
        KeyOfAnotherDevice,
        AtTheMachine,
    }

    public static TheoryData<Visitor> Visitors => [.. Enum.GetValues<Visitor>()];

    [Theory, MemberData(nameof(Visitors))]
    public async Task Every_endpoint_gives_each_visitor_what_the_table_says(Visitor visitor)
    {
        var (client, may) = await ArriveAsync(visitor);
        var asked = Endpoints().ToList();
        // Everything the table names is there, besides the floor page's files, which only a release build has.
        foreach (var gate in AccessTable.Open.Concat(AccessTable.Guarded).Where(g => g != AccessTable.FloorFiles))
            Assert.Contains(asked, e => e.Method == gate.Method && e.Route == gate.Route);
        Assert.True(asked.Count > 30);

        foreach (var (method, route, needs) in asked)
        {
            using var request = new HttpRequestMessage(new HttpMethod(method), Filled(route)[1..]);
            using var answer = await client.SendAsync(request, HttpCompletionOption.ResponseHeadersRead, Stop);
            bool refused = answer.StatusCode is HttpStatusCode.Unauthorized or HttpStatusCode.Forbidden
                || answer.StatusCode == HttpStatusCode.Redirect && answer.Headers.Location!.ToString() is var to && (to.Contains("/sign-in", StringComparison.Ordinal) || to.Contains("/refused", StringComparison.Ordinal));
            bool expected = needs is not { } act || may.Contains(act);
            // A PIN from a device that is not paired is refused by the handler, not by the table.
            if (route == AccessTable.SignIn.Route) continue;
            Assert.True(expected != refused, $"{visitor} {method} {route}: {(int)answer.StatusCode} {answer.Headers.Location}");
            Assert.NotEqual(HttpStatusCode.InternalServerError, answer.StatusCode);
            DoorTests.AssertHeaders(answer.Headers);
        }
    }

    [Fact]
    public async Task An_address_that_is_not_there_tells_a_stranger_nothing()
    {
        foreach (string path in new[] { "nothing", "cell/nothing", "floor/api/v2/me", "floor/api/v1/nothing", "..%2f..%2fetc%2fpasswd", "certificate/trivet-local-root.pem" })
        {
            using var answer = await _desk.Client().GetAsync(path, Stop);
            Assert.Contains(answer.StatusCode, new[] { HttpStatusCode.Redirect, HttpStatusCode.Unauthorized, HttpStatusCode.NotFound, HttpStatusCode.BadRequest });
            Assert.DoesNotContain("PRIVATE KEY", await answer.Content.ReadAsStringAsync(Stop), StringComparison.Ordinal);
            DoorTests.AssertHeaders(answer.Headers);
        }
    }

    /// <summary>All endpoints of the running program but its static files, each with what it needs by the table.</summary>
    private IEnumerable<(string Method, string Route, Act? Needs)> Endpoints() =>
        from endpoint in _desk.Services.GetRequiredService<IEnumerable<EndpointDataSource>>().SelectMany(s => s.Endpoints).OfType<RouteEndpoint>()
        where endpoint.Metadata.GetMetadata<StaticAssetDescriptor>() is null
        let route = "/" + endpoint.RoutePattern.RawText!.TrimStart('/')
        // A static file that is not there has an endpoint of its own, for development.
        where route != "/_framework/{**path}"
        from method in endpoint.Metadata.GetMetadata<HttpMethodMetadata>()?.HttpMethods ?? ["GET"]
        let gate = AccessTable.Open.Concat(AccessTable.Guarded).FirstOrDefault(g => g.Method == method && g.Route == route)
        select (method, route, gate is null ? Act.UseDesk : gate.Needs);

    private static string Filled(string route) => Parameter().Replace(route, m => m.Groups[1].Value switch
    {
        "path" => "index.html",
        "number" or "Number" or "revision" => "1",
        _ => "lids",
    });

    [GeneratedRegex(@"\{\**([A-Za-z]+)[^}]*\}")]
    private static partial Regex Parameter();

    private async Task<(HttpClient Client, IReadOnlyCollection<Act> May)> ArriveAsync(Visitor visitor)
    {
        var people = _desk.Services.GetRequiredService<People>();
        switch (visitor)
        {
            case Visitor.Stranger:
                return (_desk.Client(), []);
            case Visitor.PairedOnly:
                return (await _desk.PairedAsync(), []);
            case Visitor.All:
                return (await _desk.SignedInAsync("eve", Enum.GetValues<Role>()), [Act.SeeFloor, Act.AddEntries, Act.Sign, Act.UseDesk]);
            case Visitor.DeviceRevoked:
                var revoked = await _desk.SignedInAsync("eve", Enum.GetValues<Role>());
                foreach (var device in await people.DevicesAsync()) await people.EndDeviceAsync(device.Id);
                return (revoked, []);
            case Visitor.PersonEnded:
                var ended = await _desk.SignedInAsync("eve", Enum.GetValues<Role>());
                await people.EndPersonAsync("eve", forgetName: false);
                return (ended, []);
            case Visitor.SessionExpired:
                var expired = await _desk.SignedInAsync("eve", Enum.GetValues<Role>());
                _desk.Clock.Now += SessionCookie.Pause + TimeSpan.FromMinutes(1);
                return (expired, []);
            case Visitor.KeyOfAnotherDevice:
                // The cookie of eve's session carried to a device that is paired itself.
                var cookies = new CookieContainer();
                await _desk.SignedInAsync("eve", cookies, Enum.GetValues<Role>());
                var others = new CookieContainer();
                var other = await _desk.PairedAsync("another", others);
                others.Add(_desk.Network, cookies.GetCookies(_desk.Network)[SessionCookie.CookieName]!);
                return (other, []);
            case Visitor.AtTheMachine:
                return (_desk.AtTheMachine(), Enum.GetValues<Act>());
            default:
                var role = Enum.Parse<Role>(visitor.ToString());
                return (await _desk.SignedInAsync("eve", role), [.. AccessTable.Of(role)]);
        }
    }
}
