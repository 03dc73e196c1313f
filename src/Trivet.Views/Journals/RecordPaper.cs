using System.Collections.Immutable;
using System.Globalization;
using Trivet.AsBuilt;
using Trivet.Cells;
using Trivet.Journal;
using Trivet.Procedures;
using Trivet.Views.Papers;
using Trivet.Views.Procedures;
using Trivet.Views.Words;

namespace Trivet.Views.Journals;

/// <summary>
/// The record of bring-up on paper, to be signed: every answer that counts with its verdict, who gave it and when, and what is open. The head of the journal stands on it, so that
/// paper and export hold each other: a word changed before it would give another head.
/// </summary>
public static class RecordPaper
{
    /// <summary>A4 across, millimetres.</summary>
    private const double Width = 297, Height = 210;

    /// <summary>Characters of the head in each foot; the whole stands on the first page.</summary>
    private const int HeadInFoot = 16;

    /// <summary>Lines to sign on: who did it, who let it stand, who took it over.</summary>
    private const int Signatures = 3;

    /// <param name="progress">Of the same procedure.</param>
    /// <param name="revision">Hash of the cell's revision.</param>
    /// <param name="receipt">Number of the newest receipt.</param>
    /// <param name="head">Its hash; empty where nothing is recorded.</param>
    /// <param name="contradictions">What does not fit together in the journal, in words.</param>
    /// <param name="steps">The procedure's words, in the same language as <paramref name="words"/>.</param>
    public static ImmutableArray<Paper> Of(
        Progress progress, Procedure procedure, Cell cell, string revision, long receipt, string head, ImmutableArray<string> contradictions, JournalWords words, ProcedureWords steps)
    {
        string title = Title(cell, words, steps);
        var work = WorkSheet.Of(progress, cell, words, steps);
        // What a blind reading was held against may be told once it is taken.
        var worded = StepTexts.Of(procedure with { Steps = [.. procedure.Steps.Select(s => s with { Asks = [.. s.Asks.Select(a => a is AskedValue v ? v with { ShownAfter = false } : a)] })] }, steps);
        var blocks = new List<FlowBlock>
        {
            new FlowHeading(title, true),
            new FlowParagraph($"{work.Summary} {work.Level} {work.Again}".Trim()),
            new FlowParagraph(head.Length == 0 ? $"{words.Head}: {words.NoHead}" : JournalSentences.Fill(words.RecordHead, ("number", Number(receipt)), ("hash", head)), true),
            new FlowParagraph(words.RecordNote),
            new FlowParagraph(JournalSentences.Contradictions(contradictions.Length, words), contradictions.Length > 0),
        };
        blocks.AddRange(contradictions.Select(c => new FlowParagraph(c)));

        ImmutableArray<ImmutableArray<string>> answers = [.. worded.SelectMany(step => Answers(step, progress.Of(step.Step.Id)!, words))];
        if (!answers.IsEmpty)
        {
            blocks.Add(new FlowHeading(words.RecordAnswers));
            blocks.Add(FlowTable.Fitted([words.HeadStep, steps.Labels.Record, words.HeadSays, steps.Labels.Accepted, words.HeadVerdict, words.HeadPerson, words.HeadWhen, words.HeadNote], answers, Width));
        }
        ImmutableArray<ImmutableArray<string>> open =
        [
            .. worded.Select(step => (Step: step, Is: work.Steps[step.Step.Id])).Where(s => !s.Is.Of.LetsOn || s.Is.Of.Standing is Standing.DoneWeak or Standing.Stale)
                .Select(s => (ImmutableArray<string>)[$"{s.Step.Number} {s.Step.Title}", s.Is.Says, s.Is.Why]),
        ];
        if (!open.IsEmpty)
        {
            blocks.Add(new FlowHeading(words.RecordOpen));
            blocks.Add(FlowTable.Fitted([words.HeadStep, words.HeadStanding, words.HeadNote], open, Width));
        }
        blocks.Add(new FlowTable([words.RecordSigned], [1], [.. Enumerable.Repeat<ImmutableArray<string>>([" "], Signatures)]));
        blocks.Add(new FlowParagraph(steps.Labels.LocalRules));
        string foot = head.Length == 0 ? revision[..8] : $"{revision[..8]}  {words.Head} {head[..HeadInFoot]}";
        return Flow.Pages(title, title, Width, Height, blocks, (page, pages) => $"{foot}  {Number(page)} / {Number(pages)}");
    }

    public static string Title(Cell cell, JournalWords words, ProcedureWords steps) => $"{cell.Name ?? steps.Labels.UnnamedCell}: {words.RecordTitle}";

    /// <summary>One row for each answer that counts; a step that was only said to be impossible or different has one of its own.</summary>
    private static IEnumerable<ImmutableArray<string>> Answers(WordedStep step, StepState state, JournalWords words)
    {
        string name = $"{step.Number} {step.Title}";
        var verdicts = FloorWords.Of(words.Tag).Verdicts;
        foreach (var (ask, text) in state.Asks.Zip(step.Asks))
        {
            if (ask.Answer is null || ask.Entry is not { } kept) continue;
            bool judged = ask.Asked is AskedValue { Accepted: not null } or AskedChoice or AskedCount;
            yield return
            [
                name, text.What, JournalSentences.Of(ask.Answer, words, ask.Asked.Id), text.Accepted.Length > 0 ? text.Accepted : text.Planned,
                judged ? verdicts[(int)ask.Verdict] : "", kept.Entry.Person, JournalSentences.When(kept.Entry),
                string.Join(" · ", ask.Weaknesses.Select(w => words.Weaknesses[(int)w]).Prepend(JournalSentences.Note(kept.Entry.Note, words)).Prepend(kept.Entry.Instrument).Where(t => t.Length > 0)),
            ];
        }
        if (state.Standing is not (Standing.NotPossible or Standing.Differs or Standing.Released) || state.Words.Length == 0) yield break;
        var last = state.History[^1].Entry;
        yield return [name, "", $"{words.Standings[(int)state.Standing]}: {state.Words}", "", "", last.Person, JournalSentences.When(last), ""];
    }

    private static string Number(long number) => number.ToString(CultureInfo.InvariantCulture);
}
