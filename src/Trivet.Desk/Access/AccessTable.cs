using System.Collections.Immutable;
using System.Security.Claims;

namespace Trivet.Desk.Access;

/// <summary>What a person may be trusted with. A person has one or more.</summary>
public enum Role
{
    /// <summary>Sees the floor page and its bundles.</summary>
    Look,
    /// <summary>Adds to the journal what was done and measured.</summary>
    Record,
    /// <summary>Signs.</summary>
    Release,
    /// <summary>Works with the desk's own sheets: cells, drafts, revisions.</summary>
    Design,
}

/// <summary>What can be done.</summary>
public enum Act
{
    SeeFloor,
    AddEntries,
    Sign,
    UseDesk,
    /// <summary>Pairs and revokes devices, adds persons, gives roles.</summary>
    ManageAccess,
}

/// <summary>One endpoint: its method, its route, and what is asked of whoever comes; null is open to everyone who reaches the door.</summary>
public sealed record Gate(string Method, string Route, Act? Needs);

/// <summary>
/// Who may do what: the one table that the endpoints are made from and the tests are generated from. What is not named here needs
/// <see cref="Act.UseDesk"/>, so a page or an endpoint that is forgotten is closed to all but designers.
/// </summary>
public static class AccessTable
{
    /// <summary>Open, and harmless: what it gives is public in Trivet's own source, or is given before anyone can be known.</summary>
    public static ImmutableArray<Gate> Open { get; } =
    [
        FloorFiles, RootCertificate, Me, SignIn, SignOut,
        .. Pages("/certificate", "/pair", "/sign-in", "/refused", "/error", "/not-found"),
    ];

    /// <summary>What needs something other than the right to use the desk's sheets.</summary>
    public static ImmutableArray<Gate> Guarded { get; } =
    [
        FloorBundle, Cells, Bundle, AddEntries, EntriesAfter, AddPhotograph, Journal, Photograph, Live,
        new("GET", "/access", Act.ManageAccess), new("POST", "/access", Act.ManageAccess),
    ];

    // Gates by name, where a handler is put behind them.
    public static Gate FloorFiles => new("GET", "/floor/{**path}", null);
    public static Gate RootCertificate => new("GET", "/certificate/" + Network.LocalRoot.PublicFile, null);
    public static Gate FloorBundle => new("GET", "/floor/bundles/{cell}.json", Act.SeeFloor);
    public static Gate Me => new("GET", FloorApi.Root + "/me", null);
    public static Gate SignIn => new("POST", FloorApi.Root + "/sign-in", null);
    public static Gate SignOut => new("POST", FloorApi.Root + "/sign-out", null);
    public static Gate Cells => new("GET", FloorApi.Root + "/cells", Act.SeeFloor);
    public static Gate Bundle => new("GET", FloorApi.Root + "/bundles/{cell}", Act.SeeFloor);

    public static Gate Journal => new("GET", "/journal/journal.jsonl", Act.UseDesk);
    public static Gate Photograph => new("GET", "/journal/photographs/{hash}.jpg", Act.UseDesk);
    public static Gate AddEntries => new("POST", FloorApi.Root + "/entries", Act.AddEntries);
    public static Gate EntriesAfter => new("GET", FloorApi.Root + "/entries", Act.SeeFloor);
    public static Gate AddPhotograph => new("PUT", FloorApi.Root + "/photographs/{hash}", Act.AddEntries);
    /// <summary>Says where a device is, and asks where the others are.</summary>
    public static Gate Live => new("POST", FloorApi.Root + "/live/{cell}", Act.SeeFloor);

    private static IEnumerable<Gate> Pages(params string[] routes) => routes.SelectMany(r => new Gate[] { new("GET", r, null), new("POST", r, null) });

    public static ImmutableHashSet<Act> Of(Role role) => role switch
    {
        Role.Look => [Act.SeeFloor],
        Role.Record => [Act.SeeFloor, Act.AddEntries],
        Role.Release => [Act.SeeFloor, Act.AddEntries, Act.Sign],
        Role.Design => [Act.SeeFloor, Act.UseDesk],
        _ => throw new ArgumentOutOfRangeException(nameof(role)),
    };

    /// <summary>Whoever sits at the machine that the desk runs on may do everything; managing access is theirs alone.</summary>
    public static ImmutableHashSet<Act> AtTheMachine { get; } = [.. Enum.GetValues<Act>()];

    public static bool Allows(ClaimsPrincipal who, Act act) =>
        Known.IsAtTheMachine(who) ? AtTheMachine.Contains(act) : Known.RolesOf(who).Any(role => Of(role).Contains(act));
}
