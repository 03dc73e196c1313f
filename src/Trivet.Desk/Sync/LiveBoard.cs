using System.Collections.Immutable;
using Trivet.Files.Floor;

namespace Trivet.Desk.Sync;

/// <summary>Who is at which step just now. Kept in memory only: what counts is what the journal says.</summary>
internal sealed class LiveBoard
{
    /// <summary>A device that has not been heard of for so long is no longer shown.</summary>
    public static readonly TimeSpan Heard = TimeSpan.FromSeconds(15);

    /// <summary>Devices remembered, of all cells; the one heard of longest ago makes room.</summary>
    public const int Most = 200;

    private const int LongestId = 200;

    private readonly Lock _lock = new();
    private readonly Dictionary<(string Cell, string Device), (AtWork At, DateTimeOffset When)> _heard = [];

    public static bool Fits(AtWork at) =>
        at is { Device: { Length: > 0 and <= LongestId }, Person: { Length: <= LongestId }, Step: { Length: <= LongestId } };

    /// <summary>Takes in where a device is, and tells of the others on the same cell.</summary>
    public ImmutableArray<AtWork> Tell(string cell, AtWork at, DateTimeOffset now)
    {
        lock (_lock)
        {
            foreach (var old in _heard.Where(h => now - h.Value.When > Heard).Select(h => h.Key).ToList()) _heard.Remove(old);
            if (_heard.Count >= Most && !_heard.ContainsKey((cell, at.Device))) _heard.Remove(_heard.MinBy(h => h.Value.When).Key);
            _heard[(cell, at.Device)] = (at, now);
            return [.. _heard.Where(h => h.Key.Cell == cell && h.Key.Device != at.Device).Select(h => h.Value.At).OrderBy(a => a.Person, StringComparer.Ordinal).ThenBy(a => a.Device, StringComparer.Ordinal)];
        }
    }
}
