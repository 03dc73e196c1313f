using System.Text;
using Trivet.Assessment;
using Trivet.Cells;
using Trivet.Files;
using Trivet.Procedures;
using Xunit;

namespace Trivet.Core.Tests.Assessment;

public sealed class CellProcedureTests
{
    private static readonly Cell Lids = CellFile.Read(Encoding.UTF8.GetBytes(Samples.Find("jar-lids")!.Text), "jar-lids").Cell!;

    private static double Weighed(Procedure procedure) => procedure.Steps.Single(s => s.Kind == "payload").Asks.OfType<AskedValue>().Single(a => a.Id == "weighed").Expected;

    [Fact]
    public void What_is_weighed_is_the_plate_as_designed_whoever_asks_for_the_steps()
    {
        var typed = Lids with { Tool = Lids.Tool with { Parts = Lids.Tool.Parts.SetItem("plate", Lids.Tool.Parts["plate"] with { Mass = 0.3 }) } };
        var planned = new Assessor().Complete(typed, TestContext.Current.CancellationToken).Cell;
        Assert.Equal(Weighed(CellProcedure.Of(planned)), Weighed(CellProcedure.Of(typed)), 1e-12);
        Assert.Equal(planned.Tool.Parts["plate"].Mass!.Value + 0.420 + 0.085, Weighed(CellProcedure.Of(typed)), 1e-9);
    }

    [Fact]
    public void The_torques_are_those_of_the_torque_sheet()
    {
        var procedure = CellProcedure.Of(Lids);
        var results = Trivet.Bolting.JointStage.Results(new Assessor().Complete(Lids, TestContext.Current.CancellationToken).Cell);
        Assert.NotEmpty(results);
        Assert.All(results, r => Assert.Equal(r.Torque, procedure.Steps.Single(s => s.Id == $"joint:{r.Input.Id}").Asks.OfType<AskedValue>().First().Expected, 1e-12));
    }
}
