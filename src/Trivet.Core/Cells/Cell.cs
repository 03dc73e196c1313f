using System.Collections.Immutable;

namespace Trivet.Cells;

/// <summary>How much of the description a job needs by now. Only what a depth needs is asked for.</summary>
public enum Depth
{
    Quote,
    Build,
    AsBuilt,
}

/// <summary>
/// The description of a cell as typed: an immutable value that may be incomplete. A quantity is SI or null where nothing was
/// stated; nothing here is derived or judged. Collections are keyed by a stable id, order is a field.
/// </summary>
public sealed record Cell
{
    public static Cell Empty { get; } = new();

    public string? Name { get; init; }
    public string? Note { get; init; }
    public Depth? Depth { get; init; }
    public Brief Brief { get; init; } = new();
    public Robot Robot { get; init; } = new();
    public ControllerMapping Controller { get; init; } = new();
    public Mount Mount { get; init; } = new();
    public ToolStack Tool { get; init; } = new();
    public Pneumatics Pneumatics { get; init; } = new();
    public Drives Drives { get; init; } = new();
    public MotionPlan Motion { get; init; } = new();
    public CellFrame Frame { get; init; } = new();
    public ImmutableSortedDictionary<string, Station> Stations { get; init; } = Keyed.Empty<Station>();
    public Cabinet Cabinet { get; init; } = new();
    public ImmutableSortedDictionary<string, Cable> Cables { get; init; } = Keyed.Empty<Cable>();
    public CablingPlan Cabling { get; init; } = new();
    public SignalPlan Io { get; init; } = new();
    public Handling Handling { get; init; } = new();
    public Guarding Guarding { get; init; } = new();
    public Recording Recording { get; init; } = new();
    public StopPlan Stopping { get; init; } = new();
    public ImmutableSortedDictionary<string, Hazard> Hazards { get; init; } = Keyed.Empty<Hazard>();
    public ImmutableSortedDictionary<string, ListedPart> PartsList { get; init; } = Keyed.Empty<ListedPart>();
    public ImmutableSortedDictionary<string, Interface> Interfaces { get; init; } = Keyed.Empty<Interface>();
    public ImmutableSortedDictionary<string, Material> Materials { get; init; } = Keyed.Empty<Material>();
    public ImmutableSortedDictionary<string, PlatePlan> Plates { get; init; } = Keyed.Empty<PlatePlan>();
    public ImmutableSortedDictionary<string, Joint> Joints { get; init; } = Keyed.Empty<Joint>();
}

/// <summary>Collections keyed by stable id, sorted by ordinal comparison so that every culture writes the same file.</summary>
public static class Keyed
{
    public static ImmutableSortedDictionary<string, T> Empty<T>() => ImmutableSortedDictionary.Create<string, T>(StringComparer.Ordinal);

    /// <summary>The entries in the order their order field says; equal orders fall back on the id.</summary>
    public static IEnumerable<KeyValuePair<string, T>> InOrder<T>(this ImmutableSortedDictionary<string, T> entries) where T : IOrdered =>
        entries.OrderBy(e => e.Value.Order ?? int.MaxValue).ThenBy(e => e.Key, StringComparer.Ordinal);
}

/// <summary>An entry of a keyed collection that states its place.</summary>
public interface IOrdered
{
    int? Order { get; }
}
