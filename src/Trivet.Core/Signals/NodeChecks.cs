using System.Collections.Immutable;
using Trivet.Cells;
using Trivet.Findings;

namespace Trivet.Signals;

/// <summary>Holds the stated objects of a bus device against what every one has.</summary>
internal static class NodeChecks
{
    /// <summary>CiA 301, from memory: device type, error register, identity with the maker's number.</summary>
    private static readonly ImmutableArray<(int Index, int? SubIndex)> Mandatory = [(0x1000, null), (0x1001, null), (0x1018, 1)];

    /// <summary>Bits of the static data types [CiA301], in the order of <see cref="ObjectType"/>; a text has none.</summary>
    private static readonly ImmutableArray<int> Bits = [1, 8, 16, 32, 8, 16, 32, 32, 0];

    /// <summary>Each signal that states its object: the module's bus device has it, its bit is one of it, and no other signal has the same.</summary>
    public static IEnumerable<Finding> Mapped(Cell cell)
    {
        var mapped = cell.Io.Signals.InOrder().Where(s => s.Value.ObjectIndex is not null).Select(s => (s.Key, Place: PlaceOf(s.Value))).ToArray();
        if (mapped.Length == 0) yield break;
        var shared = new Reading();
        shared.Used("/io/signals", string.Join('\n', cell.Io.Signals.Keys));
        foreach (var (id, s) in cell.Io.Signals)
        {
            shared.Used($"/io/signals/{id}/objectIndex", s.ObjectIndex);
            shared.Used($"/io/signals/{id}/subIndex", s.SubIndex);
            shared.Used($"/io/signals/{id}/bit", s.Bit);
            shared.Used($"/io/signals/{id}/bank", s.Bank);
            shared.Used($"/io/signals/{id}/order", s.Order);
        }
        foreach (var (bank, b) in cell.Io.Banks) shared.Used($"/io/banks/{bank}/module", b.Module);
        shared.Used("/io/nodes", string.Join('\n', cell.Io.Nodes.Keys));
        foreach (var (id, node) in cell.Io.Nodes) shared.Used($"/io/nodes/{id}/module", node.Module);
        foreach (var (id, place) in mapped)
        {
            var reading = new Reading(shared);
            string at = $"/io/signals/{id}";
            var wrong = ImmutableArray.CreateBuilder<string>();
            wrong.AddRange(mapped.Where(m => m.Key != id && m.Place == place && place.Module is not null).Select(m => $"/io/signals/{m.Key}/bit"));
            var (key, node) = cell.Io.Nodes.InOrder().FirstOrDefault(n => n.Value.Module is { } module && module == place.Module);
            if (node is { Objects.IsEmpty: false })
            {
                reading.Used($"/io/nodes/{key}/objects", string.Join('\n', node.Objects.Keys));
                foreach (var (entry, o) in node.Objects)
                {
                    reading.Used($"/io/nodes/{key}/objects/{entry}/index", o.Index);
                    reading.Used($"/io/nodes/{key}/objects/{entry}/subIndex", o.SubIndex);
                    reading.Used($"/io/nodes/{key}/objects/{entry}/type", o.Type);
                }
                var (held, found) = node.Objects.InOrder().FirstOrDefault(o => o.Value.Index == place.Index && (o.Value.SubIndex ?? 0) == place.SubIndex);
                if (found is null) wrong.Add($"/io/nodes/{key}/objects");
                else if (place.Bit is { } bit && (bit < 0 || bit >= Bits[(int)(found.Type ?? ObjectType.Unsigned32)])) wrong.Add($"/io/nodes/{key}/objects/{held}/type");
            }
            yield return new YesNo(SignalRules.Mapped, new(at), reading.Inputs, wrong.Count == 0, wrong.Count == 0 ? [at + "/objectIndex"] : [at + "/objectIndex", .. wrong]);
        }

        (string? Module, int Index, int SubIndex, int? Bit) PlaceOf(Signal s) =>
            (s.Bank is { } bank ? cell.Io.Banks.GetValueOrDefault(bank)?.Module : null, s.ObjectIndex!.Value, s.SubIndex ?? 0, s.Bit);
    }

    public static IEnumerable<Finding> Of(Cell cell, string id)
    {
        var node = cell.Io.Nodes[id];
        string at = $"/io/nodes/{id}";
        foreach (var (entry, o) in node.Objects.InOrder())
        {
            if (o.Index is < 0x1000 or > 0xFFFF) yield return Wrong($"{at}/objects/{entry}/index");
            if (o.SubIndex is < 0 or > 254) yield return Wrong($"{at}/objects/{entry}/subIndex");
        }
        var reading = new Reading();
        reading.Used(at + "/objects", string.Join('\n', node.Objects.Keys));
        foreach (var (entry, o) in node.Objects)
        {
            reading.Used($"{at}/objects/{entry}/index", o.Index);
            reading.Used($"{at}/objects/{entry}/subIndex", o.SubIndex);
        }
        var twice = node.Objects.Where(o => o.Value.Index is not null).ToLookup(o => (o.Value.Index, o.Value.SubIndex), o => $"{at}/objects/{o.Key}/index").Where(g => g.Count() > 1).SelectMany(g => g).ToArray();
        bool whole = Mandatory.All(m => node.Objects.Values.Any(o => o.Index == m.Index && o.SubIndex == m.SubIndex));
        ImmutableArray<string> evidence = [.. whole ? [] : new[] { at + "/objects" }, .. twice];
        yield return new YesNo(SignalRules.Objects, new(at), reading.Inputs, evidence.IsEmpty, evidence.IsEmpty ? [at + "/objects"] : evidence);

        static Unjudged Wrong(string pointer) => new(SignalRules.Described, new(pointer), [pointer], OpenReason.Failed, [], SignalReasons.NoSuchObject);
    }
}
