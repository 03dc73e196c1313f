using System.Globalization;
using System.Text;
using Trivet.Cells;

namespace Trivet.Files.Exchange;

/// <summary>
/// The electronic data sheet of a CANopen device [CiA306] (layout from memory, not yet compared with the standard), from the objects that the cell states; nothing is added to them but what the layout asks for: the
/// number of sub-indices where it is not stated. Only the bit rate of the cell's bus is claimed.
/// </summary>
public static class EdsFile
{
    private static readonly int[] BitRates = [10, 20, 50, 125, 250, 500, 800, 1000];

    /// <summary>Numbers of the static data types [CiA301], in the order of <see cref="ObjectType"/>.</summary>
    private static readonly int[] Types = [1, 2, 3, 4, 5, 6, 7, 8, 9];

    private static readonly string[] Accesses = ["ro", "wo", "rw", "const"];

    public static string FileName(Cell cell, string node) => $"{cell.Io.Nodes[node].Module ?? node}.eds";

    /// <param name="made">When it was made.</param>
    public static string Of(Cell cell, string id, DateTime made)
    {
        var node = cell.Io.Nodes[id];
        var text = new StringBuilder();
        string time = made.ToString("hh:mmtt", CultureInfo.InvariantCulture), date = made.ToString("MM-dd-yyyy", CultureInfo.InvariantCulture);
        Open("FileInfo", ("FileName", FileName(cell, id)), ("FileVersion", "1"), ("FileRevision", "0"), ("EDSVersion", "4.0"), ("Description", node.Name ?? id), ("CreationTime", time), ("CreationDate", date),
            ("CreatedBy", "Trivet"), ("ModificationTime", time), ("ModificationDate", date), ("ModifiedBy", "Trivet"));
        var objects = node.Objects.InOrder().Select(o => o.Value).Where(o => o is { Index: >= 0x1000 and <= 0xFFFF, SubIndex: null or (>= 0 and <= 254) }).GroupBy(o => o.Index!.Value).OrderBy(g => g.Key).ToArray();
        Open("DeviceInfo",
        [
            ("VendorName", node.Vendor ?? ""), ("VendorNumber", Hex(node.VendorNumber ?? 0, 8)), ("ProductName", node.Product ?? ""), ("ProductNumber", Hex(node.ProductNumber ?? 0, 8)),
            ("RevisionNumber", Hex(node.Revision ?? 0, 8)), ("OrderCode", ""),
            .. BitRates.Select(r => ($"BaudRate_{r}", cell.Cabinet.Network.BitRate == 1000.0 * r ? "1" : "0")),
            ("SimpleBootUpMaster", "0"), ("SimpleBootUpSlave", "1"), ("Granularity", "8"), ("DynamicChannelsSupported", "0"), ("GroupMessaging", "0"),
            ("NrOfRXPDO", Count(0x1400, 0x15FF)), ("NrOfTXPDO", Count(0x1800, 0x19FF)), ("LSS_Supported", "0"),
        ]);
        Open("DummyUsage", [.. Enumerable.Range(1, 7).Select(n => ($"Dummy{n:X4}", "0"))]);
        Open("Comments", ("Lines", "0"));
        List("MandatoryObjects", i => i is 0x1000 or 0x1001 or 0x1018);
        List("OptionalObjects", i => i is not (0x1000 or 0x1001 or 0x1018) && i is < 0x2000 or >= 0x6000);
        List("ManufacturerObjects", i => i is >= 0x2000 and < 0x6000);
        foreach (var group in objects)
        {
            string index = group.Key.ToString("X4", CultureInfo.InvariantCulture);
            var subs = group.Where(o => o.SubIndex is not null).GroupBy(o => o.SubIndex!.Value).Select(g => g.First()).OrderBy(o => o.SubIndex).ToList();
            if (subs.Count == 0)
            {
                Value(index, group.First(), index);
                continue;
            }
            if (subs[0].SubIndex != 0)
                subs.Insert(0, new() { Name = "Number of entries", SubIndex = 0, Type = ObjectType.Unsigned8, Access = ObjectAccess.Constant, DefaultValue = subs[^1].SubIndex!.Value.ToString(CultureInfo.InvariantCulture) });
            // Its name is that of the entry without a sub-index; else what all its entries are called is unknown.
            Open(index, ("ParameterName", group.FirstOrDefault(o => o.SubIndex is null)?.Name ?? $"Object {index}h"), ("ObjectType", "0x9"), ("SubNumber", subs.Count.ToString(CultureInfo.InvariantCulture)));
            foreach (var sub in subs) Value($"{index}sub{sub.SubIndex:X}", sub, index);
        }
        return text.ToString();

        string Count(int from, int to) => objects.Count(g => g.Key >= from && g.Key <= to).ToString(CultureInfo.InvariantCulture);

        void Value(string section, ObjectEntry o, string index) => Open(section,
            ("ParameterName", o.Name ?? $"Object {index}h"), ("ObjectType", "0x7"), ("DataType", Hex(Types[(int)(o.Type ?? ObjectType.Unsigned32)], 4)), ("AccessType", Accesses[(int)(o.Access ?? ObjectAccess.ReadOnly)]),
            ("DefaultValue", o.DefaultValue ?? ""), ("PDOMapping", o.Mappable == true ? "1" : "0"));

        void List(string section, Func<int, bool> wanted)
        {
            int[] own = [.. objects.Select(g => g.Key).Where(wanted)];
            Open(section, [("SupportedObjects", own.Length.ToString(CultureInfo.InvariantCulture)), .. own.Select((k, i) => ((i + 1).ToString(CultureInfo.InvariantCulture), Hex(k, 4)))]);
        }

        void Open(string section, params ReadOnlySpan<(string Key, string Value)> entries)
        {
            text.Append(CultureInfo.InvariantCulture, $"[{section}]\r\n");
            foreach (var (key, value) in entries) text.Append(key).Append('=').Append(OneLine(value)).Append("\r\n");
            text.Append("\r\n");
        }
    }

    private static string Hex(int value, int digits) => "0x" + value.ToString("X" + digits, CultureInfo.InvariantCulture);

    /// <summary>A value ends with its line.</summary>
    private static string OneLine(string text) => string.Concat(text.Select(c => char.IsControl(c) ? ' ' : c)).Trim();
}
