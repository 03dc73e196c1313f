using System.Collections.Immutable;
using Trivet.Cells;
using Trivet.Findings;

namespace Trivet.Signals;

/// <summary>Holds the stated objects of a bus device against what every one has.</summary>
internal static class NodeChecks
{
    /// <summary>CiA 301, from memory: device type, error register, identity with the maker's number.</summary>
    private static readonly ImmutableArray<(int Index, int? SubIndex)> Mandatory = [(0x1000, null), (0x1001, null), (0x1018, 1)];

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
