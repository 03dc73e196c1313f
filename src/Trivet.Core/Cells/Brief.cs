using System.Collections.Immutable;

namespace Trivet.Cells;

/// <summary>What the customer asked for.</summary>
public sealed record Brief
{
    public string? Customer { get; init; }
    public string? Note { get; init; }
    public ImmutableSortedDictionary<string, Part> Parts { get; init; } = Keyed.Empty<Part>();
    /// <summary>Parts per second over a shift.</summary>
    public double? MeanRate { get; init; }
    /// <summary>Parts per second over the worst minute.</summary>
    public double? PeakRate { get; init; }
    /// <summary>Running time per year, seconds.</summary>
    public double? HoursPerYear { get; init; }
    /// <summary>Longest run without a pause in which the motors cool down, as a shift, seconds; without end where not stated.</summary>
    public double? Shift { get; init; }
    /// <summary>Floor area the cell may take: width, depth, height, metres.</summary>
    public Extent Area { get; init; } = new();
    public ImmutableSortedDictionary<string, Requirement> Requirements { get; init; } = Keyed.Empty<Requirement>();
    public ImmutableSortedDictionary<string, OpenQuestion> OpenQuestions { get; init; } = Keyed.Empty<OpenQuestion>();
}

/// <summary>Width along x, depth along y, height along z, metres, of the frame the owner names.</summary>
public sealed record Extent
{
    public string? Note { get; init; }
    public double? Width { get; init; }
    public double? Depth { get; init; }
    public double? Height { get; init; }
}

/// <summary>A kind of part that is picked and placed.</summary>
public sealed record Part : IOrdered
{
    public int? Order { get; init; }
    public string? Name { get; init; }
    public string? Note { get; init; }
    /// <summary>Mass, kilograms.</summary>
    public double? Mass { get; init; }
    public Extent Size { get; init; } = new();
    public string? Surface { get; init; }
    /// <summary>State of the surface that is gripped: it decides the friction.</summary>
    public SurfaceState? State { get; init; }
}

/// <summary>State of a surface, as far as friction goes.</summary>
public enum SurfaceState
{
    Dry,
    Wet,
    Oily,
    /// <summary>Plastic film over something softer.</summary>
    Film,
}

/// <summary>How a promise is proven.</summary>
public enum Proof
{
    Calculation,
    Measurement,
    Run,
    Inspection,
    Document,
}

/// <summary>One line of the brief: a number, its tolerance, relative to what, how it is proven and who owns it.</summary>
public sealed record Requirement : IOrdered
{
    public int? Order { get; init; }
    public string? Text { get; init; }
    public string? Note { get; init; }
    /// <summary>Allowed deviation of place, metres (half width).</summary>
    public double? Tolerance { get; init; }
    /// <summary>What the tolerance is relative to: the nest, the part's edge, the tray's corner.</summary>
    public string? RelativeTo { get; init; }
    public Proof? ProvenBy { get; init; }
    public string? Owner { get; init; }
}

/// <summary>Something nobody has answered yet.</summary>
public sealed record OpenQuestion : IOrdered
{
    public int? Order { get; init; }
    public string? Text { get; init; }
    public string? Note { get; init; }
    public string? Owner { get; init; }
    /// <summary>The answer, once there is one: the question is then closed.</summary>
    public string? Answer { get; init; }
}
