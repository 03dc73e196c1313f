using System.Collections.Immutable;
using System.Text.Json;
using Trivet.Journal;

namespace Trivet.Floor.Device;

/// <summary>Readings as the page kept them before it had a chain. They become entries that say so; nothing typed is lost.</summary>
public static class EarlierEntries
{
    /// <param name="entries">A JSON list of readings, as kept then.</param>
    /// <param name="bundle">The bundle kept then: it names cell and revision where a reading belongs to it.</param>
    /// <returns>Entries without their place in a chain; null where the text cannot be read and has to stay where it is.</returns>
    public static ImmutableArray<Entry>? Read(string entries, string? bundle, string device)
    {
        try
        {
            (string hash, string cell, string revision) = bundle is null ? ("", "", "") : BundleOf(bundle);
            using var list = JsonDocument.Parse(entries);
            return [.. list.RootElement.EnumerateArray().Select(e =>
            {
                bool known = hash.Length > 0 && e.GetProperty("bundle").GetString() == hash;
                return new Entry
                {
                    Device = device, Sequence = 1, Previous = "", Ticks = e.GetProperty("ticks").GetInt64(), LocalOffset = 0,
                    Person = "not named", Cell = known ? cell : "not named", Revision = known ? revision : "",
                    Step = e.GetProperty("step").GetString() ?? "", Ask = "length", Note = PageNotes.TakenOver,
                    Says = new Measured(e.GetProperty("text").GetString() ?? "", "m", e.GetProperty("metres").GetDouble(), e.GetProperty("readTo").GetDouble()),
                };
            })];
        }
        catch (Exception e) when (e is JsonException or KeyNotFoundException or InvalidOperationException or FormatException)
        {
            return null;
        }
    }

    private static (string Hash, string Cell, string Revision) BundleOf(string bundle)
    {
        using var document = JsonDocument.Parse(bundle);
        var cell = document.RootElement.GetProperty("cell");
        return (document.RootElement.GetProperty("hash").GetString() ?? "", cell.GetProperty("id").GetString() ?? "", cell.GetProperty("revision").GetString() ?? "");
    }
}
