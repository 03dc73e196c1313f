using System.Collections.Immutable;

namespace Trivet.Numerics.Sparse;

/// <summary>
/// Where a sum of patches can be other than zero once it is factored, and in which order its unknowns are eliminated. Unknowns go in groups (the
/// six of a node) that are eliminated together.
/// <para>
/// Order: at each step the group whose neighbours have the fewest unknowns (minimum degree; [Davis2006, 7.1], from memory): the nodes along a
/// bar go first and cost little, those where bars meet go last. Each group keeps a panel: its own rows, then those of its neighbours that are
/// eliminated later, all by its own columns.
/// </para>
/// </summary>
public sealed class Pattern
{
    private readonly int[] _first;
    private readonly int[] _groupOf;
    private readonly int[] _position;
    /// <summary>For each group its later neighbours, in their order of elimination.</summary>
    private readonly int[][] _later;
    /// <summary>For each group the row in its panel where each of those begins.</summary>
    private readonly int[][] _rowOf;

    /// <param name="groupSizes">Unknowns are numbered group by group.</param>
    /// <param name="patches">Only their unknowns count.</param>
    public Pattern(ReadOnlySpan<int> groupSizes, IReadOnlyList<ImmutableArray<int>> patches)
    {
        int groups = groupSizes.Length;
        _first = new int[groups + 1];
        for (int g = 0; g < groups; g++) _first[g + 1] = _first[g] + groupSizes[g];
        Unknowns = _first[groups];
        _groupOf = new int[Unknowns];
        for (int g = 0; g < groups; g++) _groupOf.AsSpan(_first[g], groupSizes[g]).Fill(g);

        (Order, _later) = Eliminate(Neighbours(patches));
        _position = new int[groups];
        for (int k = 0; k < groups; k++) _position[Order[k]] = k;
        _rowOf = new int[groups][];
        PanelStart = new int[groups];
        PanelRows = new int[groups][];
        int at = 0;
        for (int g = 0; g < groups; g++)
        {
            Array.Sort(_later[g], (a, b) => _position[a].CompareTo(_position[b]));
            _rowOf[g] = new int[_later[g].Length];
            int rows = Size(g);
            for (int i = 0; i < _later[g].Length; i++)
            {
                _rowOf[g][i] = rows;
                rows += Size(_later[g][i]);
            }

            PanelStart[g] = at;
            at += rows * Size(g);
            PanelRows[g] = [.. Enumerable.Range(_first[g], Size(g)), .. _later[g].SelectMany(h => Enumerable.Range(_first[h], Size(h)))];
        }

        Entries = at;
        Maps = [.. patches.Select(Map)];
    }

    public int Unknowns { get; }

    /// <summary>Numbers that a factor keeps.</summary>
    public int Entries { get; }

    internal int[] Order { get; }
    internal int[] PanelStart { get; }
    /// <summary>For each group the unknown of each row of its panel.</summary>
    internal int[][] PanelRows { get; }
    /// <summary>For each patch the entry of the panels that each of its values is added to; −1 for none.</summary>
    internal ImmutableArray<int[]> Maps { get; }

    internal int Size(int group) => _first[group + 1] - _first[group];

    internal int First(int group) => _first[group];

    internal ReadOnlySpan<int> Later(int group) => _later[group];

    /// <summary>Row in the panel of a group where its i-th later neighbour begins.</summary>
    internal int RowOf(int group, int i) => _rowOf[group][i];

    /// <summary>Row in the panel of a group where a later neighbour begins.</summary>
    internal int RowOfGroup(int group, int neighbour) => _rowOf[group][Array.IndexOf(_later[group], neighbour)];

    private HashSet<int>[] Neighbours(IReadOnlyList<ImmutableArray<int>> patches)
    {
        var next = new HashSet<int>[_first.Length - 1];
        for (int g = 0; g < next.Length; g++) next[g] = [];
        foreach (var patch in patches)
        {
            int[] met = [.. patch.Where(u => u >= 0).Select(u => _groupOf[u]).Distinct()];
            foreach (int g in met)
                foreach (int h in met)
                    if (g != h) next[g].Add(h);
        }

        return next;
    }

    private (int[] Order, int[][] Later) Eliminate(HashSet<int>[] next)
    {
        int groups = next.Length;
        int[] order = new int[groups], degree = new int[groups];
        var later = new int[groups][];
        var done = new bool[groups];
        for (int g = 0; g < groups; g++) degree[g] = next[g].Sum(Size);
        for (int k = 0; k < groups; k++)
        {
            int best = -1;
            for (int g = 0; g < groups; g++)
                if (!done[g] && (best < 0 || degree[g] < degree[best])) best = g;
            (order[k], done[best]) = (best, true);
            int[] around = [.. next[best]];
            later[best] = around;
            foreach (int g in around)
            {
                next[g].Remove(best);
                foreach (int h in around)
                    if (g != h) next[g].Add(h);
            }

            foreach (int g in around) degree[g] = next[g].Sum(Size);
        }

        return (order, later);
    }

    private int[] Map(ImmutableArray<int> unknowns)
    {
        int m = unknowns.Length;
        int[] map = new int[m * m];
        Array.Fill(map, -1);
        for (int p = 0; p < m; p++)
        {
            for (int q = 0; q < m; q++)
            {
                int row = unknowns[p], column = unknowns[q];
                if (row < 0 || column < 0) continue;
                int g = _groupOf[column], h = _groupOf[row];
                if (g == h ? row < column : _position[h] < _position[g]) continue;
                int panelRow = g == h ? row - _first[g] : RowOfGroup(g, h) + row - _first[h];
                map[p * m + q] = PanelStart[g] + panelRow * Size(g) + column - _first[g];
            }
        }

        return map;
    }
}
