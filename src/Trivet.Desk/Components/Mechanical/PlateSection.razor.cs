using System.Collections.Immutable;
using System.Globalization;
using Microsoft.AspNetCore.Components;
using Microsoft.JSInterop;
using Trivet.Adapters;
using Trivet.Cells;
using Trivet.Desk.Sessions;
using Trivet.Files;
using Trivet.Files.Exchange;
using Trivet.Findings;
using Trivet.Papers;
using Trivet.Views.Drawings;
using Trivet.Views.Mechanical;
using Trivet.Views.Papers;
using Trivet.Views.Words;

namespace Trivet.Desk.Components.Mechanical;

/// <summary>The adapter plates of a cell. A plate is designed anew only when the description has changed.</summary>
public sealed partial class PlateSection
{
    private enum Shop
    {
        Pdf,
        Dxf,
        Step,
        Stl,
    }

    /// <summary>One plate as it is shown.</summary>
    /// <param name="Sheet">Null while it can not be designed.</param>
    private sealed record View(
        PlateSheet? Sheet, ImmutableArray<(PlatePiece Piece, Drawing Drawing)> Drawings, ImmutableArray<string> Missing, IReadOnlyList<Contradiction> Wrong);

    private readonly Dictionary<string, View> _seen = new(StringComparer.Ordinal);
    private Cell? _of;

    [Parameter, EditorRequired] public CellSession Session { get; set; } = null!;
    [Inject] private IJSRuntime Page { get; set; } = null!;
    [Inject] private TimeProvider Clock { get; set; } = null!;

    private string CellId => Session.Draft.CellId;
    private static PlateWords Words => Locale.English.Language.Plate;

    private View Seen(string id)
    {
        if (!ReferenceEquals(_of, Session.Cell)) _seen.Clear();
        _of = Session.Cell;
        return _seen.TryGetValue(id, out var view) ? view : _seen[id] = Design(id);
    }

    private View Design(string id)
    {
        var reading = new Reading();
        var wrong = new List<Contradiction>();
        if (AdapterInput.Read(Session.Cell, id, reading, wrong) is not { } input) return new(null, [], reading.MissingFields, wrong);
        var sheet = PlateSheet.Of(Session.Cell, PlateSearch.Solve(input), CellFile.Hash(Session.Cell)[..8], Clock.GetLocalNow().ToString("yyyy-MM-dd", CultureInfo.InvariantCulture));
        return new(sheet, [.. sheet.Pieces.Select(p => (p, PaperSvg.Of(PlateDrawing.Of(p.Plate, p.Title))))], [], wrong);
    }

    private async Task<FileError?> SetAsync(CellField field, string text)
    {
        var read = CellFields.Set(Session.Cell, field.Pointer, text);
        if (read.Cell is not { } cell) return read.Errors[0];
        await Session.EditAsync(cell, $"{Fields.Words(Session.Cell, field.Pointer)} {(text.Trim().Length == 0 ? "cleared" : $"to {text.Trim()}")}");
        return null;
    }

    private Task TakeAsync(string id, ClockingRow row) =>
        Session.EditAsync(Changed(id, p => p with { Clocking = row.Clocking }), $"{Words.HeadClocking} {row.Shown[0]}");

    private Task TakeStackAsync(string id) => Session.EditAsync(Changed(id, p => p with { Pieces = 2 }), Words.TakeStack);

    private Cell Changed(string id, Func<PlatePlan, PlatePlan> change) =>
        Session.Cell with { Plates = Session.Cell.Plates.SetItem(id, change(Session.Cell.Plates[id])) };

    private async Task SaveAsync(PlatePiece piece, Shop kind)
    {
        string name = $"{CellId}-{piece.FileName}";
        var now = Clock.GetLocalNow();
        await (kind switch
        {
            Shop.Dxf => Page.InvokeVoidAsync("trivet.save", name + ".dxf", "image/vnd.dxf", DxfFile.Of(piece.Plate)),
            Shop.Step => Page.InvokeVoidAsync("trivet.save", name + ".step", "model/step", StepFile.Of(piece.Plate, piece.Title.Name, now.ToString("s", CultureInfo.InvariantCulture))),
            Shop.Stl => Page.InvokeVoidAsync("trivet.save", name + ".stl", "model/stl", StlFile.Of(piece.Plate, piece.FileName)),
            _ => Page.InvokeVoidAsync("trivet.save", name + ".pdf", "application/pdf", PaperPdf.Of(piece.Title.Name, now.DateTime, PlateDrawing.Of(piece.Plate, piece.Title))),
        });
    }
}
