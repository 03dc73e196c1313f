using System.Collections.Immutable;

namespace Trivet.Cells;

/// <summary>The cabinet: modules in order along the rail. The electrical trade fills this section.</summary>
public sealed record Cabinet
{
    public string? Note { get; init; }
    public string? Bus { get; init; }
    public ImmutableSortedDictionary<string, Module> Modules { get; init; } = Keyed.Empty<Module>();
}

public sealed record Module : IOrdered
{
    public int? Order { get; init; }
    public string? Name { get; init; }
    public string? Note { get; init; }
    /// <summary>What it does: supply, controller, axis, inputs, outputs — the user's own words.</summary>
    public string? Role { get; init; }
    /// <summary>Chain id, "rotary" or "linear", for a module that drives an axis.</summary>
    public string? Drives { get; init; }
    public double? Width { get; init; }
    public int? Address { get; init; }
    /// <summary>Current from the control supply, amperes.</summary>
    public double? ControlCurrent { get; init; }
}

public sealed record Cable : IOrdered
{
    public int? Order { get; init; }
    public string? Name { get; init; }
    public string? Note { get; init; }
    public string? From { get; init; }
    public string? To { get; init; }
    public double? Length { get; init; }
}
