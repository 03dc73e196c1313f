using System.Collections.Immutable;
using Trivet.Cells;
using Trivet.Findings;

namespace Trivet.Cabling;

/// <summary>An end of a cable.</summary>
public readonly record struct CableEndAt(string Cable, bool AtFrom)
{
    public string At => $"/cables/{Cable}/{(AtFrom ? "fromEnd" : "toEnd")}";
}

/// <summary>Ends whose connectors fit each other's sockets at one face, of cables of which no two serve the same: whoever plugs them in may take one for another.</summary>
/// <param name="Face">The cabinet, empty; a device's id; or the word that several devices share.</param>
/// <param name="Form">Connector, coding, gender and contacts.</param>
public sealed record SwapGroup(string Face, string Form, ImmutableArray<CableEndAt> Ends);

/// <summary>Finds what fits each other and must not be swapped.</summary>
public static class SwapGroups
{
    public static ImmutableArray<SwapGroup> Of(Cell cell, Reading reading)
    {
        reading.Used("/cables", string.Join('\n', cell.Cables.Keys));
        var ends = new List<(string Face, string Form, CableEndAt End)>();
        foreach (var (id, cable) in cell.Cables.InOrder())
        {
            reading.Used($"/cables/{id}/order", cable.Order);
            Add(id, true, cable.FromEnd, cable.From);
            Add(id, false, cable.ToEnd, cable.To);
        }
        return
        [
            .. ends.GroupBy(e => (e.Face, e.Form)).Where(g => g.Select(e => Function(e.End.Cable)).Distinct().Count() > 1)
                .Select(g => new SwapGroup(g.Key.Face, g.Key.Form, [.. g.Select(e => e.End)])),
        ];

        void Add(string id, bool atFrom, CableEnd end, string? to)
        {
            string at = new CableEndAt(id, atFrom).At;
            reading.Used(at + "/connector", end.Connector);
            reading.Used(at + "/coding", end.Coding);
            reading.Used(at + "/gender", end.Gender);
            reading.Used(at + "/contacts", end.Contacts);
            reading.Used($"/cables/{id}/{(atFrom ? "from" : "to")}", to);
            // Bare ends fit everywhere; they are told apart by the terminals' numbers.
            if (end.Connector is not { } connector || end.Gender == ContactGender.Terminals || to is null) return;
            if (FaceOf(to) is { } face) ends.Add((face, Form(connector, end), new(id, atFrom)));
        }

        // The pieces of one network may change places; every other cable serves something of its own.
        string Function(string id)
        {
            reading.Used($"/cables/{id}/kind", cell.Cables[id].Kind);
            return cell.Cables[id].Kind == CableKind.Network ? "" : id;
        }

        string? FaceOf(string place)
        {
            if (cell.Cabinet.Modules.ContainsKey(place)) return "";
            if (!cell.Cabling.Devices.TryGetValue(place, out var device)) return null;
            reading.Used($"/cabling/devices/{place}/face", device.Face);
            return device.Face ?? place;
        }

        static string Form(string connector, CableEnd end) => string.Join(' ', new[]
        {
            connector.Trim(), end.Coding?.Trim() ?? "", end.Gender is { } g ? g == ContactGender.Pins ? "♂" : "♀" : "",
            end.Contacts is { } n ? n.ToString(System.Globalization.CultureInfo.InvariantCulture) : "",
        }.Where(p => p.Length > 0));
    }
}
