using System.Text;
using Trivet.Assessment;
using Trivet.Cells;
using Trivet.Files;
using Trivet.Procedures;
using Trivet.Views.Procedures;
using Trivet.Views.Words;
using Xunit;

namespace Trivet.Views.Tests.Words;

/// <summary>Every step that any cell can have is worded, whole, in each language.</summary>
public sealed class ProcedureWordsTests
{
    public static TheoryData<string> Languages => ["en", "de"];

    internal static Cell Sample(string id) => CellFile.Read(Encoding.UTF8.GetBytes(Samples.Find(id)!.Text), id).Cell!;

    /// <summary>Samples as they came in parts and assembled, with and without rotary axis, cabinet and tool: together every kind of step.</summary>
    internal static IEnumerable<Procedure> Procedures()
    {
        foreach (string id in new[] { "jar-lids", "biscuits", "labels", "tight-corner" })
            foreach (bool assembled in new[] { false, true })
            {
                var cell = Sample(id);
                var robot = cell.Robot with { CameAssembled = assembled };
                yield return CellProcedure.Of(cell with { Robot = robot });
                yield return CellProcedure.Of(cell with { Robot = robot with { Rotary = robot.Rotary with { Fitted = !assembled } }, Cabinet = new(), Io = new(), Frame = cell.Frame with { Feet = cell.Frame.Feet with { Anchored = true } } });
            }
    }

    [Theory, MemberData(nameof(Languages))]
    public void Every_kind_question_answer_and_tool_has_its_words_and_no_brace_is_left(string tag)
    {
        var words = ProcedureWords.In(tag);
        var kinds = new HashSet<string>();
        foreach (var procedure in Procedures())
            foreach (var step in StepTexts.Of(procedure, words))
            {
                kinds.Add(step.Step.Kind);
                string[] texts = [step.Title, step.What, step.Why, step.Hazard, step.Caution, step.Bad, .. step.Held, .. step.Tools, .. step.Asks.SelectMany(a => new[] { a.What, a.Form, a.Planned, a.Accepted })];
                Assert.All(texts, t => Assert.DoesNotContain("{", t, StringComparison.Ordinal));
                Assert.All(new[] { step.Title, step.What, step.Why, step.Bad }, Assert.NotEmpty);
                // What is energised says how to make safe at once, and in what the danger lies is never told without the remedy.
                if (step.Step.Energy != EnergyLevel.Isolated || step.Hazard.Length > 0) Assert.True(step.Caution.Length > 0 || step.Step.Kind == "payload", step.Step.Id);
            }
        // No word for a step that is none.
        Assert.Empty(words.Kinds.Keys.Except(kinds));
        Assert.Equal(Enum.GetValues<EnergyLevel>().Length, words.Energies.Length);
        Assert.Equal(Enum.GetValues<StepPlace>().Length, words.Places.Length);
        Assert.Equal(Enum.GetValues<Skill>().Length, words.Skills.Length);
        Assert.Equal(Enum.GetValues<Upset>().Length, words.Upsets.Length);
    }

    [Fact]
    public void No_step_asks_two_things_under_one_id()
    {
        foreach (var step in Procedures().SelectMany(p => p.Steps)) Assert.Equal(step.Asks.Length, step.Asks.Select(a => a.Id).Distinct().Count());
    }

    [Fact]
    public void German_numbers_have_a_comma_and_English_ones_a_point()
    {
        var procedure = CellProcedure.Of(Sample("jar-lids"));
        string[] Accepted(string tag) => [.. StepTexts.Of(procedure, ProcedureWords.In(tag)).SelectMany(s => s.Asks).Select(a => a.Accepted)];
        Assert.Contains(Accepted("en"), a => a.Contains("0.5 mm/m", StringComparison.Ordinal));
        Assert.Contains(Accepted("de"), a => a.Contains("0,5 mm/m", StringComparison.Ordinal));
    }
}
