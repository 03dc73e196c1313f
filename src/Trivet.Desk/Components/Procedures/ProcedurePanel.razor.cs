using Microsoft.AspNetCore.Components;
using Trivet.Desk.Sessions;
using Trivet.Store;
using Trivet.Views.Journals;
using Trivet.Views.Procedures;
using Trivet.Views.Words;

namespace Trivet.Desk.Components.Procedures;

/// <summary>Where the work stands, beside the steps: looked at every two seconds, as the journal is.</summary>
public sealed partial class ProcedurePanel : IDisposable
{
    private readonly CancellationTokenSource _leave = new();
    private CellWork? _work;
    private string _trouble = "";
    private (WorkSeen Of, string Language, WorkSheet Sheet, DraftCosts? Costs)? _worded;

    [Inject] private JobStore Store { get; set; } = null!;

    private JournalWords JournalWords => JournalWords.In(Session.Language);

    /// <summary>Null until it has been looked at, and as long as nothing is recorded.</summary>
    private (WorkSeen Of, string Language, WorkSheet Sheet, DraftCosts? Costs)? Worded
    {
        get
        {
            if (_work?.Seen is not { Recorded: true } seen) return null;
            if (_worded is { } made && ReferenceEquals(made.Of, seen) && made.Language == Session.Language) return made;
            var words = ProcedureWords.In(Session.Language);
            return _worded = (
                seen, Session.Language, WorkSheet.Of(seen.Progress, seen.Head, JournalWords, words),
                seen.Draft is { } run ? DraftCosts.Of(run, Session.Cell, JournalWords, step => StepTexts.Title(step, words)) : null);
        }
    }

    protected override void OnInitialized()
    {
        _work = new(Store, Session.Draft.CellId);
        _ = WatchAsync();

        async Task WatchAsync()
        {
            await LookAsync();
            await Looking.UntilAsync(() => InvokeAsync(LookAsync), _leave.Token);
        }
    }

    public void Dispose()
    {
        _leave.Cancel();
        _leave.Dispose();
    }

    private async Task LookAsync()
    {
        string before = _trouble;
        bool moved = false;
        try
        {
            moved = await _work!.LookAsync(Session.Cell, _leave.Token);
            _trouble = "";
        }
        catch (StoreFailedException failure)
        {
            _trouble = failure.Message;
        }
        catch (OperationCanceledException)
        {
            return;
        }
        if (moved || _trouble != before) StateHasChanged();
    }

    /// <summary>Said beside each step of the head's procedure; null for a step that only the draft has.</summary>
    private StepStanding? StandingOf(string step) => Worded?.Sheet.Steps.GetValueOrDefault(step);
}
