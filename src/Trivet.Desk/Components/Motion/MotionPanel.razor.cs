using System.Collections.Immutable;
using Microsoft.AspNetCore.Components;
using Microsoft.JSInterop;
using Trivet.Assessment;
using Trivet.Cells;
using Trivet.Desk.Sessions;
using Trivet.Findings;
using Trivet.Motion;
using Trivet.Views.Charts;
using Trivet.Views.Drawings;
using Trivet.Views.Motion;
using Trivet.Views.Words;

namespace Trivet.Desk.Components.Motion;

/// <summary>
/// Times the controller's law at every edit, at once; the other laws, charts and playing follow once the hand rests, off the page's context.
/// </summary>
public sealed partial class MotionPanel : IDisposable
{
    private const double ChartWidth = 620, ChartHeight = 230, CloudHeight = 400;
    private static readonly TimeSpan Rest = TimeSpan.FromMilliseconds(150);

    /// <summary>The newest time, and the newest of which all is shown.</summary>
    private MotionSheet? _now, _sheet;
    private MotionRun? _run;
    private ImmutableArray<VariantRow> _variants = [];
    private Playback? _playback;
    private TimingLaw _law = TimingLaw.Controller;
    private bool _rotary, _stale;
    private string? _axis, _cycle, _selected;
    private ImmutableArray<(MotionChart Chart, Drawing Drawing)> _charts = [];
    private (MotionChart Chart, Drawing Drawing)? _cloud, _warming;
    private Drawing _lawChart = null!;
    private Assessed? _from, _findings;
    private CancellationTokenSource _following = new();
    private MotionDrawings? _drawings;
    private int _timed;

    [Inject] private IJSRuntime Page { get; set; } = null!;
    [Parameter, EditorRequired] public CellSession Session { get; set; } = null!;
    /// <summary>Cycle to begin with.</summary>
    [Parameter] public string? Cycle { get; set; }

    private static MotionWords Words => Locale.English.Language.Motion;
    private string CellId => Session.Draft.CellId;
    private Finding? Marked => _findings?.Ledger.Findings.FirstOrDefault(f => f.Id == _selected);

    protected override void OnParametersSet()
    {
        _cycle ??= Cycle;
        if (!ReferenceEquals(_from, Session.Now))
        {
            _from = Session.Now;
            Filter();
        }
        if (_now is null || !ReferenceEquals(_now.Cell, Session.Now.Planned)) Time(wait: _sheet?.Result is not null);
    }

    public void Dispose()
    {
        _following.Cancel();
        _following.Dispose();
    }

    /// <summary>Times the cycle that is chosen, or the first there is.</summary>
    private void Time(bool wait)
    {
        var cycles = Session.Now.Planned.Motion.Cycles;
        string? id = _cycle is { } chosen && cycles.ContainsKey(chosen) ? chosen : cycles.InOrder().Select(c => c.Key).FirstOrDefault();
        _timed++;
        if (id is not null && wait && MotionSheet.Quick(Session.Now.Planned, id) is { Input: not null } quick)
        {
            _now = quick;
            _ = FollowAsync(Session.Now, id, _law);
            return;
        }
        _following.Cancel();
        _now = id is null ? null : MotionSheet.Of(Session.Now.Planned, id);
        Follow(_now, null, null, []);
        if (_now is { Result: not null }) Follow();
    }

    private async Task FollowAsync(Assessed now, string cycle, TimingLaw law)
    {
        await _following.CancelAsync();
        _following.Dispose();
        _following = new();
        var stop = _following.Token;
        _stale = true;
        try
        {
            await Task.Delay(Rest, stop);
            var (sheet, run, playback, variants) = await Task.Run(() => Compute(now, MotionSheet.Of(now.Cell, cycle), law), stop);
            if (stop.IsCancellationRequested) return;
            Follow(sheet, run, playback, variants);
            StateHasChanged();
        }
        catch (OperationCanceledException)
        {
            // A newer edit took over.
        }
    }

    private void Follow()
    {
        var (sheet, run, playback, variants) = Compute(Session.Now, _sheet!, _law, _variants);
        Follow(sheet, run, playback, variants);
    }

    /// <param name="known">The variants, where the sheet is the one they were computed for.</param>
    private static (MotionSheet, MotionRun?, Playback?, ImmutableArray<VariantRow>) Compute(
        Assessed now, MotionSheet sheet, TimingLaw law, ImmutableArray<VariantRow> known = default)
    {
        var run = MotionRun.Of(sheet, law);
        var variants = !known.IsDefaultOrEmpty ? known : sheet.Input is { } input ? VariantSheet.Of(sheet.Cell, input) : [];
        return (sheet, run, run is null ? null : Playback.Of(now, run), variants);
    }

    private void Follow(MotionSheet? sheet, MotionRun? run, Playback? playback, ImmutableArray<VariantRow> variants)
    {
        (_sheet, _run, _playback, _variants, _stale) = (sheet, run, playback, variants, false);
        if (sheet is { Result: not null }) _lawChart = ChartSvg.Render(MotionCharts.Laws(sheet, _law), ChartWidth, ChartHeight);
        if (_axis is null || run?.Drives?.Axes.ContainsKey(_axis) != true) _axis = run?.WorstAxis;
        Draw();
    }

    private void Draw()
    {
        _charts = _run is null ? [] : [.. MotionCharts.OverTime(_run, _rotary).Select(c => (c, ChartSvg.Render(c.Chart, ChartWidth, ChartHeight)))];
        _warming = _run is not null && MotionCharts.Warming(_run) is { } warming ? (warming, ChartSvg.Render(warming.Chart, ChartWidth, ChartHeight)) : null;
        _cloud = _run is not null && _axis is { } axis && MotionCharts.Cloud(_run, axis) is { } cloud ? (cloud, ChartSvg.Render(cloud.Chart, ChartWidth, CloudHeight)) : null;
    }

    private void Choose(string? cycle)
    {
        (_cycle, _selected) = (cycle, null);
        Filter();
        Time(wait: false);
    }

    private void Show(TimingLaw law)
    {
        _law = law;
        if (_stale) _ = FollowAsync(Session.Now, _now!.Cycle, law);
        else Follow();
    }

    private void ShowAxes(bool rotary)
    {
        _rotary = rotary;
        Draw();
    }

    private void ShowCloud(string axis)
    {
        _axis = axis;
        Draw();
    }

    /// <summary>The ledger of this cycle, and of what motion as a whole promises.</summary>
    private void Filter()
    {
        string? id = _cycle ?? Session.Now.Planned.Motion.Cycles.InOrder().Select(c => c.Key).FirstOrDefault();
        string at = $"/motion/cycles/{id}";
        _findings = Session.Now with
        {
            Ledger = Session.Now.Ledger with
            {
                Findings = [.. Session.Now.Ledger.Findings.Where(f => f.Subject.Pointer == at || f.Subject.Pointer == "/motion" || f.Subject.Pointer.StartsWith(at + "/", StringComparison.Ordinal))],
                Coverage = [],
            },
        };
    }

    private string FileName(MotionChart chart) => $"{CellId}-{_sheet!.Cycle}-{chart.Id}";

    private static Dictionary<string, object> Linked(MotionChart chart) => new()
    {
        ["data-tracks"] = string.Join(' ', chart.Tracks),
        ["data-across"] = chart.Across,
    };

    private async Task ExportAsync() =>
        await Page.InvokeVoidAsync("trivet.save", $"{CellId}-{_sheet!.Cycle}-{_law.ToString().ToLowerInvariant()}.csv", "text/csv", _run!.Csv);
}
