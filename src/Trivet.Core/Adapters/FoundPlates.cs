using System.Collections.Concurrent;
using System.Collections.Immutable;
using Trivet.Findings;

namespace Trivet.Adapters;

/// <summary>
/// Plates as they are found, each searched once, when first asked for: what plates, joints and the parts list share while a cell is assessed, and one
/// assessment with the next. Safe to ask from several threads.
/// </summary>
public sealed class FoundPlates
{
    // A result lists all plates that work, some hundred; after this many the memory starts afresh.
    private const int MostRemembered = 64;

    private readonly ConcurrentDictionary<ReadKey, Lazy<AdapterResult>> _found = new();

    public AdapterResult Of(AdapterInput input)
    {
        if (_found.Count > MostRemembered) _found.Clear();
        return _found.GetOrAdd(input.From, _ => new(() => PlateSearch.Solve(input))).Value;
    }

    /// <summary>The plates to be made of one description; empty where none works as stated.</summary>
    public ImmutableArray<AdapterPlate> Chosen(AdapterInput input) => Of(input).Chosen;

    /// <summary>How many plates a description comes to: those chosen, else the stack that was found in place of a single one; one where neither was.</summary>
    public int Pieces(AdapterInput input)
    {
        var result = Of(input);
        return Math.Max(1, result.Chosen.IsEmpty ? result.Stack.Length : result.Chosen.Length);
    }
}
