using Trivet.Cells;
using Trivet.Views.Words;

namespace Trivet.Desk.Sessions;

/// <summary>A station moved by hand in a drawing: shown while the hand moves, kept as one edit when it lets go. Used from the page's own context only.</summary>
internal sealed class StationMove
{
    private const string Stations = "/stations/";
    private Cell? _before;

    /// <summary>Where the station stands now, in words; empty before the first move.</summary>
    public string Said { get; private set; } = "";

    /// <summary>How much of a move that still goes on is shown, metres of the cell frame; zero when none does.</summary>
    public (double X, double Y) Shown { get; private set; }

    /// <summary>A station is wanted this far from where it stood when the move began. Its place is rounded to the millimetre, the step of a tape on the floor.</summary>
    /// <param name="pointer">Of the station; anything else is left alone.</param>
    /// <param name="dx">Metres of the cell frame.</param>
    /// <param name="dy">Metres of the cell frame.</param>
    /// <param name="done">False while the hand still moves.</param>
    public async Task ToAsync(CellSession session, string pointer, double dx, double dy, bool done)
    {
        if (!double.IsFinite(dx + dy) || !pointer.StartsWith(Stations, StringComparison.Ordinal)) return;
        string id = pointer[Stations.Length..];
        _before ??= session.Cell;
        if (!_before.Stations.TryGetValue(id, out var station) || station is not { X: { } x, Y: { } y }) return;
        double toX = Math.Round(x + dx, 3), toY = Math.Round(y + dy, 3);
        var cell = _before with { Stations = _before.Stations.SetItem(id, station with { X = toX, Y = toY }) };
        Said = $"{station.Name ?? id} at x {Numbers.Quantity(toX, "m")}, y {Numbers.Quantity(toY, "m")}";
        // While the hand moves the script draws the station where the hand has it, and needs to know how much is drawn already.
        Shown = done ? (0, 0) : (toX - x, toY - y);
        if (!done)
        {
            session.Show(cell);
            return;
        }
        _before = null;
        await session.EditAsync(cell, $"moved {Said}");
    }

    /// <summary>The move was broken off: the station stands where it stood.</summary>
    public void Leave(CellSession session)
    {
        if (_before is not { } cell) return;
        (_before, Shown) = (null, (0, 0));
        session.Show(cell);
    }
}
