using System.Globalization;
using System.Text;
using Trivet.Adapters;
using Trivet.Bolting;
using Trivet.Cells;
using Trivet.Core.Tests.Reach;
using Trivet.Files;
using Trivet.Findings;
using Trivet.Motion;
using Xunit;

namespace Trivet.Core.Tests.Bolting;

/// <summary>Findings of plates and joints declare every field they rest on: change another field of plates, joints, interfaces or tool, and they do not move.</summary>
public sealed class DeclaredFieldsTests
{
    [Theory]
    [InlineData("/plates")]
    [InlineData("/joints")]
    [InlineData("/interfaces")]
    [InlineData("/tool/parts")]
    public void A_field_that_a_finding_does_not_list_does_not_move_it(string below)
    {
        var cell = CellFile.Read(Encoding.UTF8.GetBytes(Samples.Find("jar-lids")!.Text), "jar-lids").Cell!;
        var before = Of(cell).ToArray();
        int changed = 0;
        foreach (var field in CellFields.Below(cell, below))
        {
            if (CellFields.Set(cell, field.Pointer, Other(field)).Cell is not { } edited) continue;
            changed++;
            var after = Of(edited).GroupBy(f => f.Id).ToDictionary(g => g.Key, g => g.First());
            foreach (var finding in before.Where(f => !f.Inputs.Contains(field.Pointer)))
            {
                Assert.True(after.TryGetValue(finding.Id, out var now), $"{finding.Id} is gone after {field.Pointer}");
                Assert.True(StationChecksTests.Told(finding).Equals(StationChecksTests.Told(now!)), $"{finding.Id} moved after {field.Pointer}");
            }
        }
        Assert.True(changed > 15, $"only {changed} changes could be tried");
    }

    private static IEnumerable<Finding> Of(Cell cell)
    {
        var plan = AdapterChecks.Of(cell, new()) + JointStage.Of(cell, TimedCycle.Of(cell), new());
        return [.. plan.Findings, .. plan.Tasks.SelectMany(t => t.Sample())];
    }

    private static string Other(CellField field) => field.Kind switch
    {
        FieldKind.Choice or FieldKind.YesNo => field.Choices.First(c => c != field.Text),
        FieldKind.Whole => (1 + (int.TryParse(field.Text, NumberStyles.Integer, CultureInfo.InvariantCulture, out int n) ? n : 1)).ToString(CultureInfo.InvariantCulture),
        FieldKind.Quantity => Quantity.Format(1.01 * (Quantity.Parse(field.Text, field.Dimension) is { Ok: true } stated ? stated.Value : 0.123) + 0.001, field.Dimension),
        _ => field.Text + "x",
    };
}
