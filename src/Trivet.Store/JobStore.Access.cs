using System.Collections.Immutable;
using Microsoft.EntityFrameworkCore;
using Trivet.Store.Rows;

namespace Trivet.Store;

public sealed partial class JobStore
{
    /// <summary>Wrong PINs in a row that are free; each one from then on locks the person out for <see cref="LockOut"/>.</summary>
    public const int FreeAttempts = 5;

    public static readonly TimeSpan LockOut = TimeSpan.FromMinutes(15);

    /// <summary>All persons of the job by id, those who have left as well.</summary>
    public Task<ImmutableArray<Member>> PersonsAsync(CancellationToken stop = default) => RunAsync(async (context, stop) =>
        (await context.Persons.AsNoTracking().ToListAsync(stop)).OrderBy(p => p.Id, StringComparer.Ordinal).Select(PersonOf).ToImmutableArray(), stop);

    /// <summary>All devices of the job, the newest first, revoked ones as well.</summary>
    public Task<ImmutableArray<Device>> DevicesAsync(CancellationToken stop = default) => RunAsync(async (context, stop) =>
        (await context.Devices.AsNoTracking().OrderByDescending(d => d.Ticks).ToListAsync(stop)).Select(DeviceOf).ToImmutableArray(), stop);

    /// <summary>Adds a person. The PIN comes hashed; the store never sees it.</summary>
    public Task<AccessOutcome> AddPersonAsync(string id, string name, IEnumerable<string> roles, string pinHash, DateTimeOffset when, CancellationToken stop = default)
    {
        if ((Inputs.OfPersonId(id) ?? Inputs.OfName(name)) is { } no) return Task.FromResult<AccessOutcome>(new AccessOutcome.Refused(no.Problem, no.Remedy));
        return RunAsync<AccessOutcome>(async (context, stop) =>
        {
            await using var transaction = await context.Database.BeginTransactionAsync(stop);
            if (await context.Persons.AnyAsync(p => p.Id == id, stop)) return new AccessOutcome.Taken();
            context.Persons.Add(new PersonRow { Id = id, Name = name, Roles = RolesText(roles), PinHash = pinHash, Ticks = when.UtcTicks });
            try
            {
                await context.SaveChangesAsync(stop);
                await transaction.CommitAsync(stop);
            }
            catch (DbUpdateException e) when (e.InnerException is Npgsql.PostgresException { SqlState: Npgsql.PostgresErrorCodes.UniqueViolation })
            {
                // PostgreSQL lets two look at once; the second is refused when it writes.
                return new AccessOutcome.Taken();
            }
            return new AccessOutcome.Kept();
        }, stop);
    }

    public Task<AccessOutcome> SetRolesAsync(string person, IEnumerable<string> roles, CancellationToken stop = default)
    {
        string text = RolesText(roles);
        return ChangePersonAsync(person, rows => rows.ExecuteUpdateAsync(s => s.SetProperty(p => p.Roles, text), stop), stop);
    }

    /// <summary>A new PIN; a person who was locked out is let in again.</summary>
    public Task<AccessOutcome> SetPinAsync(string person, string pinHash, CancellationToken stop = default) => ChangePersonAsync(person, rows => rows.ExecuteUpdateAsync(
        s => s.SetProperty(p => p.PinHash, pinHash).SetProperty(p => p.Failures, 0).SetProperty(p => p.LockedUntil, 0L), stop), stop);

    /// <summary>Takes a person off the job. The id stays theirs; the name is forgotten where that is asked for.</summary>
    public Task<AccessOutcome> EndPersonAsync(string person, bool forgetName, DateTimeOffset when, CancellationToken stop = default) => ChangePersonAsync(person, rows => rows.ExecuteUpdateAsync(
        s => s.SetProperty(p => p.Ended, (long?)when.UtcTicks).SetProperty(p => p.PinHash, "").SetProperty(p => p.Name, p => forgetName ? "" : p.Name), stop), stop);

    /// <summary>
    /// Counts an attempt before the PIN is looked at, in one statement: however many come at once, no more than the free ones are let through.
    /// </summary>
    public Task<PinAttempt> TryPinAsync(string person, DateTimeOffset now, CancellationToken stop = default) => RunAsync<PinAttempt>(async (context, stop) =>
    {
        long ticks = now.UtcTicks, until = (now + LockOut).UtcTicks;
        int counted = await context.Persons.Where(p => p.Id == person && p.Ended == null && p.LockedUntil <= ticks).ExecuteUpdateAsync(
            s => s.SetProperty(p => p.Failures, p => p.Failures + 1).SetProperty(p => p.LockedUntil, p => p.Failures + 1 >= FreeAttempts ? until : 0L), stop);
        if (await context.Persons.AsNoTracking().SingleOrDefaultAsync(p => p.Id == person && p.Ended == null, stop) is not { } row) return new PinAttempt.NoSuchPerson();
        return counted == 1 ? new PinAttempt.Allowed(row.PinHash, PersonOf(row)) : new PinAttempt.Locked(Moment(row.LockedUntil));
    }, stop);

    /// <summary>The attempt counted last was right: earlier wrong ones are forgotten.</summary>
    public Task PinWasRightAsync(string person, CancellationToken stop = default) => RunAsync((context, stop) =>
        context.Persons.Where(p => p.Id == person).ExecuteUpdateAsync(s => s.SetProperty(p => p.Failures, 0).SetProperty(p => p.LockedUntil, 0L), stop), stop);

    /// <summary>Keeps a device that has just been paired; of its key only the hash.</summary>
    public Task<AccessOutcome> AddDeviceAsync(Device device, string keyHash, CancellationToken stop = default)
    {
        if ((Inputs.OfName(device.Name) ?? Inputs.OfPerson(device.By)) is { } no) return Task.FromResult<AccessOutcome>(new AccessOutcome.Refused(no.Problem, no.Remedy));
        return RunAsync<AccessOutcome>(async (context, stop) =>
        {
            context.Devices.Add(new DeviceRow { Id = device.Id, Name = device.Name, KeyHash = keyHash, PairedBy = device.By, Ticks = device.Since.UtcTicks });
            await context.SaveChangesAsync(stop);
            return new AccessOutcome.Kept();
        }, stop);
    }

    public Task<AccessOutcome> EndDeviceAsync(string device, DateTimeOffset when, CancellationToken stop = default) => RunAsync<AccessOutcome>(async (context, stop) =>
        await context.Devices.Where(d => d.Id == device && d.Ended == null).ExecuteUpdateAsync(s => s.SetProperty(d => d.Ended, (long?)when.UtcTicks), stop) == 1
            ? new AccessOutcome.Kept()
            : new AccessOutcome.NotFound(), stop);

    /// <summary>A device that may come in, with the hash of its key; null where there is none.</summary>
    public Task<(Device Device, string KeyHash)?> DeviceKeyAsync(string device, CancellationToken stop = default) => RunAsync<(Device, string)?>(async (context, stop) =>
        await context.Devices.AsNoTracking().SingleOrDefaultAsync(d => d.Id == device && d.Ended == null, stop) is { } row ? (DeviceOf(row), row.KeyHash) : null, stop);

    /// <summary>The person as of now, if both person and device still may come in; else null.</summary>
    public Task<Member?> StandingAsync(string person, string device, CancellationToken stop = default) => RunAsync(async (context, stop) =>
        await context.Persons.AsNoTracking().SingleOrDefaultAsync(p => p.Id == person && p.Ended == null && context.Devices.Any(d => d.Id == device && d.Ended == null), stop) is { } row
            ? PersonOf(row)
            : null, stop);

    private Task<AccessOutcome> ChangePersonAsync(string person, Func<IQueryable<PersonRow>, Task<int>> change, CancellationToken stop) => RunAsync<AccessOutcome>(async (context, _) =>
        await change(context.Persons.Where(p => p.Id == person && p.Ended == null)) == 1 ? new AccessOutcome.Kept() : new AccessOutcome.NotFound(), stop);

    private static string RolesText(IEnumerable<string> roles) => string.Join(' ', roles.Order(StringComparer.Ordinal).Distinct());

    private static DateTimeOffset Moment(long ticks) => new(ticks, TimeSpan.Zero);

    private static Member PersonOf(PersonRow row) => new(row.Id, row.Name, [.. row.Roles.Split(' ', StringSplitOptions.RemoveEmptyEntries)], row.Failures,
        row.LockedUntil > 0 ? Moment(row.LockedUntil) : null, Moment(row.Ticks), row.Ended is { } ended ? Moment(ended) : null);

    private static Device DeviceOf(DeviceRow row) => new(row.Id, row.Name, row.PairedBy, Moment(row.Ticks), row.Ended is { } ended ? Moment(ended) : null);
}
