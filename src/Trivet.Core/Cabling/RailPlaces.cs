using System.Collections.Immutable;
using Trivet.Cabinets;
using Trivet.Cells;
using Trivet.Findings;

namespace Trivet.Cabling;

/// <summary>
/// Where the modules stand along the rail, and the length of a cable from one to another: down to the duct, along it from middle to middle, up again, and its slack.
/// </summary>
/// <param name="Middles">Metres from the left end of the first module; not a number behind one whose width is not stated.</param>
public sealed record RailPlaces(ImmutableDictionary<string, double> Middles, Reading Used)
{
    /// <summary>Common practice, no source: from a module's terminals to the duct, and in reserve.</summary>
    public const double UsualDrop = 0.1, UsualSlack = 0.1;

    public static RailPlaces Read(Cell cell)
    {
        var reading = new Reading();
        var rail = RailCase.Read(cell, reading);
        foreach (var m in rail.Modules) reading.Used(m.At + "/width", cell.Cabinet.Modules[m.Id].Width);
        var begins = rail.Begins();
        return new(rail.Modules.Select((m, i) => KeyValuePair.Create(m.Id, begins[i] + m.Width / 2)).ToImmutableDictionary(), reading);
    }

    /// <summary>Null where the places of both do not follow.</summary>
    public CableRoute? Between(Cell cell, string id, Reading reading)
    {
        var cable = cell.Cables[id];
        reading.Used(Used);
        reading.Used($"/cables/{id}/from", cable.From);
        reading.Used($"/cables/{id}/to", cable.To);
        double along = Math.Abs(Middles.GetValueOrDefault(cable.From ?? "", double.NaN) - Middles.GetValueOrDefault(cable.To ?? "", double.NaN));
        double drop = reading.Or(cell.Cabling.DuctDrop, "/cabling/ductDrop", UsualDrop), slack = reading.Or(cable.Slack, $"/cables/{id}/slack", UsualSlack);
        return double.IsNaN(along) ? null : new(0, 0, 0, along + 2 * drop, slack);
    }
}
