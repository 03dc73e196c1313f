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
        if (cell.Cabinet.Modules.Values.All(m => m.Sockets.IsEmpty)) yield break;
        var cables = new Reading();
        cables.Used("/cables", string.Join('\n', cell.Cables.Keys));
        var ends = new List<(string? Module, string? Socket, string At)>();
        foreach (var (id, cable) in cell.Cables)
        {
            Add(cable.From, cable.FromEnd, $"/cables/{id}/from");
            Add(cable.To, cable.ToEnd, $"/cables/{id}/to");
        }
        foreach (var (module, m) in cell.Cabinet.Modules.InOrder().Where(m => !m.Value.Sockets.IsEmpty))
        {
            var reading = new Reading(cables);
            Sockets(cell, module, reading);
            foreach (var (key, socket) in m.Sockets) reading.Used($"/cabinet/modules/{module}/sockets/{key}/gender", socket.Gender);
            var taken = ends.Where(e => e.Module == module && e.Socket is not null).ToLookup(e => Named(m, e.Socket!), e => e.At);
            foreach (var (key, socket) in m.Sockets.InOrder())
            {
                ImmutableArray<string> own = [.. taken[key]];
                if (socket.Gender == ContactGender.Terminals || own.IsEmpty) continue;
                yield return new YesNo(CablingRules.Socket, new($"/cabinet/modules/{module}/sockets/{key}"), reading.Inputs, own.Length == 1, own);
            }
        }

        void Add(string? module, CableEnd end, string at)
        {
            cables.Used(at, module);
            cables.Used(at + "End/socket", end.Socket);
            ends.Add((module, end.Socket, at + "End/socket"));
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
