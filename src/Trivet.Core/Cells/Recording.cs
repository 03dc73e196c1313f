using System.Collections.Immutable;

namespace Trivet.Cells;

/// <summary>How what happens at the machine is recorded: what a second person must let stand, and who may. Null asks for what is usual.</summary>
public sealed record Recording
{
    public string? Note { get; init; }
    /// <summary>A reading outside its limit, or an answer that is not the expected one; asked for where nothing is stated.</summary>
    public bool? ReleaseOutOfTolerance { get; init; }
    /// <summary>A machine that is not as planned; asked for where nothing is stated.</summary>
    public bool? ReleaseDiffers { get; init; }
    /// <summary>A step that can not be done; asked for where nothing is stated.</summary>
    public bool? ReleaseNotPossible { get; init; }
    /// <summary>A step that is done weakly; not asked for where nothing is stated, but at hold points always.</summary>
    public bool? ReleaseWeak { get; init; }
    /// <summary>Every hold point; not asked for where nothing is stated.</summary>
    public bool? ReleaseHoldPoints { get; init; }
    /// <summary>People by the ids they sign with; names stay outside.</summary>
    public ImmutableSortedDictionary<string, Person> People { get; init; } = Keyed.Empty<Person>();
}

public enum PersonRole
{
    Fitter,
    Electrician,
    Engineer,
    SafetyPerson,
    Customer,
}

/// <summary>Someone who writes in the journal.</summary>
public sealed record Person : IOrdered
{
    public int? Order { get; init; }
    public string? Note { get; init; }
    public PersonRole? Role { get; init; }
    /// <summary>May let stand, as a second person, what others wrote. Where no one is stated, any second person may.</summary>
    public bool? Releases { get; init; }
}
