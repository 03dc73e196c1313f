using System.Collections.Immutable;
using Microsoft.AspNetCore.Components;
using Microsoft.AspNetCore.Components.Forms;
using Microsoft.JSInterop;
using Trivet.Cells;
using Trivet.Desk.Sessions;
using Trivet.Files;
using Trivet.Files.Exchange;
using Trivet.Papers;
using Trivet.Views.Cabinets;
using Trivet.Views.Settings;

namespace Trivet.Desk.Components.Wiring;

public partial class SettingsSection
{
    private ReadOut? _export, _backup, _restored;
    private ImmutableArray<string> _errors = [];
    private (Cell Cell, ReadOut First, ReadOut? Second, ExportSheet Sheet)? _held;

    [Parameter, EditorRequired] public CellSession Session { get; set; } = null!;
    [Parameter, EditorRequired] public Section Section { get; set; } = null!;

    /// <summary>What is held against what, always by the cell as it stands now.</summary>
    private ExportSheet? Sheet
    {
        get
        {
            var (first, second) = _export is not null ? (_export, null) : (_backup, _restored);
            if (first is null || _export is null && second is null) return null;
            if (_held is not { } held || !ReferenceEquals(held.Cell, Session.Cell) || !ReferenceEquals(held.First, first) || !ReferenceEquals(held.Second, second))
                _held = held = (Session.Cell, first, second, second is null ? ExportSheet.Compared(Session.Cell, first) : ExportSheet.Proof(Session.Cell, first, second));
            return held.Sheet;
        }
    }

    private async Task CompareAsync(InputFileChangeEventArgs e)
    {
        Forget();
        _export = await ReadAsync(e.File);
    }

    private async Task ProveAsync(InputFileChangeEventArgs e, bool first)
    {
        (_export, _errors) = (null, []);
        var read = await ReadAsync(e.File);
        if (first) _backup = read;
        else _restored = read;
    }

    private async Task<ReadOut?> ReadAsync(IBrowserFile file)
    {
        // One byte more than is taken tells that there was more.
        var bytes = new byte[Math.Min(file.Size, ParameterExport.LargestFile + 1L)];
        await using (var stream = file.OpenReadStream(Math.Max(file.Size, 1))) await stream.ReadExactlyAsync(bytes);
        var read = ReadOut.Of(Session.Cell, file.Name, bytes);
        if (read.Errors.IsEmpty) return read;
        _errors = [.. read.Errors.Select(e => e.ToString())];
        return null;
    }

    private void Forget() => (_export, _backup, _restored, _errors) = (null, null, null, []);

    private Task SaveListAsync() => SaveAsync(SettingFiles.List(Session.Cell, Clock.GetLocalNow().DateTime));

    private Task SaveAsync(ExportSheet sheet) => SaveAsync(SettingFiles.Record(sheet, Session.Cell, Clock.GetLocalNow().DateTime));

    private async Task SaveAsync(PaperFile paper) => await Page.InvokeVoidAsync("trivet.save", $"{Session.Draft.CellId}-{paper.Name}", paper.Media, paper.Bytes);
}
