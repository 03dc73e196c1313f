using System.Text;
using Trivet.Assessment;
using Trivet.Files;
using Trivet.Procedures;
using Trivet.Views.Procedures;
using Trivet.Views.Words;
using Xunit;

namespace Trivet.Views.Tests.Procedures;

public sealed class SlipSheetTests
{
    private static readonly Trivet.Cells.Cell Lids = CellFile.Read(Encoding.UTF8.GetBytes(Samples.Find("jar-lids")!.Text), "jar-lids").Cell!;
    private static readonly Procedure Steps = CellProcedure.Of(Lids);

    [Theory]
    [InlineData("en")]
    [InlineData("de")]
    public void Each_fault_says_by_which_step_it_is_noticed(string tag)
    {
        var sheet = SlipSheet.Of(Lids, Steps, FaultWords.In(tag));
        Assert.Contains(sheet.Rows, r => r.Of.Case.Id == "feedback-cables-swapped:a+b");
        Assert.All(sheet.Rows, r => Assert.Equal(Steps.Steps[r.Step!.Value - 1].Id, r.Of.Step));
        Assert.Equal(sheet.Rows.Select(r => r.Of.Probability), sheet.Rows.Select(r => r.Of.Probability).Order());
        Assert.Equal(sheet.Rows.Length + 1, sheet.Csv().Split("\r\n", StringSplitOptions.RemoveEmptyEntries).Length);
    }

    [Fact]
    public void What_slips_through_a_shorter_procedure_is_told_with_what_would_catch_most()
    {
        var shorter = Steps with { Steps = [.. Steps.Steps.Where(s => s.Kind is not ("frame-level" or "mount-level" or "frame-anchored")).Select(s => s with { After = [] })] };
        var sheet = SlipSheet.Of(Lids, shorter, EnglishFaultCatalogue.Words);
        Assert.Contains(sheet.Rows, r => r.Of.Case.Fault.Id == "out-of-level" && r.Step is null);
        Assert.Contains("level and diagonals", sheet.Summary, StringComparison.Ordinal);
    }
}
