using System.Text;
using Trivet.Cells;
using Trivet.Files;
using Trivet.Findings;
using Trivet.Stopping;
using Xunit;

namespace Trivet.Core.Tests.Stopping;

public sealed class HazardStageTests
{
    private static readonly Cell Lids = CellFile.Read(Encoding.UTF8.GetBytes(Samples.Find("jar-lids")!.Text), "jar-lids").Cell!;
    private static readonly Cell Biscuits = CellFile.Read(Encoding.UTF8.GetBytes(Samples.Find("biscuits")!.Text), "biscuits").Cell!;

    [Fact]
    public void A_hazard_that_nobody_registered_stays_open_and_says_under_which_id_to_add_it()
    {
        var found = StopStageTests.Only("hazard.registered", Lids with { Hazards = Lids.Hazards.Remove("capacitors") }, "/hazards", Verdict.Open);
        Assert.Equal("capacitors", found.Subject.Case);
        Assert.Equal("hazard.capacitors", Assert.IsType<Unjudged>(found).Detail!.Id);
    }

    [Fact]
    public void An_entry_of_another_id_answers_by_naming_it()
    {
        Assert.Equal("arms-fall", ProposedHazards.Of(Biscuits, new()).Single(p => p.Id == "sinking").Entry);
        StopStageTests.Only("hazard.registered", Change(Biscuits, "arms-fall", h => h with { Proposed = null }), "/hazards", Verdict.Open);
        StopStageTests.Only("hazard.described", Change(Lids, "lifting", h => h with { Proposed = "dragons" }), "/hazards/lifting/proposed", Verdict.Open, others: true);
    }

    /// <summary>Each is proposed only where the description has what makes it.</summary>
    [Fact]
    public void A_cell_shows_what_it_has_and_no_more()
    {
        Assert.Empty(ProposedHazards.Of(Cell.Empty, new()));
        Assert.Equal(
            ["capacitors", "compressed-air", "crushing", "drawing-in", "dropped-part", "electric-shock", "hot-surfaces", "lifting", "rod-off", "sinking", "thrown-part", "unexpected-start"],
            Ids(Lids));
        Assert.Equal(["capacitors", "crushing", "drawing-in", "electric-shock", "hot-surfaces", "lifting", "rod-off", "sinking", "thrown-part", "unexpected-start"], Ids(Biscuits));
        Assert.DoesNotContain("compressed-air", Ids(Lids with { Pneumatics = new() }));
        Assert.DoesNotContain("lifting", Ids(Lids with { Handling = new() }));
        Assert.DoesNotContain("drawing-in", Ids(Lids with { Stations = Lids.Stations.RemoveRange(Lids.Stations.Where(s => s.Value.Kind == StationKind.Belt).Select(s => s.Key)) }));

        static string[] Ids(Cell cell) => [.. ProposedHazards.Of(cell, new()).Select(p => p.Id).Order(StringComparer.Ordinal)];
    }

    [Fact]
    public void Nothing_done_falls_short() => StopStageTests.Only("hazard.measure", Change(Lids, "hot-surfaces", h => h with { Measures = h.Measures.Clear() }), "/hazards/hot-surfaces");

    [Fact]
    public void A_measure_that_leans_on_a_function_that_is_not_there_falls_short() =>
        StopStageTests.Only(
            "hazard.function", Change(Lids, "crushing", h => h with { Measures = h.Measures.SetItem("guard", h.Measures["guard"] with { Function = "light-curtain" }) }), "/hazards/crushing/measures/guard");

    [Fact]
    public void Information_alone_says_why_there_is_nothing_better()
    {
        var only = Change(Lids, "hot-surfaces", h => h with { Measures = h.Measures.Remove("place") });
        StopStageTests.Only("hazard.order", only, "/hazards/hot-surfaces");
        Assert.DoesNotContain(StopStageTests.All(Change(only, "hot-surfaces", h => h with { OnlyInformation = "the resistor has to give off its heat" })), f => f.Verdict is Verdict.FallsShort or Verdict.Open);
    }

    [Theory]
    [InlineData(RiskSeverity.S2, RiskExposure.F2, RiskAvoidance.P2, false)]
    [InlineData(RiskSeverity.S2, RiskExposure.F1, RiskAvoidance.P2, true)]
    [InlineData(RiskSeverity.S1, RiskExposure.F1, RiskAvoidance.P1, true)]
    public void Measures_that_change_no_estimate_reduce_nothing(RiskSeverity s, RiskExposure f, RiskAvoidance p, bool reduced)
    {
        var cell = Change(Lids, "crushing", h => h with { After = new() { Severity = s, Exposure = f, Avoidance = p } });
        if (!reduced) StopStageTests.Only("hazard.reduced", cell, "/hazards/crushing");
        else Assert.DoesNotContain(StopStageTests.All(cell), x => x.Verdict is Verdict.FallsShort or Verdict.Open);
    }

    /// <summary>Less often and not avoidable any more is no reduction to be had by a table: one of the three rose.</summary>
    [Fact]
    public void An_estimate_that_rises_is_no_reduction() =>
        StopStageTests.Only(
            "hazard.reduced",
            Change(Lids, "capacitors", h => h with { Before = h.Before with { Exposure = RiskExposure.F2, Avoidance = RiskAvoidance.P1 }, After = new() { Severity = RiskSeverity.S1, Exposure = RiskExposure.F1, Avoidance = RiskAvoidance.P2 } }),
            "/hazards/capacitors");

    [Fact]
    public void A_hazard_without_proof_owner_or_estimate_is_open()
    {
        StopStageTests.Only("hazard.proof", Change(Lids, "lifting", h => h with { Proofs = h.Proofs.Clear() }), "/hazards/lifting", Verdict.Open);
        StopStageTests.Only("hazard.proof", Change(Lids, "lifting", h => h with { Proofs = h.Proofs.SetItem("aid", new() { Name = "somehow" }) }), "/hazards/lifting", Verdict.Open);
        StopStageTests.Only("hazard.described", Change(Lids, "lifting", h => h with { Owner = "" }), "/hazards/lifting", Verdict.Open);
        StopStageTests.Only("hazard.described", Change(Lids, "lifting", h => h with { After = h.After with { Avoidance = null } }), "/hazards/lifting", Verdict.Open);
    }

    private static Cell Change(Cell cell, string hazard, Func<Hazard, Hazard> change) => cell with { Hazards = cell.Hazards.SetItem(hazard, change(cell.Hazards[hazard])) };
}
