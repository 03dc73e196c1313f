using System.Collections.Immutable;

namespace Trivet.Adapters;

/// <summary>The plates of one cell as they are found, each searched once, when first asked for. For one thread.</summary>
public sealed class FoundPlates
{
    private readonly Dictionary<string, AdapterResult> _found = new(StringComparer.Ordinal);

    /// <summary>The plates to be made of one description; empty where none works as stated.</summary>
    public ImmutableArray<AdapterPlate> Chosen(AdapterInput input) => Result(input).Chosen;

    /// <summary>How many plates a description comes to: those chosen, else the stack that was found in place of a single one; one where neither was.</summary>
    public int Pieces(AdapterInput input)
    {
        var result = Result(input);
        return Math.Max(1, result.Chosen.IsEmpty ? result.Stack.Length : result.Chosen.Length);
    }

    private AdapterResult Result(AdapterInput input) => _found.TryGetValue(input.Id, out var found) ? found : _found[input.Id] = PlateSearch.Solve(input);
}
