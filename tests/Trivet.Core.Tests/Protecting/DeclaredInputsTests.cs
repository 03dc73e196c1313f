using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using Trivet.Cells;
using Trivet.Files;
using Trivet.Findings;
using Trivet.Gripping;
using Trivet.Motion;
using Trivet.Protecting;
using Trivet.Tooling;
using Xunit;

namespace Trivet.Core.Tests.Protecting;

/// <summary>Findings of tool, gripping, handling and guarding declare what they depend on: a field they do not list does not move them.</summary>
public sealed class DeclaredInputsTests
{
    [Theory]
    [InlineData("jar-lids", "/tool")]
    [InlineData("jar-lids", "/pneumatics")]
    [InlineData("jar-lids", "/handling")]
    [InlineData("jar-lids", "/guarding")]
    [InlineData("jar-lids", "/brief")]
    [InlineData("jar-lids", "/motion")]
    [InlineData("jar-lids", "/mount")]
    [InlineData("jar-lids", "/robot/rotary")]
    [InlineData("biscuits", "/guarding")]
    [InlineData("biscuits", "/robot")]
    [InlineData("biscuits", "/mount")]
    [InlineData("labels", "/tool")]
    [InlineData("labels", "/pneumatics")]
    public void A_field_that_a_finding_does_not_list_does_not_move_it(string name, string below)
    {
        var cell = CellFile.Read(Encoding.UTF8.GetBytes(Samples.Find(name)!.Text), name).Cell!;
        var before = Findings(cell);
        int changed = 0;
        foreach (var field in CellFields.Below(cell, below))
        {
            foreach (string text in Alternatives(field))
            {
                if (CellFields.Set(cell, field.Pointer, text).Cell is not { } other) continue;
                changed++;
                var after = Findings(other).ToDictionary(f => f.Id);
                foreach (var finding in before.Where(f => !f.Inputs.Contains(field.Pointer)))
                {
                    Assert.True(after.TryGetValue(finding.Id, out var now), $"{finding.Id} is gone after {field.Pointer} = '{text}'");
                    Assert.True(Told(finding) == Told(now!), $"{finding.Id} moved after {field.Pointer} = '{text}': {Told(finding)}, {Told(now!)}");
                }
            }
        }
        Assert.True(changed > 2, $"only {changed} changes could be tried");
    }

    private static ImmutableArray<Finding> Findings(Cell cell)
    {
        var cycles = TimedCycle.Of(cell);
        var plan = ToolChecks.Of(cell) + GripStage.Of(cell, cycles) + ProtectStage.Of(cell, cycles);
        return [.. plan.Findings, .. plan.Tasks.SelectMany(t => t.Sample())];
    }

    private static string Told(Finding finding) => finding switch
    {
        Judged j => string.Create(CultureInfo.InvariantCulture, $"{j.Value:R} {j.Bound:R} {j.Limit.Lower:R} {j.Limit.Upper:R} {j.Assurance} {j.Verdict}"),
        Unjudged u => $"{u.Reason} {string.Join(' ', u.Missing)} {u.Detail?.Id}",
        _ => finding.Verdict.ToString(),
    };

    private static IEnumerable<string> Alternatives(CellField field)
    {
        switch (field.Kind)
        {
            case FieldKind.Choice or FieldKind.YesNo:
                foreach (string word in field.Choices.Where(c => c != field.Text)) yield return word;
                break;
            case FieldKind.Whole:
                yield return (1 + (int.TryParse(field.Text, NumberStyles.Integer, CultureInfo.InvariantCulture, out int n) ? n : 1)).ToString(CultureInfo.InvariantCulture);
                break;
            case FieldKind.Quantity:
                double si = Quantity.Parse(field.Text, field.Dimension) is { Ok: true } stated ? stated.Value : 0.123;
                yield return Quantity.Format(1.01 * si + 0.001, field.Dimension);
                if (field.Text.Length > 0) yield return "";
                break;
            default:
                if (field.Text.Length > 0) yield return "";
                else yield return "something";
                break;
        }
    }
}
