using System.Collections.Immutable;
using Microsoft.AspNetCore.Components;
using Microsoft.AspNetCore.Components.Forms;
using Microsoft.JSInterop;
using Trivet.Cells;
using Trivet.Desk.Sessions;
using Trivet.Files.Exchange;
using Trivet.Papers;
using Trivet.Views.Cabinets;
using Trivet.Views.Cabling;
using Trivet.Views.Drawings;
using Trivet.Views.Words;

namespace Trivet.Desk.Components.Wiring;

public partial class CablingSection
{
    private const long LargestList = 4 << 20;

    private static readonly ImmutableArray<string> Handed = ["lists.xlsx", "edit.xlsx", "labels.pdf", "labels.csv", "schedule.pdf", "plan.json"];

    private string? _axis, _problem;
    private LabelSheet _sheet = LabelSheet.A4[0];
    private EditedList? _edited;
    private (Cell Cell, string? Axis, Drawing Drawing)? _drawn;

    [Parameter, EditorRequired] public CellSession Session { get; set; } = null!;
    [Parameter, EditorRequired] public Section Section { get; set; } = null!;

    /// <summary>The section with the cables of one axis.</summary>
    private Section Of(string? axis)
    {
        if (axis is null) return Section;
        var own = Session.Cell.Cables.Where(c => c.Value.Axis == axis).Select(c => $"/cables/{c.Key}").ToHashSet();
        return Section with { Tables = [.. Section.Tables.Select(t => t.Id == "ways" ? t : Only(t))] };

        SheetTable Only(SheetTable table)
        {
            int[] kept = [.. Enumerable.Range(0, table.Rows.Length).Where(i => own.Contains(table.Pointers[i]))];
            return table with { Rows = [.. kept.Select(i => table.Rows[i])], Pointers = [.. kept.Select(i => table.Pointers[i])] };
        }
    }

    private Drawing Diagram(string? axis)
    {
        if (_drawn is not { } drawn || !ReferenceEquals(drawn.Cell, Session.Cell) || drawn.Axis != axis) _drawn = drawn = (Session.Cell, axis, WiringDiagram.Of(Session.Cell, axis));
        return drawn.Drawing;
    }

    private async Task SaveAsync(string name)
    {
        string address = $"{Navigation.BaseUri}cell/{Session.Draft.CellId}/electrical";
        var file = CablingFiles.Of(Session.Cell, address, _sheet, Clock.GetLocalNow().DateTime).First(f => f.Name == name);
        await Page.InvokeVoidAsync("trivet.save", $"{Session.Draft.CellId}-{name}", file.Media, file.Bytes);
    }

    private async Task ReadAsync(InputFileChangeEventArgs e)
    {
        (_edited, _problem) = (null, null);
        var words = Locale.English.Language.Cabling;
        if (e.File.Size > LargestList)
        {
            _problem = words.TooLarge;
            return;
        }
        using var bytes = new MemoryStream();
        await using (var stream = e.File.OpenReadStream(LargestList)) await stream.CopyToAsync(bytes);
        bool book = e.File.Name.EndsWith(".xlsx", StringComparison.OrdinalIgnoreCase);
        // A workbook holds every list by its name; a CSV says by its head which one it is.
        var after = (Session.Cell, Changes: ImmutableArray<Files.FieldChange>.Empty, Errors: ImmutableArray<Files.FileError>.Empty, Kept: ImmutableArray<string>.Empty, Unknown: ImmutableArray<string>.Empty);
        var read = Lists(bytes.ToArray(), e.File.Name, book, out string problem);
        if (read.IsEmpty)
        {
            _problem = problem.Length > 0 ? problem : words.WhichList;
            return;
        }
        foreach (var (collection, grid) in read)
        {
            var one = EditedList.Take(after.Cell, collection, grid, e.File.Name);
            after = (one.Cell, after.Changes.AddRange(one.Changes), after.Errors.AddRange(one.Errors), after.Kept.AddRange(one.Kept), after.Unknown.AddRange(one.Unknown));
        }
        _edited = new(after.Cell, after.Changes, after.Errors, after.Kept, after.Unknown);
    }

    private static ImmutableArray<(string Collection, ImmutableArray<ImmutableArray<string>> Grid)> Lists(byte[] bytes, string name, bool book, out string problem)
    {
        problem = "";
        if (!book)
        {
            string? own = FieldList.Collections.FirstOrDefault(c => name.Contains(c[(c.LastIndexOf('/') + 1)..], StringComparison.OrdinalIgnoreCase));
            var grid = Grids.Csv(System.Text.Encoding.UTF8.GetString(bytes));
            problem = grid.Problem;
            return own is null || grid.Problem.Length > 0 ? [] : [(own, grid.Rows)];
        }
        var sheets = Grids.Sheets(bytes);
        problem = sheets.Problem;
        return [.. FieldList.Collections.Where(c => sheets.Names.Contains(c[(c.LastIndexOf('/') + 1)..])).Select(c => (c, Grids.Workbook(bytes, c[(c.LastIndexOf('/') + 1)..]).Rows))];
    }

    private async Task TakeAsync(EditedList edited)
    {
        _edited = null;
        await Session.EditAsync(edited.Cell, Locale.English.Language.Cabling.Edited);
    }
}
