using System.Collections.Immutable;
using System.Globalization;
using Trivet.Procedures;
using Trivet.Views.Words;

namespace Trivet.Views.Procedures;

/// <summary>The work that is left for one person and for two, and which of two waits for whom, in words.</summary>
/// <param name="Waits">One line for each time that somebody stands still; empty where nobody does.</param>
public sealed record WorkLeft(Schedule One, Schedule Two, string Summary, ImmutableArray<string> Waits)
{
    /// <param name="done">Ids of the steps that let others begin.</param>
    public static WorkLeft Of(ImmutableArray<Step> steps, IReadOnlySet<string> done, ProcedureWords words)
    {
        var (one, two) = (Schedule.Of(steps, 1, done), Schedule.Of(steps, 2, done));
        return new(
            one, two,
            Locale.Fill(words.Labels.WorkLeft, ("one", StepTexts.Time(one.Minutes, words)), ("two", StepTexts.Time(two.Minutes, words)), ("critical", StepTexts.Time(two.Critical, words))), Lines(two, steps, words));
    }

    /// <summary>Who waits for whom in a plan, steps by their numbers in the whole list.</summary>
    public static ImmutableArray<string> Lines(Schedule schedule, ImmutableArray<Step> steps, ProcedureWords words)
    {
        var numbers = steps.Select((s, i) => (s.Id, i)).ToDictionary(s => s.Id, s => s.i + 1, StringComparer.Ordinal);
        var plans = schedule.Steps.ToDictionary(p => p.Step.Id, StringComparer.Ordinal);
        return [.. schedule.Waits.Select(w => Locale.Fill(
            words.Labels.WaitLine, ("begin", StepTexts.Time(w.From, words)), ("person", Person(w.Person)), ("minutes", StepTexts.Time(w.Until - w.From, words)),
            ("other", string.Join("+", plans[w.For].People.Select(Person))), ("for", Name(w.For)), ("before", Name(w.Before))))];

        string Name(string step) => $"{numbers[step].ToString(CultureInfo.InvariantCulture)} {StepTexts.Title(plans[step].Step, words).TrimEnd('.')}";
        static string Person(int person) => (person + 1).ToString(CultureInfo.InvariantCulture);
    }
}
