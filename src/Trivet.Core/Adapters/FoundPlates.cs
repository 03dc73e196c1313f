using System.Collections.Immutable;

namespace Trivet.Adapters;

/// <summary>The plates of one cell as they are found, each searched once, when first asked for. For one thread.</summary>
public sealed class FoundPlates
{
    private readonly Dictionary<string, ImmutableArray<AdapterPlate>> _chosen = new(StringComparer.Ordinal);

    /// <summary>The plates to be made of one description; empty where none works as stated.</summary>
    public ImmutableArray<AdapterPlate> Chosen(AdapterInput input) =>
        _chosen.TryGetValue(input.Id, out var found) ? found : _chosen[input.Id] = PlateSearch.Solve(input).Chosen;
}
