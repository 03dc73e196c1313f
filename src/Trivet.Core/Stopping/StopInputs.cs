using System.Collections.Immutable;
using Trivet.Cells;
using Trivet.Findings;

namespace Trivet.Stopping;

/// <summary>Where a channel ends.</summary>
/// <param name="At">Pointer of the channel.</param>
/// <param name="Bank">Id of the bank; null where it ends at a device in words.</param>
/// <param name="Device">Those words; null where it ends at a bank or nowhere.</param>
/// <param name="Safety">Whether that is made for safety functions; not stated counts as no.</param>
/// <param name="SafetyAt">Pointer of the field that says so.</param>
public sealed record ChannelEnd(string At, string? Bank, string? Device, bool Safety, string SafetyAt);

/// <summary>Reads safety functions.</summary>
public static class StopInputs
{
    public const string At = "/stopping", FunctionsAt = At + "/functions", GuardingAt = "/guarding";

    public static string PointerOf(string function) => $"{FunctionsAt}/{function}";

    /// <summary>Kinds that bring the cell to rest.</summary>
    public static bool Stops(SafetyKind? kind) => kind is SafetyKind.EmergencyStop or SafetyKind.GuardInterlock or SafetyKind.ProtectiveDevice or SafetyKind.EnablingDevice;

    /// <summary>Kinds that stay tripped until somebody resets them by hand (ISO 13849-1, 5.2.2, from memory).</summary>
    public static bool IsReset(SafetyKind? kind) => kind is SafetyKind.EmergencyStop or SafetyKind.GuardInterlock or SafetyKind.ProtectiveDevice;

    /// <summary>Ids, commas between.</summary>
    public static ImmutableArray<string> Guards(SafetyFunction function) =>
        function.Guards is { } text ? [.. text.Split(',', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries)] : [];

    /// <summary>Where the channels end, those that end nowhere as at an unknown device.</summary>
    public static ImmutableArray<ChannelEnd> Ends(Cell cell, string function, Reading reading)
    {
        string of = PointerOf(function) + "/channels";
        var channels = cell.Stopping.Functions[function].Channels;
        reading.Used(of, string.Join('\n', channels.Keys));
        var ends = ImmutableArray.CreateBuilder<ChannelEnd>();
        foreach (var (id, channel) in channels.InOrder())
        {
            string at = $"{of}/{id}";
            reading.Used(at + "/order", channel.Order);
            reading.Used(at + "/signal", channel.Signal);
            reading.Used(at + "/device", channel.Device);
            reading.Used(at + "/safety", channel.Safety);
            if (channel.Signal is { } signal && cell.Io.Signals.TryGetValue(signal, out var s))
            {
                reading.Used($"/io/signals/{signal}/bank", s.Bank);
                if (s.Bank is { } bank && cell.Io.Banks.TryGetValue(bank, out var b))
                {
                    string field = $"/io/banks/{bank}/safety";
                    reading.Used(field, b.Safety);
                    ends.Add(new(at, bank, null, b.Safety == true, field));
                    continue;
                }
            }
            ends.Add(new(at, null, channel.Device, channel.Device is not null && channel.Safety == true, at + "/safety"));
        }
        return ends.ToImmutable();
    }

    /// <summary>The level that the risk graph asks for; null while the risk is not estimated.</summary>
    public static PerformanceLevel? Required(SafetyFunction function, string at, Reading reading)
    {
        reading.Need(function.Risk.Severity, at + "/risk/severity", RiskSeverity.S1);
        reading.Need(function.Risk.Exposure, at + "/risk/exposure", RiskExposure.F1);
        reading.Need(function.Risk.Avoidance, at + "/risk/avoidance", RiskAvoidance.P1);
        return RiskGraph.Required(function.Risk);
    }

    /// <summary>What the cell states that asks for a function: pointer of the guard or device, its id, and the kind. An emergency stop stands for itself.</summary>
    public static ImmutableArray<(string Pointer, string? Guard, SafetyKind Kind)> Asked(Cell cell, Reading reading)
    {
        var asked = ImmutableArray.CreateBuilder<(string, string?, SafetyKind)>();
        asked.Add((At, null, SafetyKind.EmergencyStop));
        reading.Used(GuardingAt + "/fences", string.Join('\n', cell.Guarding.Fences.Keys));
        reading.Used(GuardingAt + "/devices", string.Join('\n', cell.Guarding.Devices.Keys));
        foreach (var (id, fence) in cell.Guarding.Fences.InOrder())
        {
            reading.Used($"{GuardingAt}/fences/{id}/opens", fence.Opens);
            if (fence.Opens == true) asked.Add(($"{GuardingAt}/fences/{id}", id, SafetyKind.GuardInterlock));
        }
        foreach (var (id, device) in cell.Guarding.Devices.InOrder())
        {
            reading.Used($"{GuardingAt}/devices/{id}/muted", device.Muted);
            asked.Add(($"{GuardingAt}/devices/{id}", id, SafetyKind.ProtectiveDevice));
            if (device.Muted == true) asked.Add(($"{GuardingAt}/devices/{id}", id, SafetyKind.Muting));
        }
        return asked.ToImmutable();
    }
}
