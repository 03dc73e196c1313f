using System.Collections.Concurrent;
using System.Collections.Immutable;

namespace Trivet.Adapters;

/// <summary>
/// The plates of one cell as they are found, each searched once, when first asked for: what plates, joints and the parts list share while a cell is
/// assessed. Safe to ask from several threads.
/// </summary>
public sealed class FoundPlates
{
    private readonly ConcurrentDictionary<string, Lazy<AdapterResult>> _found = new(StringComparer.Ordinal);

    public AdapterResult Of(AdapterInput input) => _found.GetOrAdd(input.Id, _ => new(() => PlateSearch.Solve(input))).Value;

    /// <summary>The plates to be made of one description; empty where none works as stated.</summary>
    public ImmutableArray<AdapterPlate> Chosen(AdapterInput input) => Of(input).Chosen;

    /// <summary>How many plates a description comes to: those chosen, else the stack that was found in place of a single one; one where neither was.</summary>
    public int Pieces(AdapterInput input)
    {
        var result = Of(input);
        return Math.Max(1, result.Chosen.IsEmpty ? result.Stack.Length : result.Chosen.Length);
    }
}
