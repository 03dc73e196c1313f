using System.Collections.Immutable;
using Trivet.Cells;
using Trivet.Findings;

namespace Trivet.Signals;

/// <summary>A bank as far as channels are given out.</summary>
/// <param name="First">Number of its first channel.</param>
public sealed record BankCase(string Id, SignalDirection Direction, int First, int Channels, Switching? Switching)
{
    public string At => $"/io/banks/{Id}";
}

/// <summary>The signals with the channels that they have and should have.</summary>
/// <param name="Places">Bank and channel, counted from 0, in the order of the signals.</param>
public sealed record ChannelCase(ImmutableArray<BankCase> Banks, ImmutableArray<string> Signals, ImmutableArray<ChannelWish> Wishes, ImmutableArray<ChannelPlace> Places, ImmutableArray<string> Inputs)
{
    /// <summary>The channel that the plan has for a signal; null for none.</summary>
    public (string Bank, int Channel)? For(string signal)
    {
        int i = Signals.IndexOf(signal);
        return i < 0 || Places[i].Bank < 0 ? null : (Banks[Places[i].Bank].Id, Banks[Places[i].Bank].First + Places[i].Channel);
    }
}

/// <summary>Reads banks and signals.</summary>
public static class SignalInputs
{
    /// <summary>Banks and signals that lack something are left out; the reading lists what.</summary>
    public static ChannelCase Channels(Cell cell, Reading reading)
    {
        var plan = cell.Io;
        reading.Used("/io/banks", string.Join('\n', plan.Banks.Keys));
        reading.Used("/io/signals", string.Join('\n', plan.Signals.Keys));
        var banks = ImmutableArray.CreateBuilder<BankCase>();
        foreach (var (id, bank) in plan.Banks.InOrder())
        {
            string at = $"/io/banks/{id}";
            reading.Used(at + "/order", bank.Order);
            reading.Used(at + "/switching", bank.Switching);
            var direction = reading.Need(bank.Direction, at + "/direction", SignalDirection.Input);
            int channels = reading.Need(bank.Channels, at + "/channels", 0), first = reading.Or(bank.FirstChannel, at + "/firstChannel", 0);
            if (bank.Direction is not null && Possible(bank)) banks.Add(new(id, direction, first, channels, bank.Switching));
        }
        var signals = ImmutableArray.CreateBuilder<string>();
        var wishes = ImmutableArray.CreateBuilder<ChannelWish>();
        foreach (var (id, signal) in plan.Signals.InOrder())
        {
            string at = $"/io/signals/{id}";
            reading.Used(at + "/order", signal.Order);
            reading.Used(at + "/bank", signal.Bank);
            reading.Used(at + "/channel", signal.Channel);
            reading.Used(at + "/switching", signal.Switching);
            var direction = reading.Need(signal.Direction, at + "/direction", SignalDirection.Input);
            if (signal.Direction is null) continue;
            ImmutableArray<int> suits = [.. Enumerable.Range(0, banks.Count).Where(b => banks[b].Direction == direction && Suits(signal.Switching, banks[b].Switching))];
            int now = banks.FindIndex(b => b.Id == signal.Bank);
            signals.Add(id);
            wishes.Add(new(suits, signal.Channel is null ? -1 : now, now < 0 ? 0 : (int)Math.Clamp((long)(signal.Channel ?? 0) - banks[now].First, -1, int.MaxValue)));
        }
        var all = wishes.ToImmutable();
        return new(banks.ToImmutable(), signals.ToImmutable(), all, ChannelPlan.Of(all, [.. banks.Select(b => b.Channels)]), reading.Inputs);

        static bool Suits(Switching? signal, Switching? bank) => signal is null || bank is null || signal == bank;
    }

    /// <summary>More channels than any module has, or a first number beyond any count, are a slip of the pen.</summary>
    public static bool Possible(ChannelBank bank) => bank.Channels is >= 1 and <= 4096 && (bank.FirstChannel is null or (>= 0 and <= 65535));

    private static int FindIndex(this ImmutableArray<BankCase>.Builder banks, Func<BankCase, bool> wanted)
    {
        for (int i = 0; i < banks.Count; i++) if (wanted(banks[i])) return i;
        return -1;
    }
}
