using System.Collections.Immutable;
using Trivet.Store;

namespace Trivet.Desk.Access;

/// <summary>What the person at the desk may change about others: in the store, and at once in what is open.</summary>
internal sealed class People(JobStore store, Sessions sessions, OpenConnections connections, TimeProvider clock)
{
    public Task<ImmutableArray<Member>> PersonsAsync() => store.PersonsAsync();

    public Task<ImmutableArray<Device>> DevicesAsync() => store.DevicesAsync();

    /// <returns>Null for a PIN that will not do.</returns>
    public async Task<AccessOutcome?> AddAsync(string id, string name, string pin, IEnumerable<Role> roles) => Pins.Fit(pin)
        ? await store.AddPersonAsync(id, name, roles.Select(StandingRoles.Word), Pins.Hash(id, pin), clock.GetUtcNow())
        : null;

    public async Task<AccessOutcome> SetRolesAsync(string person, IEnumerable<Role> roles)
    {
        var outcome = await store.SetRolesAsync(person, roles.Select(StandingRoles.Word));
        // The next request has the new roles; an open page has the old ones, so it is closed.
        connections.End(person: person);
        return outcome;
    }

    /// <returns>Null for a PIN that will not do.</returns>
    public async Task<AccessOutcome?> SetPinAsync(string person, string pin)
    {
        if (!Pins.Fit(pin)) return null;
        var outcome = await store.SetPinAsync(person, Pins.Hash(person, pin));
        Close(person: person);
        return outcome;
    }

    public async Task<AccessOutcome> EndPersonAsync(string person, bool forgetName)
    {
        var outcome = await store.EndPersonAsync(person, forgetName, clock.GetUtcNow());
        Close(person: person);
        return outcome;
    }

    public async Task<AccessOutcome> EndDeviceAsync(string device)
    {
        var outcome = await store.EndDeviceAsync(device, clock.GetUtcNow());
        Close(device: device);
        return outcome;
    }

    private void Close(string? person = null, string? device = null)
    {
        sessions.End(person, device);
        connections.End(person, device);
    }
}
