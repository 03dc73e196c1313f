using System.Collections.Immutable;
using Trivet.Cells;
using Trivet.Findings;

namespace Trivet.Cabling;

/// <summary>Holds the ends of cables against the sockets that modules state: whether the plug fits, and whether two want one socket.</summary>
internal static class SocketChecks
{
    /// <summary>For each end of a cable that goes to a module with sockets.</summary>
    public static IEnumerable<Finding?> Of(Cell cell, string id, ImmutableArray<NotApplicable>.Builder coverage, bool asked)
    {
        var cable = cell.Cables[id];
        foreach (bool from in new[] { true, false })
        {
            var end = from ? cable.FromEnd : cable.ToEnd;
            string at = new CableEndAt(id, from).At, place = $"/cables/{id}/{(from ? "from" : "to")}";
            if ((from ? cable.From : cable.To) is not { } module || !cell.Cabinet.Modules.TryGetValue(module, out var m) || m.Sockets.IsEmpty) continue;
            var reading = new Reading();
            reading.Used(place, module);
            Sockets(cell, module, reading);
            reading.Used(at + "/socket", end.Socket);
            if (end.Socket is not { } named)
            {
                reading.Missing(at + "/socket");
                yield return CableChecks.Open(CablingRules.Socket, at, reading, asked, coverage);
                continue;
            }
            if (Named(m, named) is not { } key)
            {
                yield return new YesNo(CablingRules.Socket, new(at), reading.Inputs, false, [at + "/socket", $"/cabinet/modules/{module}/sockets"]);
                continue;
            }
            var socket = m.Sockets[key];
            string on = $"/cabinet/modules/{module}/sockets/{key}";
            var wrong = ImmutableArray.CreateBuilder<string>();
            Same("connector", socket.Connector, end.Connector, (a, b) => a.Trim().Equals(b.Trim(), StringComparison.OrdinalIgnoreCase));
            Same("coding", socket.Coding, end.Coding, (a, b) => a.Trim().Equals(b.Trim(), StringComparison.OrdinalIgnoreCase));
            Same("contacts", socket.Contacts, end.Contacts, (a, b) => a == b);
            Same("gender", socket.Gender, end.Gender, (a, b) => a == ContactGender.Terminals ? b == ContactGender.Terminals : b != ContactGender.Terminals && a != b);
            yield return new YesNo(CablingRules.Socket, new(at), reading.Inputs, wrong.Count == 0, wrong.Count == 0 ? [at + "/socket"] : wrong.ToImmutable());

            void Same<T>(string field, T? stated, T? plug, Func<T, T, bool> fits)
            {
                reading.Used($"{on}/{field}", stated);
                reading.Used($"{at}/{field}", plug);
                // What one of the two does not state is not held against the other.
                if (stated is not { } a || plug is not { } b || fits(a, b)) return;
                wrong.Add($"{at}/{field}");
                wrong.Add($"{on}/{field}");
            }
        }
    }

    /// <summary>Sockets that two cables want; many wires go to a strip of terminals.</summary>
    public static IEnumerable<Finding> Shared(Cell cell)
    {
        foreach (var (module, m) in cell.Cabinet.Modules.InOrder().Where(m => !m.Value.Sockets.IsEmpty))
        {
            var reading = new Reading();
            Sockets(cell, module, reading);
            reading.Used("/cables", string.Join('\n', cell.Cables.Keys));
            var taken = new List<(string Key, string End)>();
            foreach (var (id, cable) in cell.Cables)
                foreach (bool from in new[] { true, false })
                {
                    reading.Used($"/cables/{id}/{(from ? "from" : "to")}", from ? cable.From : cable.To);
                    string at = new CableEndAt(id, from).At + "/socket";
                    var end = from ? cable.FromEnd : cable.ToEnd;
                    reading.Used(at, end.Socket);
                    if ((from ? cable.From : cable.To) == module && end.Socket is { } named && Named(m, named) is { } key) taken.Add((key, at));
                }
            foreach (var socket in m.Sockets.InOrder())
            {
                var own = new Reading(reading);
                string on = $"/cabinet/modules/{module}/sockets/{socket.Key}";
                own.Used(on + "/gender", socket.Value.Gender);
                ImmutableArray<string> ends = [.. taken.Where(t => t.Key == socket.Key).Select(t => t.End)];
                if (socket.Value.Gender == ContactGender.Terminals || ends.IsEmpty) continue;
                yield return new YesNo(CablingRules.Socket, new(on), own.Inputs, ends.Length == 1, ends);
            }
        }
    }

    private static void Sockets(Cell cell, string module, Reading reading)
    {
        var sockets = cell.Cabinet.Modules[module].Sockets;
        reading.Used($"/cabinet/modules/{module}/sockets", string.Join('\n', sockets.Keys));
        foreach (var (id, socket) in sockets)
        {
            reading.Used($"/cabinet/modules/{module}/sockets/{id}/name", socket.Name);
            reading.Used($"/cabinet/modules/{module}/sockets/{id}/order", socket.Order);
        }
    }

    /// <summary>Id of the socket that an end names; null where there is none.</summary>
    private static string? Named(Module module, string name) =>
        module.Sockets.InOrder().Where(s => (s.Value.Name ?? s.Key).Trim().Equals(name.Trim(), StringComparison.OrdinalIgnoreCase)).Select(s => s.Key).FirstOrDefault();
}
