using System.Collections.Concurrent;
using Microsoft.AspNetCore.Authentication;
using Microsoft.AspNetCore.Authentication.Cookies;

namespace Trivet.Desk.Access;

/// <summary>
/// The sessions of persons who signed in, in memory: the cookie carries a random key and nothing else. They end with the program, so nothing of them
/// and no key that protects them is written to disk. Safe for concurrent use.
/// </summary>
internal sealed class Sessions(TimeProvider clock) : ITicketStore
{
    /// <summary>More than a site has tablets; the one that would end first makes room.</summary>
    private const int Most = 500;

    private readonly ConcurrentDictionary<string, AuthenticationTicket> _open = new(StringComparer.Ordinal);

    public Task<string> StoreAsync(AuthenticationTicket ticket)
    {
        var now = clock.GetUtcNow();
        foreach (var (old, held) in _open)
            if (held.Properties.ExpiresUtc <= now) _open.TryRemove(old, out _);
        if (_open.Count >= Most) _open.TryRemove(_open.MinBy(s => s.Value.Properties.ExpiresUtc ?? now).Key, out _);
        string key = Secrets.Key();
        _open[key] = ticket;
        return Task.FromResult(key);
    }

    public Task RenewAsync(string key, AuthenticationTicket ticket)
    {
        // One that was ended in the meantime stays ended.
        if (_open.TryGetValue(key, out var held)) _open.TryUpdate(key, ticket, held);
        return Task.CompletedTask;
    }

    public Task<AuthenticationTicket?> RetrieveAsync(string key) => Task.FromResult(_open.GetValueOrDefault(key));

    public Task RemoveAsync(string key)
    {
        _open.TryRemove(key, out _);
        return Task.CompletedTask;
    }

    /// <summary>Ends every session of a person or a device, whichever is given.</summary>
    public void End(string? person = null, string? device = null)
    {
        foreach (var (key, ticket) in _open)
            if (Known.PersonOf(ticket.Principal) == person || Known.DeviceOf(ticket.Principal) == device) _open.TryRemove(key, out _);
    }
}
