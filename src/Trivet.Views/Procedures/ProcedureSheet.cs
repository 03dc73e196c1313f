using System.Collections.Immutable;
using Trivet.Assessment;
using Trivet.Cells;
using Trivet.Files.Floor;
using Trivet.Procedures;
using Trivet.Views.Words;

namespace Trivet.Views.Procedures;

/// <summary>How much one skill is needed.</summary>
/// <param name="Begins">Minutes until it is needed first.</param>
public sealed record SkillShare(Skill Skill, string Name, int Steps, double Minutes, double Begins);

/// <summary>The procedure of a cell with its words and who does what when, and how the cell is made safe.</summary>
public sealed record ProcedureSheet(
    ProcedureWords Words, string Title, string Summary, string Open, ImmutableArray<WordedStep> Steps, Procedure Procedure, Schedule Schedule, int People, ImmutableArray<SkillShare> Skills,
    SafeText Safe)
{
    /// <param name="people">Who work: one or two.</param>
    public static ProcedureSheet Of(Cell cell, int people, ProcedureWords words)
    {
        var procedure = CellProcedure.Of(cell);
        var schedule = Schedule.Of(procedure.Steps, people);
        var labels = words.Labels;
        int open = procedure.Gaps.Select(g => g.Step).Distinct().Count();
        return new(
            words, $"{cell.Name ?? labels.UnnamedCell}: {labels.Title}",
            Locale.Fill(labels.Summary, ("steps", Number(procedure.Steps.Length)), ("minutes", StepTexts.Time(schedule.Minutes, words)), ("people", Number(people)), ("critical", StepTexts.Time(schedule.Critical, words))),
            open == 0 ? "" : Locale.Fill(labels.OpenNumbers, ("count", Number(open))), StepTexts.Of(procedure, words), procedure, schedule, people,
            [.. Enum.GetValues<Skill>().Select(s => (Skill: s, Of: schedule.Steps.Where(p => p.Step.By == s).ToArray())).Where(s => s.Of.Length > 0)
                .Select(s => new SkillShare(s.Skill, words.Skills[(int)s.Skill], s.Of.Length, s.Of.Sum(p => p.Step.Minutes), s.Of.Min(p => p.Begin)))],
            SafeTexts.Of(CellProcedure.SafeOf(cell), words));
    }

    /// <summary>When a step is done and by whom.</summary>
    public Planned PlanOf(string step) => Schedule.Steps.First(p => p.Step.Id == step);

    private static string Number(int number) => number.ToString(System.Globalization.CultureInfo.InvariantCulture);
}
