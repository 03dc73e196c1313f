using System.Text;
using Trivet.Cells;
using Trivet.Faults;
using Trivet.Files;
using Trivet.Findings;
using Xunit;

namespace Trivet.Core.Tests.Faults;

public sealed class FaultCaseTests
{
    private static Cell Sample(string id) => CellFile.Read(Encoding.UTF8.GetBytes(Samples.Find(id)!.Text), id).Cell!;

    private static string[] Of(Cell cell, string fault) => [.. FaultCases.Of(cell, new()).Where(c => c.Fault.Id == fault).Select(c => string.Join('+', c.Where))];

    [Fact]
    public void A_fault_of_an_axis_is_possible_at_each_and_a_swap_at_each_pair()
    {
        var lids = Sample("jar-lids");
        Assert.Equal(["a", "b", "c", "rotary"], Of(lids, "motor-phase-open"));
        Assert.Equal(["a+b", "a+c", "a+rotary", "b+c", "b+rotary", "c+rotary"], Of(lids, "motor-cables-swapped"));
        Assert.Equal(["rotary"], Of(lids, "rotary-sense"));
    }

    [Fact]
    public void What_a_cell_does_not_have_can_not_be_wrong()
    {
        var lids = Sample("jar-lids");
        var plain = lids with { Robot = lids.Robot with { Common = lids.Robot.Common with { Holding = Holding.Friction, Feedback = Feedback.None }, Rotary = new() }, Cabinet = new(), Io = new(), Pneumatics = new() };
        foreach (string gone in new[] { "brake-not-released", "feedback-open", "rotary-sense", "terminator-missing", "wrong-address", "switches-swapped", "outputs-swapped", "air-wrong", "fan-blocked" })
        {
            Assert.NotEmpty(Of(lids, gone is "fan-blocked" ? "out-of-level" : gone));
            Assert.Empty(Of(plain, gone));
        }
        Assert.Empty(Of(Sample("labels"), "axes-mirrored"));
    }

    [Fact]
    public void A_fault_of_an_axis_can_be_seen_at_its_cables_switches_and_module()
    {
        var lids = Sample("jar-lids");
        var parts = FaultCases.Of(lids, new()).Single(c => c.Id == "motor-phase-open:a").Parts;
        Assert.Contains("/robot/chains/a", parts);
        Assert.Contains(parts, p => p.StartsWith("/cables/", StringComparison.Ordinal));
        Assert.Contains(parts, p => p.StartsWith("/cabinet/modules/", StringComparison.Ordinal));
        Assert.DoesNotContain("/robot/chains/b", parts);
    }

    [Fact]
    public void The_choice_says_what_it_rests_on()
    {
        var lids = Sample("jar-lids");
        var (before, after) = (new Reading(), new Reading());
        FaultCases.Of(lids, before);
        FaultCases.Of(lids with { Name = "Other", Mount = lids.Mount with { Z = 2 } }, after);
        Assert.Equal(new ReadKey("", before.Key), new ReadKey("", after.Key));
        Assert.Contains("/robot/rotary/fitted", before.Inputs);
        Assert.Contains("/cabinet/network/protocol", before.Inputs);
    }
}
