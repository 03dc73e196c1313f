using System.Collections.Immutable;

namespace Trivet.Signals;

/// <summary>A signal that wants a channel.</summary>
/// <param name="Banks">Those that suit it, by their place in the list of banks.</param>
/// <param name="Bank">Where it is now; −1 where nowhere or where nothing suits.</param>
/// <param name="Channel">Counted from 0 within the bank; not used where it is nowhere.</param>
public readonly record struct ChannelWish(ImmutableArray<int> Banks, int Bank, int Channel);

/// <summary>Where a signal goes; −1 for both where no channel is left.</summary>
public readonly record struct ChannelPlace(int Bank, int Channel);

/// <summary>
/// Gives each signal a channel that suits it and changes as few as can be of those already given: the assignment problem, solved exactly by shortest
/// augmenting paths (Kuhn and Munkres, n² times channels). First as many signals as can be have a place, then the fewest change; of equals, an earlier signal
/// keeps its channel before a later one, and the rest take the lowest channels.
/// </summary>
public static class ChannelPlan
{
    // Each rank outweighs all that can gather below it: some thousand signals on as many channels.
    private const long Unplaced = 1_000_000_000_000_000, Changed = 10_000_000_000;

    /// <param name="channels">Of each bank.</param>
    public static ImmutableArray<ChannelPlace> Of(ImmutableArray<ChannelWish> wishes, ImmutableArray<int> channels)
    {
        ChannelPlace[] all = [.. channels.SelectMany((count, bank) => Enumerable.Range(0, count).Select(c => new ChannelPlace(bank, c)))];
        int n = wishes.Length;
        // Behind the channels a column for each signal that stands for none.
        int[] columns = Assign(n, all.Length + n, (i, k) =>
            k >= all.Length ? Unplaced
            : !wishes[i].Banks.Contains(all[k].Bank) ? 2 * Unplaced
            : all[k] == new ChannelPlace(wishes[i].Bank, wishes[i].Channel) ? 0
            : Changed + (long)k * (n + 1) + (n - i));
        return [.. columns.Select(k => k < all.Length ? all[k] : new(-1, -1))];
    }

    /// <summary>The column of each row at the least sum of costs; no fewer columns than rows.</summary>
    private static int[] Assign(int rows, int columns, Func<int, int, long> cost)
    {
        // Potentials of rows u and columns v; row and column 0 are outside, as usual for this method.
        var (u, v) = (new long[rows + 1], new long[columns + 1]);
        int[] rowOf = new int[columns + 1], before = new int[columns + 1];
        for (int row = 1; row <= rows; row++)
        {
            rowOf[0] = row;
            int at = 0;
            var least = new long[columns + 1];
            var used = new bool[columns + 1];
            Array.Fill(least, long.MaxValue);
            do
            {
                used[at] = true;
                int here = rowOf[at], next = 0;
                long step = long.MaxValue;
                for (int k = 1; k <= columns; k++)
                {
                    if (used[k]) continue;
                    long reduced = cost(here - 1, k - 1) - u[here] - v[k];
                    if (reduced < least[k]) (least[k], before[k]) = (reduced, at);
                    if (least[k] < step) (step, next) = (least[k], k);
                }
                for (int k = 0; k <= columns; k++)
                {
                    if (used[k])
                    {
                        u[rowOf[k]] += step;
                        v[k] -= step;
                    }
                    else if (k > 0)
                    {
                        least[k] -= step;
                    }
                }
                at = next;
            }
            while (rowOf[at] != 0);
            for (; at != 0; at = before[at]) rowOf[at] = rowOf[before[at]];
        }

        int[] columnOf = new int[rows];
        for (int k = 1; k <= columns; k++)
            if (rowOf[k] > 0) columnOf[rowOf[k] - 1] = k - 1;
        return columnOf;
    }
}
