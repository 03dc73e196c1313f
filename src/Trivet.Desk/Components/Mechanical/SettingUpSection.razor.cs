using System.Collections.Immutable;
using System.Text;
using Microsoft.AspNetCore.Components;
using Microsoft.AspNetCore.Components.Forms;
using Microsoft.JSInterop;
using Trivet.Cells;
using Trivet.Desk.Sessions;
using Trivet.Files;
using Trivet.Frames;
using Trivet.Views.Frames;
using Trivet.Views.Words;

namespace Trivet.Desk.Components.Mechanical;

/// <summary>Readings at the standing frame. They stay with the open cell, and go to and from a table that the command reads too.</summary>
public sealed partial class SettingUpSection
{
    private const int NextShown = 3;
    private const long LargestTable = 1 << 18;

    private Cell? _of;
    private ImmutableArray<SetUpPoint> _points = [];
    private ImmutableArray<NextReading> _next = [];
    private FrameSheet? _sheet;
    private SetUpKind _kind;
    private string _from = "", _to = "", _value = "", _reversed = "", _problem = "";

    [Parameter, EditorRequired] public CellSession Session { get; set; } = null!;
    [Inject] private IJSRuntime Page { get; set; } = null!;

    private static FrameWords Words => Locale.English.Language.Frame;

    protected override void OnParametersSet()
    {
        if (ReferenceEquals(_of, Session.Cell)) return;
        _of = Session.Cell;
        _points = SettingUp.PointsOf(FrameMembers.Of(Session.Cell.Frame, new()));
        if (_points.IsEmpty) return;
        if (_points.All(p => p.Name != _from)) _from = _points[0].Name;
        if (_points.All(p => p.Name != _to)) _to = _points[1].Name;
        Compute();
    }

    private void Compute()
    {
        var result = SettingUp.Of(_points, [.. Session.SetUp.Select(r => r.At(_points)).OfType<SetUpReading>()]);
        (_sheet, _next) = (SetUpSheet.Of(Session.Cell, result), result.Next(NextShown));
    }

    private void Add()
    {
        (var row, _problem) = SetUpRow.Typed(_kind, _from, _to, _value, _reversed);
        if (row is null) return;
        (_value, _reversed) = ("", "");
        Keep([.. Session.SetUp, row]);
    }

    private void Remove(SetUpRow row) => Keep(Session.SetUp.Remove(row));

    private void Take(NextReading next) => (_kind, _from, _to, _problem) = (next.Kind, next.From, next.To.Length > 0 ? next.To : _to, "");

    private void Keep(ImmutableArray<SetUpRow> rows)
    {
        Session.SetUp = rows;
        Compute();
    }

    private async Task LoadAsync(InputFileChangeEventArgs e)
    {
        try
        {
            await using var stream = e.File.OpenReadStream(LargestTable);
            using var memory = new MemoryStream();
            await stream.CopyToAsync(memory);
            var (rows, errors) = SetUpTable.Read(new StringReader(Encoding.UTF8.GetString(memory.ToArray())), e.File.Name, _points);
            _problem = errors.IsEmpty ? "" : $"{errors[0].File}, {errors[0].Line}: {errors[0].Problem}; {errors[0].Remedy}.";
            if (errors.IsEmpty) Keep([.. Session.SetUp, .. rows.Select(r => SetUpRow.Of(r, _points))]);
        }
        catch (IOException x)
        {
            _problem = x.Message;
        }
    }

    private async Task SaveAsync() => await Page.InvokeVoidAsync("trivet.save", $"{Session.Draft.CellId}-set-up.csv", "text/csv", SetUpRow.Table(Session.SetUp));

    private static string Shown(SetUpRow row, double value) => $"{Numbers.Plain(1000 * value, 2)} {(row.Kind == SetUpKind.Level ? "mm/m" : "mm")}";
}
