using System.Collections.Immutable;
using Microsoft.AspNetCore.Components;
using Trivet.Cells;
using Trivet.Desk.Sessions;
using Trivet.Frames;
using Trivet.Motion;
using Trivet.Views.Charts;
using Trivet.Views.Drawings;
using Trivet.Views.Frames;
using Trivet.Views.Words;

namespace Trivet.Desk.Components.Mechanical;

/// <summary>Computes the frame anew once the hand rests, off the page's context; until then the last answer stands.</summary>
public sealed partial class FrameSection : IDisposable
{
    private const double ChartWidth = 620, ChartHeight = 260;
    private static readonly TimeSpan Rest = TimeSpan.FromMilliseconds(150);

    private static readonly string[] Rules = ["frame."];

    private FrameReport? _report;
    private FrameSheet? _sheet;
    private Cell? _asked;
    private Drawing _drawing = null!, _band = null!;
    private ImmutableArray<(Drawing Chart, string Name)> _settle = [];
    private ImmutableArray<Brace> _braces;
    private FrameView _view = FrameView.FromACorner;
    private int _mode = -1;
    private bool _stiff, _moving, _stale, _looking;
    private CancellationTokenSource _stop = new();

    [Parameter, EditorRequired] public CellSession Session { get; set; } = null!;

    private string CellId => Session.Draft.CellId;

    private static FrameWords Words => Locale.English.Language.Frame;

    protected override async Task OnParametersSetAsync()
    {
        if (ReferenceEquals(_asked, Session.Now.Planned)) return;
        var cell = _asked = Session.Now.Planned;
        await _stop.CancelAsync();
        _stop.Dispose();
        _stop = new();
        var stop = _stop.Token;
        _stale = true;
        try
        {
            if (_report is not null) await Task.Delay(Rest, stop);
            var (report, sheet, band, settle) = await Task.Run(() => Compute(cell, stop), stop);
            if (stop.IsCancellationRequested) return;
            (_report, _sheet, _band, _settle, _stale, _braces) = (report, sheet, band, settle, false, default);
            Draw();
        }
        catch (OperationCanceledException)
        {
            // A newer edit took over.
        }
    }

    public void Dispose()
    {
        _stop.Cancel();
        _stop.Dispose();
    }

    private static (FrameReport, FrameSheet?, Drawing, ImmutableArray<(Drawing, string)>) Compute(Cell cell, CancellationToken stop)
    {
        var report = FrameReport.Of(cell, [], stop);
        if (report.Study is null) return (report, null, null!, []);
        var settle = ImmutableArray.CreateBuilder<(Drawing, string)>();
        // The longest wait of all cycles is the one that counts.
        var longest = report.Under.SelectMany(u => u.Settling.Select(s => (u, s))).OrderByDescending(p => p.s.Worst.Wait).ThenByDescending(p => p.s.Worst.Residual).Take(2);
        foreach (var (under, settling) in longest)
            settle.Add((ChartSvg.Render(FrameCharts.Settle(report, under, settling), ChartWidth, ChartHeight), $"settle-{under.Load.Name}-{settling.Wait}"));
        return (report, FrameSheet.Of(report, []), ChartSvg.Render(FrameCharts.Band(report), ChartWidth, ChartHeight), settle.ToImmutable());
    }

    private void Draw()
    {
        if (_report is { Study: { } study } report)
        {
            _mode = Math.Min(_mode, study.Soft.Modes.Length - 1);
            _drawing = FrameDrawing.Of(report, _view, _mode, _stiff, _moving);
        }
    }

    private void Show(int mode)
    {
        _mode = mode;
        Draw();
    }

    private void See(FrameView view)
    {
        _view = view;
        Draw();
    }

    private void Joints(bool stiff)
    {
        _stiff = stiff;
        Draw();
    }

    private void Swing()
    {
        _moving = !_moving;
        Draw();
    }

    private async Task LookAsync()
    {
        var (report, stop) = (_report!, _stop.Token);
        _looking = true;
        try
        {
            var braces = await Task.Run(() => report.Braces(stop), stop);
            if (ReferenceEquals(report, _report)) _braces = braces;
        }
        catch (OperationCanceledException)
        {
            // The frame was edited meanwhile.
        }
        finally
        {
            _looking = false;
        }
    }

    private IEnumerable<(FrameRow, Brace)> BraceRows() => FrameSheet.Of(_report!, _braces).Rows.Where(r => r.Group == "braces").Zip(_braces);

    private async Task TakeAsync(Brace brace)
    {
        var frame = Session.Cell.Frame;
        int number = 1;
        while (frame.Members.ContainsKey($"brace-{number}")) number++;
        var member = new FrameMember
        {
            Order = frame.Members.Values.Max(m => m.Order ?? 0) + 1,
            FromX = Rounded(brace.From.X), FromY = Rounded(brace.From.Y), FromZ = Rounded(brace.From.Z),
            ToX = Rounded(brace.To.X), ToY = Rounded(brace.To.Y), ToZ = Rounded(brace.To.Z), Profile = _report!.BraceLine!.Bar.Profile,
        };
        await Session.EditAsync(Session.Cell with { Frame = frame with { Members = frame.Members.Add($"brace-{number}", member) } }, Words.BraceTaken);

        static double Rounded(double metres) => Math.Round(metres, 4);
    }
}
