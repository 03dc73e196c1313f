using System.Collections.Immutable;
using Microsoft.AspNetCore.Components;
using Microsoft.JSInterop;
using Trivet.Desk.Sessions;
using Trivet.Journal;
using Trivet.Papers;
using Trivet.Store;
using Trivet.Views.Journals;
using Trivet.Views.Words;

namespace Trivet.Desk.Components.Journals;

/// <summary>The journal of the job, as it comes in: a look at the newest receipt every two seconds, and what came since read when it moved.</summary>
public sealed partial class JournalPanel
{
    /// <summary>Entries shown at once; a table of more is slow to send and is not read.</summary>
    private const int MostShown = 200;

    private readonly CancellationTokenSource _leave = new();
    private readonly List<JournalLine> _lines = [];
    private readonly List<Receipt> _damaged = [];
    private JournalHead? _head;
    private JournalSheet? _sheet;
    private JournalFilter _filter = new();
    private ImmutableArray<string>? _faults;
    private ImmutableArray<Mismatch> _contradictions = [];
    private string _trouble = "";

    [Inject] private JobStore Store { get; set; } = null!;
    [Inject] private IJSRuntime Page { get; set; } = null!;
    [Inject] private TimeProvider Clock { get; set; } = null!;

    [Parameter, EditorRequired] public CellSession Session { get; set; } = null!;

    /// <summary>Id of the step to show alone; null for all.</summary>
    [Parameter] public string? Step { get; set; }

    private JournalWords Words => JournalWords.In(Session.Language);

    private bool Sound => _faults is { IsEmpty: true } && _damaged.Count == 0;

    private string State => _faults is not { } faults ? Words.Checking : Sound ? Words.Sound : JournalSentences.NotSound(Math.Max(faults.Length, _damaged.Count), Words);

    protected override async Task OnInitializedAsync()
    {
        _filter = new(Cell: Session.Draft.CellId, Step: Step ?? "");
        await LookAsync();
        _ = WatchAsync();
    }

    public void Dispose()
    {
        _leave.Cancel();
        _leave.Dispose();
    }

    private async Task WatchAsync()
    {
        await CheckAsync();
        await Looking.UntilAsync(() => InvokeAsync(LookAsync), _leave.Token);
    }

    private async Task LookAsync()
    {
        try
        {
            bool first = _sheet is null;
            if (!first && await Store.JournalHeadAsync(_leave.Token) == _head && _trouble.Length == 0) return;
            var part = await Store.JournalAsync(_head?.Number ?? 0, _leave.Token);
            _lines.AddRange(part.Lines);
            _damaged.AddRange(part.Damaged);
            (_head, _trouble) = (part.Head, "");
            Show();
            StateHasChanged();
            if (!first && part.Lines.Length > 0) _ = CheckAsync();
        }
        catch (StoreFailedException failure)
        {
            _trouble = failure.Message;
            StateHasChanged();
        }
    }

    private async Task CheckAsync()
    {
        try
        {
            _faults = await Store.CheckJournalAsync(_leave.Token);
            // The procedure takes longer to compute than a page may stand still.
            Kept[] entries = [.. _lines.Select(l => l.Kept)];
            var cell = Session.Cell;
            _contradictions = await Task.Run(() => Work.Contradictions(cell, Session.Draft.CellId, entries), _leave.Token);
            Show();
        }
        catch (StoreFailedException failure)
        {
            _trouble = failure.Message;
        }
        catch (OperationCanceledException)
        {
            return;
        }
        await InvokeAsync(StateHasChanged);
    }

    private async Task SaveRecordAsync()
    {
        try
        {
            var work = new CellWork(Store, Session.Draft.CellId);
            await work.LookAsync(Session.Cell, _leave.Token);
            if (work.Seen is not { } seen) return;
            var paper = RecordFiles.Record(seen.Progress, seen.Head, seen.Journal?.Number ?? 0, seen.Journal?.Hash ?? "", _sheet?.Contradictions ?? [], Session.Language, Clock.GetLocalNow().DateTime);
            await Page.InvokeVoidAsync("trivet.save", $"{Session.Draft.CellId}-{paper.Name}", paper.Media, paper.Bytes);
        }
        catch (StoreFailedException failure)
        {
            _trouble = failure.Message;
        }
    }

    private void Show() => _sheet = JournalSheet.Of([.. _lines.Select(l => l.Kept)], _head?.Hash ?? "", _filter, Words, _contradictions);

    private void Speak(string? tag)
    {
        Session.Language = tag ?? Session.Language;
        Show();
    }

    private void Filter(JournalFilter filter)
    {
        _filter = filter;
        Show();
    }

    private RenderFragment Choice(string label, string all, ImmutableArray<string> values, string chosen, Func<string, JournalFilter> with) => builder =>
    {
        builder.OpenElement(0, "label");
        builder.AddContent(1, label);
        builder.OpenElement(2, "select");
        builder.AddAttribute(3, "value", chosen);
        builder.AddAttribute(4, "onchange", EventCallback.Factory.Create<ChangeEventArgs>(this, e => Filter(with(e.Value?.ToString() ?? ""))));
        foreach (string value in values.Prepend("").Concat(values.Contains(chosen) || chosen.Length == 0 ? [] : [chosen]))
        {
            builder.OpenElement(5, "option");
            builder.SetKey(value);
            builder.AddAttribute(6, "value", value);
            builder.AddAttribute(7, "selected", value == chosen);
            builder.AddContent(8, value.Length == 0 ? all : value);
            builder.CloseElement();
        }
        builder.CloseElement();
        builder.CloseElement();
    };
}
