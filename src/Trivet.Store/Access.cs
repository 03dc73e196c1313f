using System.Collections.Immutable;

namespace Trivet.Store;

/// <summary>Someone who works on a job from the network. Journal and revisions know the id alone; the name may be forgotten.</summary>
/// <param name="Id">Never given twice in a job, also not when the person has left.</param>
/// <param name="Name">As shown; empty where it was forgotten.</param>
/// <param name="Roles">Words, sorted; what they allow is no matter of the store.</param>
/// <param name="Failures">Wrong PINs since the last right one.</param>
/// <param name="LockedUntil">Until when no PIN is looked at; null where the person is not locked out.</param>
/// <param name="Ended">When the person was taken off the job; null while on it.</param>
public sealed record Member(
    string Id, string Name, ImmutableArray<string> Roles, int Failures, DateTimeOffset? LockedUntil, DateTimeOffset Since, DateTimeOffset? Ended);

/// <summary>A device that was paired: the browser of a tablet or another computer.</summary>
/// <param name="By">Id of the person who showed it the code.</param>
/// <param name="Ended">When it was revoked; null while it may come in.</param>
public sealed record Device(string Id, string Name, string By, DateTimeOffset Since, DateTimeOffset? Ended);

/// <summary>How a change of persons or devices ended. Closed.</summary>
public abstract record AccessOutcome
{
    private AccessOutcome() { }

    public sealed record Kept : AccessOutcome;

    /// <summary>The id is or was somebody else's.</summary>
    public sealed record Taken : AccessOutcome;

    /// <summary>There is no such person or device, or not any more.</summary>
    public sealed record NotFound : AccessOutcome;

    public sealed record Refused(string Problem, string Remedy) : AccessOutcome;
}

/// <summary>Whether a PIN may be tried now. Closed.</summary>
public abstract record PinAttempt
{
    private PinAttempt() { }

    /// <summary>It may, and has been counted as wrong until <see cref="JobStore.PinWasRightAsync"/> says otherwise.</summary>
    public sealed record Allowed(string PinHash, Member Person) : PinAttempt;

    public sealed record Locked(DateTimeOffset Until) : PinAttempt;

    public sealed record NoSuchPerson : PinAttempt;
}
