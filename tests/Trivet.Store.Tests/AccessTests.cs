namespace Trivet.Store.Tests;

public sealed class AccessTests(Databases databases)
{
    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Theory, OnBoth]
    public async Task A_person_is_kept_with_roles_and_leaves_with_or_without_the_name(Database database)
    {
        await using var job = await databases.NewJobAsync(database);
        var store = await job.OpenAsync();
        Assert.IsType<AccessOutcome.Kept>(await store.AddPersonAsync("eve", "Eve", ["record", "look"], "hash", Invented.Noon, Stop));
        Assert.IsType<AccessOutcome.Refused>(await store.AddPersonAsync("Eve!", "Eve", [], "hash", Invented.Noon, Stop));
        Assert.IsType<AccessOutcome.Refused>(await store.AddPersonAsync("dan", "\u0000", [], "hash", Invented.Noon, Stop));
        Assert.IsType<AccessOutcome.Kept>(await store.SetRolesAsync("eve", ["release"], Stop));
        var eve = Assert.Single(await store.PersonsAsync(Stop));
        Assert.Equal(("Eve", "release", 0, null, null), (eve.Name, Assert.Single(eve.Roles), eve.Failures, eve.LockedUntil, eve.Ended));

        Assert.IsType<AccessOutcome.Kept>(await store.EndPersonAsync("eve", forgetName: true, Invented.Noon.AddDays(1), Stop));
        eve = Assert.Single(await store.PersonsAsync(Stop));
        Assert.Equal(("", Invented.Noon.AddDays(1)), (eve.Name, eve.Ended));
        // The id stands in the journal and is nobody else's, ever; and whoever left does not come back by it.
        Assert.IsType<AccessOutcome.Taken>(await store.AddPersonAsync("eve", "Another", [], "hash", Invented.Noon, Stop));
        Assert.IsType<AccessOutcome.NotFound>(await store.SetPinAsync("eve", "hash", Stop));
        Assert.IsType<PinAttempt.NoSuchPerson>(await store.TryPinAsync("eve", Invented.Noon.AddDays(2), Stop));
    }

    [Theory, OnBoth]
    public async Task Of_two_who_take_one_id_at_once_one_gets_it(Database database)
    {
        await using var job = await databases.NewJobAsync(database);
        var store = await job.OpenAsync();
        var outcomes = await Task.WhenAll(Enumerable.Range(0, 8).Select(i => store.AddPersonAsync("eve", $"Eve {i}", [], "hash", Invented.Noon, Stop)));
        Assert.Single(outcomes.OfType<AccessOutcome.Kept>());
        Assert.Equal(7, outcomes.OfType<AccessOutcome.Taken>().Count());
    }

    [Theory, OnBoth]
    public async Task Attempts_are_counted_before_they_are_looked_at_however_many_come_at_once(Database database)
    {
        await using var job = await databases.NewJobAsync(database);
        var store = await job.OpenAsync();
        await store.AddPersonAsync("eve", "Eve", [], "hash", Invented.Noon, Stop);
        var attempts = await Task.WhenAll(Enumerable.Range(0, 30).Select(_ => store.TryPinAsync("eve", Invented.Noon, Stop)));
        Assert.Equal(JobStore.FreeAttempts, attempts.OfType<PinAttempt.Allowed>().Count());
        Assert.All(attempts.OfType<PinAttempt.Locked>(), l => Assert.Equal(Invented.Noon + JobStore.LockOut, l.Until));

        // After the lock one more may be tried, and locks again; a right one clears the count.
        var later = Invented.Noon + JobStore.LockOut;
        Assert.IsType<PinAttempt.Allowed>(await store.TryPinAsync("eve", later, Stop));
        Assert.Equal(later + JobStore.LockOut, Assert.IsType<PinAttempt.Locked>(await store.TryPinAsync("eve", later, Stop)).Until);
        await store.PinWasRightAsync("eve", Stop);
        for (int i = 0; i < JobStore.FreeAttempts; i++) Assert.IsType<PinAttempt.Allowed>(await store.TryPinAsync("eve", later, Stop));
        Assert.IsType<PinAttempt.Locked>(await store.TryPinAsync("eve", later, Stop));
        // A lock outlives the program.
        Assert.IsType<PinAttempt.Locked>(await (await job.OpenAsync()).TryPinAsync("eve", later, Stop));
        Assert.IsType<AccessOutcome.Kept>(await store.SetPinAsync("eve", "other", Stop));
        Assert.Equal("other", Assert.IsType<PinAttempt.Allowed>(await store.TryPinAsync("eve", later, Stop)).PinHash);
    }

    [Theory, OnBoth]
    public async Task A_standing_needs_both_person_and_device(Database database)
    {
        await using var job = await databases.NewJobAsync(database);
        var store = await job.OpenAsync();
        await store.AddPersonAsync("eve", "Eve", ["look"], "hash", Invented.Noon, Stop);
        await store.AddDeviceAsync(new("d1", "tablet", "ada", Invented.Noon, null), "key", Stop);
        await store.AddDeviceAsync(new("d2", "laptop", "ada", Invented.Noon.AddHours(1), null), "key 2", Stop);
        Assert.Equal("eve", (await store.StandingAsync("eve", "d1", Stop))?.Id);
        Assert.Equal("key", (await store.DeviceKeyAsync("d1", Stop))?.KeyHash);
        Assert.Null(await store.StandingAsync("eve", "d3", Stop));
        Assert.Null(await store.StandingAsync("dan", "d1", Stop));
        Assert.IsType<AccessOutcome.Kept>(await store.EndDeviceAsync("d1", Invented.Noon, Stop));
        Assert.IsType<AccessOutcome.NotFound>(await store.EndDeviceAsync("d1", Invented.Noon, Stop));
        Assert.Null(await store.StandingAsync("eve", "d1", Stop));
        Assert.Null(await store.DeviceKeyAsync("d1", Stop));
        Assert.NotNull(await store.StandingAsync("eve", "d2", Stop));
        Assert.Equal(["d2", "d1"], (await store.DevicesAsync(Stop)).Select(d => d.Id));
    }
}
