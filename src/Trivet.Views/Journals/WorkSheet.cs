using System.Collections.Immutable;
using System.Globalization;
using Trivet.AsBuilt;
using Trivet.Cells;
using Trivet.Procedures;
using Trivet.Views.Procedures;
using Trivet.Views.Words;

namespace Trivet.Views.Journals;

/// <summary>Where one step stands, in words.</summary>
/// <param name="Why">Why it is stale, waits, or is weak; empty where there is nothing to say.</param>
public sealed record StepStanding(StepState Of, string Says, string Why);

/// <summary>Where the work at a cell stands, in words.</summary>
/// <param name="Again">How many steps are to be done again; empty where none is.</param>
/// <param name="Left">What is left for one person and for two.</param>
/// <param name="Steps">By the id of the step.</param>
public sealed record WorkSheet(string Summary, string Level, string Again, WorkLeft Left, ImmutableDictionary<string, StepStanding> Steps)
{
    /// <summary>Plans what is left: a step that does not let others begin is done once more, whole.</summary>
    public static WorkLeft LeftOf(Progress progress, ProcedureWords words) =>
        WorkLeft.Of([.. progress.Steps.Select(s => s.Step)], progress.Steps.Where(s => s.LetsOn).Select(s => s.Step.Id).ToHashSet(StringComparer.Ordinal), words);

    /// <param name="steps">The procedure's words, in the same language as <paramref name="words"/>.</param>
    public static WorkSheet Of(Progress progress, Cell cell, JournalWords words, ProcedureWords steps)
    {
        var titles = progress.Steps.ToDictionary(s => s.Step.Id, s => StepTexts.Title(s.Step, steps), StringComparer.Ordinal);
        int again = progress.Steps.Count(s => s.Standing == Standing.Stale);
        return new(
            JournalSentences.Fill(words.HowFar, ("done", Count(progress.Steps.Count(s => s.LetsOn))), ("steps", Count(progress.Steps.Length))),
            progress.Level is { } level ? JournalSentences.Fill(words.LevelNow, ("level", words.Levels[(int)level])) : words.LevelUnknown,
            again == 0 ? "" : JournalSentences.Fill(words.ToDoAgain, ("count", Count(again))), LeftOf(progress, steps),
            progress.Steps.ToImmutableDictionary(
                s => s.Step.Id, s => new StepStanding(s, words.Standings[(int)s.Standing], Why(s, cell, words, id => titles.GetValueOrDefault(id, id))), StringComparer.Ordinal));
    }

    /// <param name="name">What a step is called by its id.</param>
    internal static string Why(StepState step, Cell cell, JournalWords words, Func<string, string> name) => step.Standing switch
    {
        Standing.Stale => Reasons(step.Stale, cell, words, name),
        Standing.Waiting => JournalSentences.Fill(words.WaitsFor, ("step", string.Join(", ", step.WaitsFor.Select(name)))),
        Standing.Differs or Standing.NotPossible => step.Words,
        _ => string.Join(", ", step.Weaknesses.Select(w => words.Weaknesses[(int)w])),
    };

    internal static string Reasons(IEnumerable<Staleness> why, Cell cell, JournalWords words, Func<string, string> name) =>
        string.Join("; ", why.Select(w => JournalSentences.Of(w, words, p => FieldNames.Of(cell, p, words.Tag), name)));

    private static string Count(int count) => count.ToString(CultureInfo.InvariantCulture);
}

/// <summary>What a change of the cell would cost at the machine, in words, told before it is made.</summary>
/// <param name="Lines">One for each step that would be done again, is new, or is no longer a step.</param>
public sealed record DraftCosts(string Summary, ImmutableArray<string> Lines)
{
    /// <param name="then">The cell as it would be.</param>
    /// <param name="name">What a step is called.</param>
    public static DraftCosts Of(DryRun run, Cell then, JournalWords words, Func<Step, string> name)
    {
        if (run.Stale.IsEmpty && run.New.IsEmpty && run.Gone.IsEmpty) return new(words.CostsNothing, []);
        var names = run.Stale.ToDictionary(s => s.Step.Id, s => name(s.Step), StringComparer.Ordinal);
        return new(
            JournalSentences.Fill(words.Costs, ("count", run.Stale.Length.ToString(CultureInfo.InvariantCulture)), ("minutes", Minutes(run.Minutes))),
            [
                .. run.Stale.Select(s => JournalSentences.Fill(
                    words.CostsLine, ("step", name(s.Step)), ("minutes", Minutes(s.Minutes)), ("what", WorkSheet.Reasons(s.Why, then, words, id => names.GetValueOrDefault(id, id))))),
                .. run.New.Select(s => JournalSentences.Fill(words.NewStep, ("step", name(s)), ("minutes", Minutes(s.Minutes)))),
                .. run.Gone.Select(s => JournalSentences.Fill(words.GoneStep, ("step", name(s.Step)))),
            ]);
    }

    /// <summary>Never less than it takes.</summary>
    private static string Minutes(double minutes) => Math.Ceiling(minutes).ToString("0", CultureInfo.InvariantCulture);
}
