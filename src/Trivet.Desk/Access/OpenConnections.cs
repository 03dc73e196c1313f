using System.Collections.Concurrent;
using System.Security.Claims;
using Microsoft.AspNetCore.Http;
using Trivet.Store;

namespace Trivet.Desk.Access;

/// <summary>
/// Connections from the network that stay open: pages of the desk, and listeners of the floor. A cookie is looked at when a connection begins, so these are
/// looked at again while they last, and are cut when their person or device may not come in any more: at once where this desk ended it,
/// within <see cref="BetweenLooks"/> where another one over the same database did.
/// </summary>
internal sealed class OpenConnections(JobStore store, TimeProvider clock)
{
    public static readonly TimeSpan BetweenLooks = TimeSpan.FromSeconds(5);

    private readonly ConcurrentDictionary<HttpContext, ClaimsPrincipal> _open = new();

    public async Task HoldAsync(HttpContext context, Func<Task> next)
    {
        var who = context.User;
        if (Known.DeviceOf(who).Length == 0)
        {
            await next();
            return;
        }

        using var done = CancellationTokenSource.CreateLinkedTokenSource(context.RequestAborted);
        _open[context] = who;
        try
        {
            // Whoever was ended between the look at the cookie and now.
            var looking = LookAsync(context, who, done.Token);
            await next();
            await done.CancelAsync();
            await looking;
        }
        finally
        {
            _open.TryRemove(context, out _);
        }
    }

    /// <summary>Cuts every connection of a person or a device, whichever is given.</summary>
    public void End(string? person = null, string? device = null)
    {
        foreach (var (context, who) in _open)
            if (Known.PersonOf(who) == person || Known.DeviceOf(who) == device) context.Abort();
    }

    private async Task LookAsync(HttpContext context, ClaimsPrincipal who, CancellationToken done)
    {
        try
        {
            while (await store.StandingAsync(Known.PersonOf(who), Known.DeviceOf(who), done) is { } person && StandingRoles.SameAs(person, who))
                await Task.Delay(BetweenLooks, clock, done);
            context.Abort();
        }
        catch (OperationCanceledException)
        {
            // The connection ended by itself.
        }
        catch (StoreFailedException)
        {
            // Nobody can be looked up: nobody stays.
            context.Abort();
        }
    }
}

/// <summary>Roles as the store has them: words.</summary>
internal static class StandingRoles
{
    public static IEnumerable<Role> Of(Member person) =>
        person.Roles.Select(word => Enum.TryParse(word, ignoreCase: true, out Role role) && Enum.IsDefined(role) ? (Role?)role : null).OfType<Role>();

    public static string Word(Role role) => role.ToString().ToLowerInvariant();

    public static bool SameAs(Member person, ClaimsPrincipal who) => Of(person).Order().SequenceEqual(Known.RolesOf(who).Order());
}
