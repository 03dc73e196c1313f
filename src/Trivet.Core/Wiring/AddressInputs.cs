using System.Collections.Immutable;
using Trivet.Cells;
using Trivet.Findings;

namespace Trivet.Wiring;

/// <summary>A module that has, or should have, an address.</summary>
/// <param name="Set">The address stated for it; null where none is.</param>
public sealed record AddressedModule(string Id, int? Set)
{
    public string At => $"/cabinet/modules/{Id}";
}

/// <summary>A class of addresses with its modules, in their order along the rail.</summary>
/// <param name="Range">Name of the space in which addresses are told apart; empty for the bus itself.</param>
/// <param name="Switches">How an address is set by hand; null for software.</param>
public sealed record AddressedClass(
    string Id, AddressBlock Block, AddressPlacing Placing, string Range, AddressSwitches? Switches, ImmutableArray<AddressedModule> Modules, ImmutableArray<string> Inputs)
{
    public string At => $"/cabinet/addressClasses/{Id}";

    /// <summary>What each module's address should be, with the fewest changes; null where the block is too small.</summary>
    public ImmutableArray<int>? Plan => Block.Plan([.. Modules.Select(m => m.Set)], Placing);
}

/// <summary>Reads who gets which kind of address.</summary>
public static class AddressInputs
{
    /// <summary>Classes that have modules, in their order; a class that lacks something is listed as missing in the reading and left out.</summary>
    public static ImmutableArray<AddressedClass> Read(Cell cell, Reading reading)
    {
        var classes = ImmutableArray.CreateBuilder<AddressedClass>();
        reading.Used("/cabinet/addressClasses", string.Join('\n', cell.Cabinet.AddressClasses.Keys));
        reading.Used("/cabinet/modules", string.Join('\n', cell.Cabinet.Modules.Keys));
        foreach (var (id, stated) in cell.Cabinet.AddressClasses.InOrder())
        {
            var own = new Reading();
            string at = $"/cabinet/addressClasses/{id}";
            own.Used(at + "/order", stated.Order);
            var members = ImmutableArray.CreateBuilder<AddressedModule>();
            foreach (var (module, m) in cell.Cabinet.Modules.InOrder())
            {
                own.Used($"/cabinet/modules/{module}/addressClass", m.AddressClass);
                own.Used($"/cabinet/modules/{module}/order", m.Order);
                if (m.AddressClass != id) continue;
                own.Used($"/cabinet/modules/{module}/address", m.Address);
                members.Add(new(module, m.Address));
            }
            var block = new AddressBlock(own.Need(stated.First, at + "/first", 0), own.Or(stated.Stride, at + "/stride", 1), own.Need(stated.Last, at + "/last", 0));
            var placing = own.Or(stated.Placing, at + "/placing", AddressPlacing.Any);
            own.Used(at + "/range", stated.Range);
            var switches = AddressSwitches.Read(stated, at, own);
            foreach (string missing in own.MissingFields) reading.Missing(missing);
            reading.Used(own);
            if (own.Complete && members.Count > 0)
                classes.Add(new(id, block, placing, stated.Range ?? "", switches, members.ToImmutable(), own.Inputs));
        }
        return classes.ToImmutable();
    }
}

/// <summary>Switches by which a module is told its address.</summary>
/// <param name="Count">Rotary switches, the most significant first; or levers, the least significant first.</param>
/// <param name="Positions">Of each: 2 for levers.</param>
/// <param name="ShownAtZero">What they show at address 0.</param>
public sealed record AddressSwitches(int Count, int Positions, int ShownAtZero)
{
    public bool Levers => Positions == 2;

    /// <summary>What each switch must read, in the order a person reads them; null where the address does not fit on them.</summary>
    public ImmutableArray<int>? For(int address)
    {
        long shown = (long)address + ShownAtZero;
        if (shown < 0 || Count is < 1 or > 32) return null;
        var digits = new int[Count];
        for (int i = Count - 1; i >= 0; i--, shown /= Positions) digits[i] = (int)(shown % Positions);
        if (shown > 0) return null;
        if (Levers) Array.Reverse(digits);
        return [.. digits];
    }

    /// <summary>Null where the address is set by software.</summary>
    internal static AddressSwitches? Read(AddressClass stated, string at, Reading reading)
    {
        var by = reading.Or(stated.SetBy, at + "/setBy", AddressSetting.Software);
        if (by == AddressSetting.Software) return null;
        int count = reading.Need(stated.Switches, at + "/switches", 0), zero = reading.Or(stated.ShownAtZero, at + "/shownAtZero", 0);
        return new(count, by == AddressSetting.DipSwitches ? 2 : reading.Or(stated.Positions, at + "/positions", 10), zero);
    }
}
