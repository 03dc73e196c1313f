using System.Collections.Immutable;
using System.Net;
using Microsoft.AspNetCore.Connections.Features;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Server.Kestrel.Core;
using Microsoft.Extensions.Primitives;

namespace Trivet.Desk.Network;

/// <summary>
/// The desk has two doors: the loopback addresses of its own machine, and, where it was asked for, the network. A connection is marked where it
/// arrives; one without the mark is from the network, so a door that is forgotten is closed, not open.
/// </summary>
internal static class Doors
{
    private static readonly object Machine = new();
    private static readonly ImmutableArray<string> MachineHosts = ["localhost", "127.0.0.1", "::1"];

    /// <summary>Marks what comes in here as coming from the machine itself.</summary>
    public static void AtTheMachine(ListenOptions listen) => listen.Use(next => connection =>
    {
        connection.Items[Machine] = true;
        return next(connection);
    });

    public static bool IsAtTheMachine(this HttpContext context) =>
        context.Features.Get<IConnectionItemsFeature>()?.Items.ContainsKey(Machine) == true;

    /// <summary>Each door answers to its own names only: a site that points a name of its own at this machine gets nothing.</summary>
    /// <param name="names">The names of the network's door at this moment.</param>
    public static Func<HttpContext, Func<Task>, Task> HostCheck(Func<ImmutableArray<string>> names) => (context, next) =>
    {
        var known = context.IsAtTheMachine() ? MachineHosts : names();
        if (HostString.MatchesAny(context.Request.Host.Host, [.. known.Select(PatternOf)])) return next();
        context.Response.StatusCode = StatusCodes.Status400BadRequest;
        return Task.CompletedTask;
    };

    /// <summary>As it stands in an address: version 6 in brackets.</summary>
    public static string InAddress(string host) => IPAddress.TryParse(host, out var address) && address.AddressFamily == System.Net.Sockets.AddressFamily.InterNetworkV6 ? $"[{host}]" : host;

    private static StringSegment PatternOf(string host) => InAddress(host);
}
