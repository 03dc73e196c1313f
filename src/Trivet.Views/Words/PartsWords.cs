using System.Collections.Immutable;

namespace Trivet.Views.Words;

/// <summary>Texts of the parts list.</summary>
public sealed record PartsWords
{
    public required string Title { get; init; }
    /// <summary>In the order of <see cref="Listing.PartGroup"/>.</summary>
    public required ImmutableArray<string> Groups { get; init; }
    /// <summary>In the order of <see cref="Listing.PartKind"/>; the first, for what has a name, is empty.</summary>
    public required ImmutableArray<string> Kinds { get; init; }
    public required string HeadGroup { get; init; }
    public required string HeadName { get; init; }
    public required string HeadSizes { get; init; }
    public required string HeadQuantity { get; init; }
    public required string HeadSupplied { get; init; }
    public required string HeadSpares { get; init; }
    public required string HeadArticle { get; init; }
    public required string HeadNote { get; init; }
    public required string Bought { get; init; }
    public required string Made { get; init; }
    public required string NotSaid { get; init; }
    /// <summary>Behind a supply that is the usual one: "{supplied}, as usual".</summary>
    public required string Usual { get; init; }
    public required string Nothing { get; init; }
    // {lines} {pieces} {bought} {made}
    public required string Summary { get; init; }
}
