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
/// Gives each signal a channel that suits it and changes as few as can be of those already given. First who keeps a channel: of several on one, the first. Then each of
/// the rest by the cheapest way through the banks: into one with a free channel, or one by one moving another signal on (successive shortest paths of a flow
/// with cost 1 for each signal that leaves its channel), which places as many as can be, and where all have a place changes the fewest.
/// </summary>
public static class ChannelPlan
{
    /// <param name="channels">Of each bank.</param>
    public static ImmutableArray<ChannelPlace> Of(ImmutableArray<ChannelWish> wishes, ImmutableArray<int> channels)
    {
        var bank = new int[wishes.Length];
        var keeps = new bool[wishes.Length];
        var taken = new HashSet<(int, int)>();
        int[] free = [.. channels];
        for (int i = 0; i < wishes.Length; i++)
        {
            var w = wishes[i];
            keeps[i] = w.Bank >= 0 && w.Banks.Contains(w.Bank) && w.Channel >= 0 && w.Channel < channels[w.Bank] && taken.Add((w.Bank, w.Channel));
            bank[i] = keeps[i] ? w.Bank : -1;
            if (keeps[i]) free[w.Bank]--;
        }
        for (int i = 0; i < wishes.Length; i++)
            if (!keeps[i]) Place(i, wishes, bank, keeps, free);

        // Who stays in its bank keeps its channel; the rest take the lowest that are free.
        var places = new ChannelPlace[wishes.Length];
        taken.Clear();
        Array.Fill(places, new(-1, -1));
        foreach (bool first in (ReadOnlySpan<bool>)[true, false])
            for (int i = 0; i < wishes.Length; i++)
            {
                var w = wishes[i];
                if (keeps[i] != first || bank[i] < 0 || bank[i] != w.Bank || w.Channel < 0 || w.Channel >= channels[w.Bank] || !taken.Add((w.Bank, w.Channel))) continue;
                places[i] = new(w.Bank, w.Channel);
            }
        for (int i = 0; i < wishes.Length; i++)
        {
            if (bank[i] < 0 || places[i].Bank >= 0) continue;
            int channel = 0;
            while (!taken.Add((bank[i], channel))) channel++;
            places[i] = new(bank[i], channel);
        }
        return [.. places];
    }

    private static void Place(int wish, ImmutableArray<ChannelWish> wishes, int[] bank, bool[] keeps, int[] free)
    {
        int n = free.Length;
        var cost = new double[n];
        var from = new int[n];
        var moved = new int[n];
        Array.Fill(cost, double.PositiveInfinity);
        foreach (int b in wishes[wish].Banks) (cost[b], from[b], moved[b]) = (0, -1, wish);
        // Bellman and Ford: n rounds, since no signal that moves back home makes a way cheaper without end.
        for (int round = 0; round < n; round++)
            for (int i = 0; i < wishes.Length; i++)
            {
                int here = bank[i];
                if (here < 0 || double.IsInfinity(cost[here])) continue;
                foreach (int there in wishes[i].Banks)
                {
                    if (there == here) continue;
                    double step = cost[here] + Changed(i, there) - Changed(i, here);
                    if (step < cost[there]) (cost[there], from[there], moved[there]) = (step, here, i);
                }
            }
        int end = -1;
        for (int b = 0; b < n; b++)
            if (free[b] > 0 && (end < 0 || cost[b] < cost[end]) && !double.IsInfinity(cost[b])) end = b;
        if (end < 0) return;
        free[end]--;
        for (int b = end; b >= 0; b = from[b]) bank[moved[b]] = b;

        int Changed(int i, int to) => keeps[i] && wishes[i].Bank != to ? 1 : 0;
    }
}
