using System.Globalization;
using System.Text;
using Trivet.AsBuilt;
using Trivet.Cells;
using Trivet.Views.Answers;
using Trivet.Views.Procedures;
using Trivet.Views.Words;

namespace Trivet.Views.Journals;

/// <summary>Where the steps stand, and what a change would cost, as text and JSON.</summary>
public static class WorkForms
{
    public const string Format = "trivet-work";
    public const int Version = 1;

    /// <param name="staleOnly">Only the steps that are to be done again.</param>
    /// <param name="steps">The procedure's words, in the same language.</param>
    public static string Text(Progress progress, Cell cell, bool staleOnly, JournalWords words, ProcedureWords steps)
    {
        StepState[] shown = [.. progress.Steps.Where(s => !staleOnly || s.Standing == Standing.Stale)];
        int skills = words.Skills.Max(s => s.Length), ids = shown.Select(s => s.Step.Id.Length).DefaultIfEmpty(0).Max(), standings = words.Standings.Max(s => s.Length);
        var text = new StringBuilder();
        text.Append(progress.Level is { } level ? JournalSentences.Fill(words.LevelNow, ("level", words.Levels[(int)level])) : words.LevelUnknown).Append('\n');
        var left = WorkSheet.LeftOf(progress, steps);
        text.Append(left.Summary).Append("\n\n");
        if (shown.Length == 0) text.Append(words.CostsNothing).Append('\n');
        foreach (var s in shown)
        {
            text.Append(CultureInfo.InvariantCulture, $"{s.Step.Id.PadRight(ids)}  {words.Skills[(int)s.Step.By].PadRight(skills)}  {words.Standings[(int)s.Standing].PadRight(standings)}  {StepTexts.Title(s.Step, steps)}").Append('\n');
            if (WorkSheet.Why(s, cell, words, id => id) is { Length: > 0 } why) text.Append("".PadRight(ids + 2)).Append(why).Append('\n');
        }
        if (staleOnly) return text.ToString();
        text.Append('\n').Append(steps.Labels.WhoWaits).Append('\n');
        foreach (string line in left.Waits.IsEmpty ? [steps.Labels.NobodyWaits] : left.Waits) text.Append("  ").Append(line).Append('\n');
        return text.ToString();
    }

    public static string Text(DryRun run, Cell cell, JournalWords words, ProcedureWords steps)
    {
        var costs = DraftCosts.Of(run, cell, words, step => $"{StepTexts.Title(step, steps)} ({step.Id})");
        return string.Concat(costs.Lines.Select(l => $"  {l}\n").Prepend(costs.Summary + "\n"));
    }

    public static string Json(Progress progress, Cell cell, string revision) => JsonAnswer.Of(Format, Version, cell.Name ?? "", revision, json =>
    {
        json.WriteString("level", progress.Level?.ToString());
        json.WriteNumber("minutesLeft", progress.MinutesLeft);
        json.WriteNumber("minutesAtBest", progress.MinutesAtBest);
        var left = WorkSheet.LeftOf(progress, EnglishSteps.Words);
        json.WriteNumber("minutesForOne", left.One.Minutes);
        json.WriteNumber("minutesForTwo", left.Two.Minutes);
        json.WriteStartArray("steps");
        foreach (var s in progress.Steps)
        {
            json.WriteStartObject();
            json.WriteString("step", s.Step.Id);
            json.WriteString("by", s.Step.By.ToString());
            json.WriteString("standing", s.Standing.ToString());
            json.WriteBoolean("mayBegin", s.MayBegin);
            json.WriteNumber("minutesLeft", s.MinutesLeft);
            json.WriteStartArray("waitsFor");
            foreach (string id in s.WaitsFor) json.WriteStringValue(id);
            json.WriteEndArray();
            json.WriteStartArray("stale");
            foreach (var why in s.Stale) json.WriteStringValue(JournalSentences.Of(why, EnglishJournal.Words, p => p, id => id));
            json.WriteEndArray();
            json.WriteStartArray("weak");
            foreach (var weakness in s.Weaknesses) json.WriteStringValue(weakness.ToString());
            json.WriteEndArray();
            json.WriteEndObject();
        }
        json.WriteEndArray();
    });

    public static string Json(DryRun run, Cell cell, string revision) => JsonAnswer.Of(Format, Version, cell.Name ?? "", revision, json =>
    {
        json.WriteNumber("minutes", run.Minutes);
        json.WriteStartArray("stale");
        foreach (var s in run.Stale)
        {
            json.WriteStartObject();
            json.WriteString("step", s.Step.Id);
            json.WriteNumber("minutes", s.Minutes);
            json.WriteStartArray("why");
            foreach (var why in s.Why) json.WriteStringValue(JournalSentences.Of(why, EnglishJournal.Words, p => p, id => id));
            json.WriteEndArray();
            json.WriteEndObject();
        }
        json.WriteEndArray();
        json.WriteStartArray("new");
        foreach (var s in run.New) json.WriteStringValue(s.Id);
        json.WriteEndArray();
        json.WriteStartArray("gone");
        foreach (var s in run.Gone) json.WriteStringValue(s.Step.Id);
        json.WriteEndArray();
    });
}
