using System.Globalization;
using System.Text;
using Trivet.Assessment;
using Trivet.Cells;
using Trivet.Core.Tests.Reach;
using Trivet.Files;
using Trivet.Findings;
using Trivet.Testing;
using Xunit;

namespace Trivet.Core.Tests.Assessment;

/// <summary>
/// A finding declares every field it depends on: change any other field of the description, and it does not move. On this rests
/// what is stale after an edit.
/// </summary>
public sealed class DeclaredInputsTests
{
    [Theory]
    [InlineData("jar-lids", "/robot/common")]
    [InlineData("rail", "")]
    [InlineData("crank", "/robot/common")]
    [InlineData("planar", "/robot/chains/a")]
    public void A_field_that_a_finding_does_not_list_does_not_move_it(string name, string below)
    {
        var cell = name switch { "rail" => ReachCells.Rail, "crank" => ReachCells.Crank, "planar" => ReachCells.Planar, _ => CellFile.Read(Encoding.UTF8.GetBytes(Samples.Find(name)!.Text), name).Cell! };
        var before = Assess.Preview(cell).Ledger.Findings;
        int changed = 0;
        foreach (var field in CellFields.Below(cell, below))
        {
            foreach (string text in Alternatives(field))
            {
                if (CellFields.Set(cell, field.Pointer, text).Cell is not { } other) continue;
                changed++;
                var after = Assess.Preview(other).Ledger.Findings.ToDictionary(f => f.Id);
                foreach (var finding in before.Where(f => !f.Inputs.Contains(field.Pointer)))
                {
                    Assert.True(after.TryGetValue(finding.Id, out var now), $"{finding.Id} is gone after {field.Pointer} = '{text}'");
                    Assert.True(StationChecksTests.Told(finding).Equals(StationChecksTests.Told(now!)), $"{finding.Id} moved after {field.Pointer} = '{text}'");
                }
            }
        }
        Assert.True(changed > (below.Length == 0 ? 200 : 15), $"only {changed} changes could be tried");
    }

    /// <summary>A value of the same kind that differs from the present one, or from none.</summary>
    private static IEnumerable<string> Alternatives(CellField field)
    {
        switch (field.Kind)
        {
            case FieldKind.Choice:
            case FieldKind.YesNo:
                foreach (string word in field.Choices.Where(c => c != field.Text)) yield return word;
                break;
            case FieldKind.Whole:
                yield return (1 + (int.TryParse(field.Text, NumberStyles.Integer, CultureInfo.InvariantCulture, out int n) ? n : 1)).ToString(CultureInfo.InvariantCulture);
                break;
            case FieldKind.Quantity:
                double si = Quantity.Parse(field.Text, field.Dimension) is { Ok: true } stated ? stated.Value : 0.123;
                yield return Quantity.Format(1.01 * si + 0.001, field.Dimension);
                break;
            default:
                yield return field.Text + "x";
                break;
        }
    }
}
