using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using Trivet.Cabinets;
using Trivet.Cells;
using Trivet.Core.Tests.Reach;
using Trivet.Files;
using Trivet.Findings;
using Trivet.Motion;
using Trivet.Powering;
using Trivet.Wiring;
using Xunit;

namespace Trivet.Core.Tests.Powering;

/// <summary>Findings of order, heat, supplies, wires, motors' supply, addresses and bus declare every field they rest on: change another one of the cabinet or the motors' supply,
/// and they do not move.</summary>
public sealed class DeclaredFieldsTests
{
    [Theory]
    [InlineData("/cabinet/enclosure")]
    [InlineData("/cabinet/railRules")]
    [InlineData("/cabinet/sources")]
    [InlineData("/cabinet/branches")]
    [InlineData("/cabinet/consumers")]
    [InlineData("/cabinet/modules/axis-b")]
    [InlineData("/cabinet/modules/inputs")]
    [InlineData("/cabinet/network/messages/from-a")]
    [InlineData("/drives/supply")]
    public void A_field_that_a_finding_does_not_list_does_not_move_it(string below)
    {
        var cell = CellFile.Read(Encoding.UTF8.GetBytes(Samples.Find("jar-lids")!.Text), "jar-lids").Cell!;
        bool motors = below.StartsWith("/drives", StringComparison.Ordinal);
        var before = Of(cell, motors);
        int changed = 0;
        foreach (var field in CellFields.Below(cell, below))
        {
            if (CellFields.Set(cell, field.Pointer, Other(field)).Cell is not { } edited) continue;
            changed++;
            var after = Of(edited, motors).GroupBy(f => f.Id).ToDictionary(g => g.Key, g => g.First());
            foreach (var finding in before.Where(f => !f.Inputs.Contains(field.Pointer)))
            {
                Assert.True(after.TryGetValue(finding.Id, out var now), $"{finding.Id} is gone after {field.Pointer}");
                Assert.True(StationChecksTests.Told(finding).Equals(StationChecksTests.Told(now!)), $"{finding.Id} moved after {field.Pointer}");
            }
        }
        Assert.True(changed >= 8, $"only {changed} changes could be tried");
    }

    /// <summary>The cycles rest on nothing of the cabinet, so they are timed only where the motors' supply is looked at.</summary>
    private static ImmutableArray<Finding> Of(Cell cell, bool motors)
    {
        var plan = CabinetStage.Of(cell) + PowerStage.Of(cell) + WiringStage.Of(cell) + (motors ? MotorFeedStage.Of(cell, TimedCycle.Of(cell)) : new([], [], []));
        return [.. plan.Findings, .. plan.Tasks.SelectMany(t => t.Prove(TestContext.Current.CancellationToken))];
    }

    private static string Other(CellField field) => field.Kind switch
    {
        FieldKind.Choice or FieldKind.YesNo => field.Choices.First(c => c != field.Text),
        FieldKind.Whole => (1 + (int.TryParse(field.Text, NumberStyles.Integer, CultureInfo.InvariantCulture, out int n) ? n : 1)).ToString(CultureInfo.InvariantCulture),
        FieldKind.Quantity => Quantity.Format(1.01 * (Quantity.Parse(field.Text, field.Dimension) is { Ok: true } stated ? stated.Value : 0.123) + 0.001, field.Dimension),
        _ => field.Text + "x",
    };
}
