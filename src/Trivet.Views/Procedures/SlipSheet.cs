using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using Trivet.Cells;
using Trivet.Faults;
using Trivet.Findings;
using Trivet.Procedures;
using Trivet.Views.Answers;
using Trivet.Views.Words;

namespace Trivet.Views.Procedures;

/// <summary>A fault and where the procedure notices it, in finished texts.</summary>
/// <param name="Step">Number of the step that notices it; null where none does.</param>
public sealed record SlipRow(Noticed Of, string Fault, int? Step, string When, string Chance, string Seen, string Harm, string Remedy);

/// <summary>Which single faults the procedure of a cell would notice, the least likely first, and which would slip through.</summary>
public sealed record SlipSheet(FaultWords Words, ImmutableArray<SlipRow> Rows, string Summary)
{
    public static SlipSheet Of(Cell cell, Procedure procedure, FaultWords words)
    {
        var numbers = procedure.Steps.Select((s, i) => (s.Id, i)).ToDictionary(s => s.Id, s => s.i + 1, StringComparer.Ordinal);
        var coverage = Coverage.Of(procedure.Steps, FaultCases.Of(cell, new Reading()));
        string summary = !coverage.Missed.Any() ? Locale.Fill(words.SlipsNone, ("count", Number(coverage.Faults.Length)))
            : Locale.Fill(words.SlipsSome, ("missed", Number(coverage.Missed.Count())), ("count", Number(coverage.Faults.Length)))
                + (coverage.Best is { } best ? " " + Locale.Fill(words.BestAddition, ("probe", words.Probes[(int)best.Probe])) : "");
        return new(words, [.. coverage.Faults.OrderBy(f => f.Probability).ThenBy(f => f.Case.Fault.Number).Select(Row)], summary);

        SlipRow Row(Noticed noticed)
        {
            var text = words.Faults[noticed.Case.Fault.Id];
            string where = noticed.Case.Where.IsEmpty ? "" : $": {string.Join(" – ", noticed.Case.Where)}";
            string when = noticed.SlipsThrough ? words.SlipsThrough : noticed.BeforePower ? words.BeforePower : words.UnderPower;
            return new(noticed, text.Title + where, noticed.SlipsThrough ? null : numbers[noticed.Step], when, Numbers.Percent(noticed.Probability), text.Seen, text.Harm, text.Remedy);
        }

        static string Number(int number) => number.ToString(CultureInfo.InvariantCulture);
    }

    public string Text()
    {
        var text = new StringBuilder(Words.Title).Append('\n').Append(Summary).Append('\n').Append(Words.Rough).Append("\n\n");
        foreach (var row in Rows)
            text.Append(CultureInfo.InvariantCulture, $"{row.Chance,7}  {(row.Step is { } step ? $"{step}, {row.When}" : row.When),-26}  {row.Fault}\n");
        return text.ToString();
    }

    /// <summary>For programs: ids and numbers as they are.</summary>
    public string Csv()
    {
        var text = new StringBuilder("fault,where,step,energy,probability,beforeHarm,weight,seen,harm,remedy\r\n");
        foreach (var row in Rows)
        {
            var of = row.Of;
            string[] cells =
            [
                of.Case.Fault.Id, string.Join(' ', of.Case.Where), of.Step, of.At?.ToString() ?? "", CsvCell.Of(of.Probability), CsvCell.Of(of.BeforeHarm), CsvCell.Of(of.Case.Fault.Weight), row.Seen, row.Harm, row.Remedy,
            ];
            text.AppendJoin(',', cells.Select(CsvCell.Harmless)).Append("\r\n");
        }
        return text.ToString();
    }
}
