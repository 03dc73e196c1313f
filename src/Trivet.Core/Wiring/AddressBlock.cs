using System.Collections.Immutable;
using Trivet.Cells;

namespace Trivet.Wiring;

/// <summary>The addresses that a class may use: first, first + stride, … as far as last. A stride below zero counts downwards.</summary>
public readonly record struct AddressBlock(int First, int Stride, int Last)
{
    /// <summary>How many addresses there are; zero where the block is empty or upside down.</summary>
    public int Count => Stride != 0 && Math.Sign(Stride) * Math.Sign((long)Last - First) >= 0 ? (Last - First) / Stride + 1 : 0;

    public int At(int index) => First + Stride * index;

    /// <summary>Which of them an address is; null where it is none.</summary>
    public int? IndexOf(int address) =>
        Count > 0 && (address - First) % Stride == 0 && (address - First) / Stride is var index && index >= 0 && index < Count ? index : null;

    /// <summary>
    /// Addresses for modules in their order along the rail that obey the placing and change as few of those already set as can be. Null where there
    /// are more modules than addresses.
    /// <para>
    /// Any: of several that have one address the first keeps it. Rising: with k_i the index of a set address, those kept must leave room for the
    /// modules between them, so k_i − i must not fall along the rail; what is kept is a longest such subsequence, and what lies between
    /// follows its predecessor directly.
    /// </para>
    /// </summary>
    /// <param name="set">The addresses set now; null for one that has none.</param>
    public ImmutableArray<int>? Plan(ImmutableArray<int?> set, AddressPlacing placing)
    {
        if (set.Length > Count) return null;
        int spare = Count - set.Length;
        var index = new int?[set.Length];
        for (int i = 0; i < set.Length; i++) index[i] = set[i] is { } address ? IndexOf(address) : null;
        switch (placing)
        {
            case AddressPlacing.Any:
                Any(index);
                break;
            case AddressPlacing.Rising:
                Rising(index, spare);
                break;
            default:
                for (int i = 0; i < index.Length; i++) index[i] = i;
                break;
        }
        var block = this;
        return [.. index.Select(k => block.At(k!.Value))];
    }

    private static void Any(int?[] index)
    {
        var taken = new HashSet<int>();
        for (int i = 0; i < index.Length; i++)
            if (index[i] is { } k && !taken.Add(k)) index[i] = null;
        int free = 0;
        for (int i = 0; i < index.Length; i++)
        {
            if (index[i] is not null) continue;
            while (!taken.Add(free)) free++;
            index[i] = free;
        }
    }

    private static void Rising(int?[] index, int spare)
    {
        // Longest chain that ends at i, and its predecessor.
        int n = index.Length;
        int[] longest = new int[n], before = new int[n];
        int last = -1;
        for (int i = 0; i < n; i++)
        {
            before[i] = -1;
            if (index[i] is not { } k || k < i || k - i > spare) continue;
            longest[i] = 1;
            for (int j = 0; j < i; j++)
                if (longest[j] + 1 > longest[i] && index[j] - j <= k - i) (longest[i], before[i]) = (longest[j] + 1, j);
            if (last < 0 || longest[i] > longest[last]) last = i;
        }

        var kept = new bool[n];
        for (int i = last; i >= 0; i = before[i]) kept[i] = true;
        int skipped = 0;
        for (int i = 0; i < n; i++)
        {
            if (kept[i]) skipped = index[i]!.Value - i;
            else index[i] = i + skipped;
        }
    }
}
